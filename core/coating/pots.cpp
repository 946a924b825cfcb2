#include "core/coating/pots.h"

#include <algorithm>
#include <numeric>

#include "core/base/promise.h"

namespace dampward::coating {
namespace {

Instant use_by(Instant mixed, std::optional<Duration> pot_life, const WallClock& clock) {
  const auto today = std::chrono::floor<std::chrono::days>(clock.local(mixed));
  const Instant day_ends = clock.instant(today + std::chrono::days(1));
  if (!pot_life) return day_ends;
  return std::min(day_ends, mixed + std::chrono::seconds(static_cast<long long>(pot_life->in(second))));
}

Range<Volume> sum(const Range<Volume>& a, const Range<Volume>& b) {
  return {a.low + b.low, a.typical + b.typical, a.high + b.high};
}

}  // namespace

std::vector<Pot> pots(std::span<const MixUse> uses, std::optional<Duration> pot_life,
                      const WallClock& clock) {
  std::vector<std::size_t> order(uses.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return uses[a].starts < uses[b].starts; });
  std::vector<Pot> made;
  for (const std::size_t i : order) {
    const MixUse& use = uses[i];
    DAMPWARD_PROMISE(use.starts <= use.ends, "a coat ends after it starts");
    if (made.empty() || use.ends > made.back().use_by) {
      const Instant until = use_by(use.starts, pot_life, clock);
      made.push_back({use.starts, until, {}, {}, use.ends > until});
    }
    made.back().ready = sum(made.back().ready, use.ready);
    made.back().uses.push_back(i);
  }
  return made;
}

}  // namespace dampward::coating
