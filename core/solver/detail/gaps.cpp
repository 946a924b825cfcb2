#include "core/solver/detail/gaps.h"

#include <algorithm>
#include <array>

namespace dampward::solver::detail {
namespace {

template <class Edge>
void put(std::vector<std::vector<Edge>>& lists, View view, const Edge& edge) {
  if (lists.size() <= static_cast<std::size_t>(view)) lists.resize(static_cast<std::size_t>(view) + 1);
  lists[view].push_back(edge);
}

}  // namespace

void Gaps::add(int from, int to, int lag, Literal condition) {
  // y >= x + lag, and so -x >= -y + lag.
  const int number = static_cast<int>(edges_.size());
  for (const Edge& edge :
       {Edge{view_of(from), view_of(to), lag, condition, number},
        Edge{negative(view_of(to)), negative(view_of(from)), lag, condition, number + 1}}) {
    edges_.push_back(edge);
    put(leaving_, edge.from, edge);
    if (condition.view >= 0) put(conditioned_, condition.view, edge);
  }
}

// `from`: the lower bound of the view it leaves.
bool Gaps::follow(Trail& trail, const Edge& edge, int from) {
  const int bound = from + edge.lag;
  if (trail.lower(edge.to) >= bound) return true;
  if (edge.condition.view < 0 || trail.holds(edge.condition)) {
    if (!trail.push({edge.to, bound}, {Because::arc, edge.number})) return false;
    return !lifted_often(trail, edge.to) || ring(trail, edge.to);
  }
  if (bound <= trail.upper(edge.to) || trail.fails(edge.condition)) return true;
  // Kept, the arc would lift its target over its upper bound.
  const std::array because{Literal{edge.from, trail.upper(edge.to) + 1 - edge.lag},
                           Literal{negative(edge.to), -trail.upper(edge.to)}};
  return trail.push(opposite(edge.condition), trail.store(because));
}

// Counts how often a view was lifted since the last decision; true where that is 8, 16, 32… times. Facts are given
// more patience: a long chain of arcs lifts its end often without any ring.
bool Gaps::lifted_often(const Trail& trail, View view) {
  const auto at = static_cast<std::size_t>(view);
  if (lifted_.size() <= at) {
    lifted_.resize(at + 1, 0);
    lifted_since_.resize(at + 1, -1);
  }
  if (lifted_since_[at] != trail.level_begin()) {
    lifted_since_[at] = trail.level_begin();
    lifted_[at] = 0;
  }
  const int times = ++lifted_[at];
  return times >= (trail.level() == 0 ? 128 : 8) && (times & (times - 1)) == 0;
}

// Whether the view was lifted by way of itself. Back along the arcs: a lift that rests on an earlier bound of the same view went
// round a ring of arcs longer than zero.
bool Gaps::ring(Trail& trail, View view) {
  if (conditioned_.empty()) return true;  // arcs without condition hold no ring
  because_.clear();
  Literal literal{view, trail.lower(view)};
  int arcs_left = 100;  // longer rings are rare, and are refuted in the end all the same
  do {
    if (--arcs_left < 0) return true;
    const int since = trail.since(literal);
    if (since < 0 || trail.entry(since).reason.kind != Because::arc) return true;
    const Edge& edge = edges_[trail.entry(since).reason.at];
    if (edge.condition.view >= 0) because_.push_back(edge.condition);
    literal = {edge.from, literal.bound - edge.lag};
  } while (literal.view != view);
  return trail.contradict(trail.store(because_));
}

bool Gaps::start(Trail& trail) {
  for (const Edge& edge : edges_) {
    if (!follow(trail, edge, trail.lower(edge.from))) return false;
  }
  return true;
}

bool Gaps::propagate(Trail& trail, const Trail::Entry& entry) {
  const auto view = static_cast<std::size_t>(entry.view);
  if (view < leaving_.size()) {
    const int from = trail.lower(entry.view);
    work_ += static_cast<long long>(leaving_[view].size() / 8);
    for (const Edge& edge : leaving_[view]) {
      if (!follow(trail, edge, from)) return false;
    }
  }
  if (view < conditioned_.size()) {
    for (const Edge& edge : conditioned_[view]) {
      if (trail.holds(edge.condition) && !follow(trail, edge, trail.lower(edge.from))) return false;
    }
  }
  return true;
}

void Gaps::tidy(const Trail& facts) {
  for (auto* lists : {&leaving_, &conditioned_}) {
    for (std::vector<Edge>& list : *lists) {
      std::erase_if(
          list, [&](const Edge& edge) { return edge.condition.view >= 0 && facts.fails(edge.condition); });
    }
  }
}

void Gaps::explain(int arc, Literal literal, std::vector<Literal>& because) const {
  const Edge& edge = edges_[arc];
  because.push_back({edge.from, literal.bound - edge.lag});
  if (edge.condition.view >= 0) because.push_back(edge.condition);
}

}  // namespace dampward::solver::detail
