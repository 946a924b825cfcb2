#include "core/solver/detail/distances.h"

#include <functional>
#include <numeric>
#include <queue>
#include <utility>

namespace dampward::solver::detail {
namespace {

struct Edge {
  int to, slack;  // how much later than its lag asks the target's earliest start is: never negative
};

// Dijkstra 1959 on slacks (Johnson 1977): the longest path is the one whose slacks add up to least.
void least_slack(const std::vector<std::vector<Edge>>& edges, int source, std::vector<int>& slack) {
  slack.assign(edges.size(), -1);
  using Entry = std::pair<int, int>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> queue;
  queue.push({0, source});
  while (!queue.empty()) {
    const auto [reached, at] = queue.top();
    queue.pop();
    if (slack[at] >= 0) continue;
    slack[at] = reached;
    for (const Edge& edge : edges[at]) {
      if (slack[edge.to] < 0) queue.push({reached + edge.slack, edge.to});
    }
  }
}

}  // namespace

BlockDistances::BlockDistances(const Problem& problem, const Starts& earliest, Blocks blocks)
    : blocks_(std::move(blocks)), place_(problem.operations.size()) {
  const std::size_t count = blocks_.members.size();
  for (const auto& members : blocks_.members) {
    for (std::size_t k = 0; k < members.size(); ++k) place_[members[k]] = static_cast<int>(k);
  }
  std::vector<std::vector<std::vector<Edge>>> edges(count);
  for (std::size_t b = 0; b < count; ++b) edges[b].resize(blocks_.members[b].size());
  for (const Arc& arc : problem.arcs) {
    const int block = blocks_.of[arc.from];
    if (block != blocks_.of[arc.to]) continue;
    edges[block][place_[arc.from]].push_back(
        {place_[arc.to], earliest[arc.to] - earliest[arc.from] - arc.lag});
  }
  from_.resize(count);
  to_.resize(count);
  std::vector<int> slack;
  for (std::size_t b = 0; b < count; ++b) {
    const auto& members = blocks_.members[b];
    const std::size_t size = members.size();
    from_[b].assign(size * size, no_path);
    to_[b].assign(size * size, no_path);
    for (std::size_t i = 0; i < size; ++i) {
      least_slack(edges[b], static_cast<int>(i), slack);
      for (std::size_t j = 0; j < size; ++j) {
        if (slack[j] < 0) continue;
        const int longest = earliest[members[j]] - earliest[members[i]] - slack[j];
        from_[b][i * size + j] = longest;
        to_[b][j * size + i] = longest;
      }
    }
  }
}

Blocks widest_blocks(const Problem& problem) {
  constexpr int most = 1000;
  if (problem.size() > most) return blocks_of(problem);
  Blocks blocks{std::vector<int>(problem.operations.size(), 0),
                {std::vector<int>(problem.operations.size())}};
  std::iota(blocks.members.front().begin(), blocks.members.front().end(), 0);
  return blocks;
}

}  // namespace dampward::solver::detail
