#include "core/referee/detail/shares.h"

#include <algorithm>
#include <map>

namespace dampward::referee {

std::vector<Clash> clashes(std::vector<Share> shares) {
  std::stable_sort(shares.begin(), shares.end(),
                   [](const Share& a, const Share& b) { return a.when.from < b.when.from; });
  std::vector<Clash> out;
  // Of all that began before, the one that ends last; the same among what is not fixed.
  const Share *last = nullptr, *last_free = nullptr;
  for (const Share& share : shares) {
    if (empty(share.when)) continue;
    const Share* earlier = share.fixed ? last_free : last;
    if (earlier && overlap(earlier->when, share.when))
      out.push_back({earlier->who, share.who, common(earlier->when, share.when)});
    if (!last || share.when.to > last->when.to) last = &share;
    if (!share.fixed && (!last_free || share.when.to > last_free->when.to)) last_free = &share;
  }
  return out;
}

std::vector<Excess> excesses(const std::vector<Share>& shares, const std::vector<Step>& steps) {
  struct Change {
    std::int64_t taken = 0, taken_free = 0;
    const Step* step = nullptr;
  };
  std::map<Minute, Change> changes;
  for (const Share& share : shares) {
    if (empty(share.when)) continue;
    const std::int64_t free = share.fixed ? 0 : share.amount;
    Change& begin = changes[share.when.from];
    begin.taken += share.amount;
    begin.taken_free += free;
    Change& end = changes[share.when.to];
    end.taken -= share.amount;
    end.taken_free -= free;
  }
  for (const Step& step : steps) changes[step.from].step = &step;

  std::vector<Excess> out;
  bool over = false;
  std::int64_t taken = 0, taken_free = 0, there = 0;
  for (const auto& [minute, change] : changes) {
    taken += change.taken;
    taken_free += change.taken_free;
    if (change.step) there = change.step->amount;
    const bool now_over = taken > there && taken_free > 0;
    if (over && !now_over) out.back().when.to = minute;
    if (now_over && !over) {
      Excess excess{{minute, minute}, taken, there, {}};
      for (const Share& share : shares) {
        if (share.amount > 0 && share.when.from <= minute && minute < share.when.to)
          excess.who.push_back(share.who);
      }
      out.push_back(std::move(excess));
    }
    over = now_over;
  }
  return out;
}

}  // namespace dampward::referee
