#include "core/solver/detail/gaps.h"

#include <algorithm>
#include <array>

namespace dampward::solver::detail {
namespace {

void put(std::vector<std::vector<int>>& lists, View view, int edge) {
  if (lists.size() <= static_cast<std::size_t>(view)) lists.resize(static_cast<std::size_t>(view) + 1);
  lists[view].push_back(edge);
}

}  // namespace

void Gaps::add(int from, int to, int lag, Literal condition) {
  // y >= x + lag, and so -x >= -y + lag.
  for (const Edge& edge : {Edge{view_of(from), view_of(to), lag, condition},
                           Edge{negative(view_of(to)), negative(view_of(from)), lag, condition}}) {
    const int number = static_cast<int>(edges_.size());
    edges_.push_back(edge);
    put(leaving_, edge.from, number);
    if (condition.view >= 0) put(conditioned_, condition.view, number);
  }
}

bool Gaps::follow(Trail& trail, int number) {
  const Edge& edge = edges_[number];
  const int bound = trail.lower(edge.from) + edge.lag;
  if (edge.condition.view < 0 || trail.holds(edge.condition))
    return trail.push({edge.to, bound}, {Because::arc, number});
  if (bound <= trail.upper(edge.to) || trail.fails(edge.condition)) return true;
  // Kept, the arc would lift its target over its upper bound.
  const std::array because{Literal{edge.from, trail.upper(edge.to) + 1 - edge.lag},
                           Literal{negative(edge.to), -trail.upper(edge.to)}};
  return trail.push(opposite(edge.condition), trail.store(because));
}

bool Gaps::start(Trail& trail) {
  for (int edge = 0; edge < static_cast<int>(edges_.size()); ++edge) {
    if (!follow(trail, edge)) return false;
  }
  return true;
}

bool Gaps::propagate(Trail& trail, const Trail::Entry& entry) {
  const auto view = static_cast<std::size_t>(entry.view);
  if (view < leaving_.size()) {
    for (const int edge : leaving_[view]) {
      if (!follow(trail, edge)) return false;
    }
  }
  if (view < conditioned_.size()) {
    for (const int edge : conditioned_[view]) {
      if (trail.holds(edges_[edge].condition) && !follow(trail, edge)) return false;
    }
  }
  return true;
}

void Gaps::explain(int arc, Literal literal, std::vector<Literal>& because) const {
  const Edge& edge = edges_[arc];
  because.push_back({edge.from, literal.bound - edge.lag});
  if (edge.condition.view >= 0) because.push_back(edge.condition);
}

}  // namespace dampward::solver::detail
