#include "core/line/detail/level.h"

#include <algorithm>
#include <limits>

namespace dampward::line::detail {
namespace {

constexpr Minute before_all = std::numeric_limits<Minute>::min() / 4;
constexpr Minute after_all = std::numeric_limits<Minute>::max() / 4;

}  // namespace

Level::Level(std::int64_t value) : steps_{{before_all, value}} {}

Level::Level(const Calendar& spans) : Level(0) {
  for (const Span& span : spans) {
    steps_.push_back({span.from, 1});
    steps_.push_back({span.to, 0});
  }
}

Level::Level(const Capacity& capacity) : Level(0) {
  for (const Capacity::Step& step : capacity.steps) steps_.push_back({step.from, step.amount});
}

std::size_t Level::step_at(Minute minute) const {
  const auto later = std::upper_bound(steps_.begin(), steps_.end(), minute,
                                      [](Minute m, const Step& step) { return m < step.from; });
  return static_cast<std::size_t>(later - steps_.begin()) - 1;
}

// Makes a step begin at the minute and returns its index.
std::size_t Level::cut(Minute minute) {
  const std::size_t at = step_at(minute);
  if (steps_[at].from == minute) return at;
  steps_.insert(steps_.begin() + static_cast<std::ptrdiff_t>(at) + 1, {minute, steps_[at].value});
  return at + 1;
}

void Level::add(Span span, std::int64_t amount) {
  if (span.from >= span.to || amount == 0) return;
  const std::size_t first = cut(span.from);
  const std::size_t last = cut(span.to);
  for (std::size_t i = first; i < last; ++i) steps_[i].value += amount;
  // Only at the two ends can neighbours have become equal.
  for (const std::size_t i : {last, first}) {
    if (steps_[i].value == steps_[i - 1].value) steps_.erase(steps_.begin() + static_cast<std::ptrdiff_t>(i));
  }
}

std::optional<Minute> Level::fit(Minute from, Minute length, std::int64_t need) const {
  Minute start = from;
  for (std::size_t i = step_at(from);; ++i) {
    const Minute end = i + 1 < steps_.size() ? steps_[i + 1].from : after_all;
    if (steps_[i].value < need) {
      if (end == after_all) return std::nullopt;
      start = end;
    } else if (end - start >= length) {
      return start;
    }
  }
}

std::optional<Minute> Level::first_below(Span span, std::int64_t need) const {
  if (span.from >= span.to) return std::nullopt;
  for (std::size_t i = step_at(span.from); i < steps_.size() && steps_[i].from < span.to; ++i) {
    if (steps_[i].value < need) return std::max(span.from, steps_[i].from);
  }
  return std::nullopt;
}

Minute Level::longest_run(std::int64_t need, Minute horizon) const {
  Minute longest = 0, start = 0;
  for (std::size_t i = step_at(0); i < steps_.size() && steps_[i].from < horizon; ++i) {
    const Minute end = i + 1 < steps_.size() ? std::min(steps_[i + 1].from, horizon) : horizon;
    if (steps_[i].value < need) {
      start = end;
    } else {
      longest = std::max(longest, end - start);
    }
  }
  return longest;
}

}  // namespace dampward::line::detail
