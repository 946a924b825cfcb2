#include "core/solver/temporal.h"

#include <algorithm>
#include <cstdint>

namespace dampward::solver {
namespace {

using Adjacency = std::vector<std::vector<int>>;  // arc indices by operation they leave

Adjacency leaving(const Problem& problem) {
  Adjacency arcs(problem.operations.size());
  for (int a = 0; a < static_cast<int>(problem.arcs.size()); ++a) arcs[problem.arcs[a].from].push_back(a);
  return arcs;
}

// The arc into each operation that set its start last forms a forest unless there is a positive cycle; then it holds one.
std::vector<int> cycle_through(const Problem& problem, const std::vector<int>& into) {
  std::vector<int> seen(problem.operations.size(), -1);
  for (int root = 0; root < problem.size(); ++root) {
    int at = root;
    while (into[at] >= 0 && seen[at] < 0) {
      seen[at] = root;
      at = problem.arcs[into[at]].from;
    }
    if (into[at] < 0 || seen[at] != root) continue;
    std::vector<int> cycle;
    const int first = at;
    do {
      cycle.push_back(into[at]);
      at = problem.arcs[into[at]].from;
    } while (at != first);
    std::reverse(cycle.begin(), cycle.end());
    return cycle;
  }
  return {};
}

}  // namespace

EarliestStarts earliest_starts(const Problem& problem) {
  const int n = problem.size();
  const Adjacency arcs = leaving(problem);
  EarliestStarts result;
  std::vector<std::int64_t> starts(n, 0);
  std::vector<int> into(n, -1), queue(n);
  std::vector<char> queued(n, 1);
  for (int i = 0; i < n; ++i) queue[i] = i;
  // Bellman 1958, Ford 1956, in rounds; a start that still moves after n rounds lies on or behind a positive cycle. Cycles are
  // looked for at every doubling, so that a long lag round a short cycle ends soon.
  for (int round = 1, look = 2; !queue.empty(); ++round) {
    std::vector<int> next;
    for (const int i : queue) {
      queued[i] = 0;
      for (const int a : arcs[i]) {
        const Arc& arc = problem.arcs[a];
        if (starts[i] + arc.lag <= starts[arc.to]) continue;
        starts[arc.to] = starts[i] + arc.lag;
        into[arc.to] = a;
        if (!queued[arc.to]) {
          queued[arc.to] = 1;
          next.push_back(arc.to);
        }
      }
    }
    queue.swap(next);
    if (round < look) continue;
    look *= 2;
    result.cycle = cycle_through(problem, into);
    if (!result.cycle.empty()) return result;
  }
  for (const std::int64_t start : starts) result.starts.push_back(static_cast<int>(start));
  return result;
}

std::vector<int> longest_to_last(const Problem& problem) {
  const Adjacency arcs = leaving(mirrored(problem));  // of the same numbers
  std::vector<int> longest(problem.operations.size(), no_path), queue{problem.size() - 1};
  longest.back() = 0;
  while (!queue.empty()) {
    std::vector<int> next;
    for (const int i : queue) {
      for (const int a : arcs[i]) {
        const Arc& arc = problem.arcs[a];
        if (longest[i] + arc.lag <= longest[arc.from]) continue;
        longest[arc.from] = longest[i] + arc.lag;
        next.push_back(arc.from);
      }
    }
    std::sort(next.begin(), next.end());
    next.erase(std::unique(next.begin(), next.end()), next.end());
    queue.swap(next);
  }
  return longest;
}

Blocks blocks_of(const Problem& problem) {
  const int n = problem.size();
  const Adjacency arcs = leaving(problem);
  Blocks blocks{std::vector<int>(n, -1), {}};
  std::vector<int> index(n, -1), low(n, 0), stack;
  struct Frame {
    int operation;
    std::size_t next;
  };
  std::vector<Frame> path;
  int counter = 0;
  for (int root = 0; root < n; ++root) {
    if (index[root] >= 0) continue;
    path.push_back({root, 0});
    while (!path.empty()) {
      Frame& frame = path.back();
      const int i = frame.operation;
      if (frame.next == 0) {
        index[i] = low[i] = counter++;
        stack.push_back(i);
      }
      bool deeper = false;
      while (frame.next < arcs[i].size()) {
        const Arc& arc = problem.arcs[arcs[i][frame.next++]];
        if (index[arc.to] < 0) {
          path.push_back({arc.to, 0});
          deeper = true;
          break;
        }
        if (blocks.of[arc.to] < 0) low[i] = std::min(low[i], index[arc.to]);
      }
      if (deeper) continue;
      if (low[i] == index[i]) {
        std::vector<int> members;
        int member;
        do {
          member = stack.back();
          stack.pop_back();
          blocks.of[member] = static_cast<int>(blocks.members.size());
          members.push_back(member);
        } while (member != i);
        std::sort(members.begin(), members.end());
        blocks.members.push_back(std::move(members));
      }
      path.pop_back();
      if (!path.empty()) low[path.back().operation] = std::min(low[path.back().operation], low[i]);
    }
  }
  // Tarjan finds the last block first.
  std::reverse(blocks.members.begin(), blocks.members.end());
  for (int& block : blocks.of) block = static_cast<int>(blocks.members.size()) - 1 - block;
  return blocks;
}

}  // namespace dampward::solver
