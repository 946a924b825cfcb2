#include "core/solver/detail/block_builder.h"

#include <algorithm>
#include <set>
#include <utility>

namespace dampward::solver::detail {

BlockBuilder::BlockBuilder(const Problem& problem, std::uint64_t seed)
    : problem_(problem),
      blocks_(blocks_of(problem)),
      waits_(blocks_.members.size()),
      profile_(problem),
      random_(seed),
      alone_(problem.operations.size(), 0) {
  for (const Arc& arc : problem.arcs) {
    if (blocks_.of[arc.from] != blocks_.of[arc.to]) waits_[blocks_.of[arc.to]].push_back(arc);
  }
}

Starts BlockBuilder::build(std::int64_t work, const std::function<bool()>& keep_going) {
  for (const auto& members : blocks_.members) {
    if (members.size() > 1 && !plan_alone(members, work, keep_going)) return {};
  }
  std::vector<int> keys(blocks_.members.size());
  for (std::size_t b = 0; b < keys.size(); ++b) keys[b] = static_cast<int>(b);
  Starts best = glue(keys);
  const std::int64_t end = work_ + work;
  // From the best order so far, a few blocks are moved.
  while (work_ < end && keep_going() && keys.size() > 1) {
    std::vector<int> moved = keys;
    const int count = static_cast<int>(keys.size());
    for (int times = random_.between(1, 3); times > 0; --times)
      std::swap(moved[random_.below(count)], moved[random_.below(count)]);
    Starts starts = glue(moved);
    if (starts.back() > best.back()) continue;
    keys = std::move(moved);
    best = std::move(starts);
  }
  return best.front() == 0 ? best : Starts{};
}

// Blocks by key, each behind those it waits for.
Starts BlockBuilder::glue(const std::vector<int>& keys) {
  const int count = static_cast<int>(keys.size());
  std::vector<int> waiting(count, 0);
  std::vector<std::vector<int>> behind(count);
  for (int b = 0; b < count; ++b) {
    for (const Arc& arc : waits_[b]) {
      ++waiting[b];
      behind[blocks_.of[arc.from]].push_back(b);
    }
  }
  std::set<std::pair<int, int>> ready;
  for (int b = 0; b < count; ++b) {
    if (waiting[b] == 0) ready.insert({keys[b], b});
  }
  profile_.clear();
  Starts starts = alone_;
  while (!ready.empty()) {
    const int b = ready.begin()->second;
    ready.erase(ready.begin());
    int shift = 0;
    for (const Arc& arc : waits_[b]) shift = std::max(shift, starts[arc.from] + arc.lag - starts[arc.to]);
    for (const int i : blocks_.members[b]) starts[i] += shift;
    put(blocks_.members[b], starts);
    for (const int next : behind[b]) {
      if (--waiting[next] == 0) ready.insert({keys[next], next});
    }
  }
  return starts;
}

// A short plan of the block between a source and a sink of its own.
bool BlockBuilder::plan_alone(const std::vector<int>& members, std::int64_t work,
                              const std::function<bool()>& keep_going) {
  Problem alone;
  alone.capacities = problem_.capacities;
  std::vector<int> place(problem_.operations.size(), -1);
  alone.operations.emplace_back();
  for (const int i : members) {
    place[i] = alone.size();
    alone.operations.push_back(problem_.operations[i]);
  }
  const int sink = alone.size();
  alone.operations.emplace_back();
  for (const int i : members) alone.arcs.push_back({place[i], sink, problem_.operations[i].duration});
  for (const Arc& arc : problem_.arcs) {
    if (place[arc.from] >= 0 && place[arc.to] >= 0)
      alone.arcs.push_back({place[arc.from], place[arc.to], arc.lag});
  }
  const Starts earliest = earliest_starts(alone).starts;
  Kernel kernel(alone, widest_windows(alone, earliest));
  kernel.settle_orders(alone, BlockDistances(alone, earliest, widest_blocks(alone)));
  kernel.ask(&keep_going);
  while (kernel.work() < work && kernel.search(work - kernel.work()) == Kernel::Verdict::plan)
    kernel.require_last_by(kernel.starts().back() - 1);
  work_ += kernel.work();
  if (kernel.starts().empty()) return false;
  for (const int i : members) alone_[i] = kernel.starts()[place[i]];
  return true;
}

// At its starts or as much later, all alike, as lets every member fit.
void BlockBuilder::put(const std::vector<int>& members, Starts& starts) {
  for (bool fits = false; !fits;) {
    fits = true;
    for (const int i : members) {
      const int later = profile_.earliest_fit(i, starts[i]) - starts[i];
      work_ += 5;
      if (later == 0) continue;
      fits = false;
      for (const int k : members) starts[k] += later;
    }
  }
  for (const int i : members) profile_.place(i, starts[i]);
}

}  // namespace dampward::solver::detail
