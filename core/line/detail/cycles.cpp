#include "core/line/detail/cycles.h"

#include <algorithm>

namespace dampward::line::detail {
namespace {

struct Edge {
  int from, to;
  Minute weight;  // to starts at least so long after from starts
  Link link;
};

// A ring of shortest gaps alone is impossible even where its gaps are 0, since every operation lasts.
std::vector<Edge> edges_of(const Model& model, const std::vector<char>& wanted) {
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < model.ops.size(); ++i) {
    if (!wanted[i]) continue;
    for (const Arc& arc : model.ops[i].after) {
      if (!wanted[static_cast<std::size_t>(arc.to)]) continue;
      const Op& from = model.ops[i];
      edges.push_back({arc.from, arc.to, from.length + arc.shortest, {arc, false}});
      // Breaks may lengthen a pausable operation, and with it what the gap allows.
      if (arc.longest < unbounded && !from.as_given->pausable) {
        edges.push_back({arc.to, arc.from, -(from.length + arc.longest), {arc, true}});
      }
    }
  }
  return edges;
}

// The ring that following `by` backwards from `node` runs into.
std::vector<Link> ring_through(const std::vector<Edge>& edges, const std::vector<int>& by, int node) {
  for (std::size_t step = 0; step < by.size(); ++step) {
    node = edges[static_cast<std::size_t>(by[static_cast<std::size_t>(node)])].from;
  }
  std::vector<Link> ring;
  int at = node;
  do {
    const Edge& edge = edges[static_cast<std::size_t>(by[static_cast<std::size_t>(at)])];
    ring.push_back(edge.link);
    at = edge.from;
  } while (at != node);
  std::reverse(ring.begin(), ring.end());
  return ring;
}

// Whether some ring can already be read from the predecessors, so that a search need not run its full n rounds.
int on_a_ring(const std::vector<Edge>& edges, const std::vector<int>& by) {
  std::vector<int> seen(by.size(), -1);
  for (std::size_t start = 0; start < by.size(); ++start) {
    int at = static_cast<int>(start);
    while (at >= 0 && seen[static_cast<std::size_t>(at)] < 0) {
      seen[static_cast<std::size_t>(at)] = static_cast<int>(start);
      const int edge = by[static_cast<std::size_t>(at)];
      at = edge < 0 ? -1 : edges[static_cast<std::size_t>(edge)].from;
    }
    if (at >= 0 && seen[static_cast<std::size_t>(at)] == static_cast<int>(start)) return at;
  }
  return -1;
}

}  // namespace

// Bellman and Ford's longest paths from all operations at once; a predecessor ring has positive length (Cherkassky and
// Goldberg 1999, lemma on parent graphs; from memory).
std::vector<Link> impossible_ring(const Model& model, const std::vector<char>& wanted) {
  const std::vector<Edge> edges = edges_of(model, wanted);
  std::vector<Minute> start(model.ops.size(), 0);
  std::vector<int> by(model.ops.size(), -1);
  for (std::size_t round = 1;; ++round) {
    bool moved = false;
    for (std::size_t e = 0; e < edges.size(); ++e) {
      const Edge& edge = edges[e];
      const Minute least = start[static_cast<std::size_t>(edge.from)] + edge.weight;
      if (least > start[static_cast<std::size_t>(edge.to)]) {
        start[static_cast<std::size_t>(edge.to)] = least;
        by[static_cast<std::size_t>(edge.to)] = static_cast<int>(e);
        moved = true;
      }
    }
    if (!moved) return {};
    if (round % 16 == 0) {
      const int node = on_a_ring(edges, by);
      if (node >= 0) return ring_through(edges, by, node);
    }
  }
}

}  // namespace dampward::line::detail
