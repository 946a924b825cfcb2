#include "core/solver/detail/population.h"

#include <algorithm>
#include <numeric>

namespace dampward::solver::detail {
namespace {

constexpr int most_members = 150;
constexpr int most_firsts = 450;

}  // namespace

Population::Population(const Problem& problem, const Starts& earliest, std::uint64_t seed)
    : earliest_(earliest), justifier_(problem), random_(seed) {}

void Population::run(std::int64_t work, const std::function<bool()>& keep_going, int good_enough) {
  const std::int64_t end = this->work() + work;
  while (this->work() < end && keep_going() && (!best_ || best_->back() > good_enough)) {
    if (static_cast<int>(members_.size()) < most_members && (firsts_ < most_firsts || members_.size() < 2))
      beget_first();
    else
      beget_child();
  }
}

// The first follows the earliest starts, the others stray from them ever more.
void Population::beget_first() {
  const int spread = std::max(1, earliest_.back() / 4) * std::min(firsts_, 8) / 4;
  keys_.resize(earliest_.size());
  for (std::size_t i = 0; i < keys_.size(); ++i) keys_[i] = earliest_[i] + random_.between(0, spread);
  ++firsts_;
  if (justifier_.plan(keys_, child_)) admit(child_);
}

const Population::Member& Population::parent() {
  const int count = static_cast<int>(members_.size());
  // Members stand best first; the better of two.
  return members_[std::min(random_.below(count), random_.below(count))];
}

void Population::beget_child() {
  const Starts &mother = parent().starts, &father = parent().starts;
  const int n = static_cast<int>(mother.size());
  const int last = mother.back();
  const int width = random_.between(last / 10, last / 2), from = random_.between(0, last - width),
            to = from + width;
  keys_.resize(n);
  for (int k = 0; k < n; ++k) {
    if (mother[k] >= from && mother[k] <= to)
      keys_[k] = mother[k];
    else if (father[k] > to)
      keys_[k] = father[k] + last;
    else if (father[k] < from)
      keys_[k] = father[k] - last;
    else
      keys_[k] = father[k];
    if (random_.below(50) == 0) keys_[k] = random_.between(0, last);
  }
  if (justifier_.plan(keys_, child_)) admit(child_);
}

void Population::join(const Starts& starts) {
  admit(starts);
}

void Population::admit(const Starts& starts) {
  if (!best_ || starts.back() < best_->back()) best_ = starts;
  const auto place = std::find_if(members_.begin(), members_.end(),
                                  [&](const Member& m) { return m.starts.back() >= starts.back(); });
  for (auto same = place; same != members_.end() && same->starts.back() == starts.back(); ++same) {
    if (same->starts == starts) return;
  }
  if (place == members_.end() && static_cast<int>(members_.size()) >= most_members) return;
  Member member{starts, std::vector<int>(starts.size())};
  std::iota(member.order.begin(), member.order.end(), 0);
  std::stable_sort(member.order.begin(), member.order.end(),
                   [&](int a, int b) { return starts[a] < starts[b]; });
  members_.insert(place, std::move(member));
  if (static_cast<int>(members_.size()) > most_members) members_.pop_back();
}

}  // namespace dampward::solver::detail
