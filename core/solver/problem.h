#pragma once

#include <vector>

#include "core/base/problem.h"

// Operations that compete for renewable resources, between shortest and longest gaps (RCPSP/max, in the notation of Brucker et
// al. 1999: PS|temp|Cmax). Operation 0 starts at 0 and none starts earlier; the last operation shall start as early as can be.
// Times are whole, in whatever unit the caller counts.
namespace dampward::solver {

// What an operation takes of a resource all the while it runs.
struct Demand {
  int resource = 0;  // index into Problem::capacities
  int amount = 0;    // 0 or more
};

struct Operation {
  int duration = 0;             // 0 or more
  std::vector<Demand> demands;  // each resource at most once
};

// S(to) >= S(from) + lag. A positive lag is a shortest gap, a negative one a longest gap seen from its end.
struct Arc {
  int from = 0, to = 0;
  int lag = 0;
};

struct Problem {
  std::vector<Operation> operations;
  std::vector<Arc> arcs;
  std::vector<int> capacities;

  int size() const { return static_cast<int>(operations.size()); }
};

// One start per operation, 0 or later.
using Starts = std::vector<int>;

// More operations than this are refused: paths between all pairs of a block are kept, and the search is quadratic in places.
inline constexpr int most_operations = 5000;
// The starts that an answer may have to reach stay below this.
inline constexpr int latest_time = 1 << 28;

// What keeps a problem from being solved at all, none: nothing. Empty, too many operations, an index out of range, a negative
// duration or demand, a demand over its capacity, a resource twice, times that add up beyond `latest_time`. Operations are named by index.
Problems faults(const Problem& problem);

// A time by which some best plan has started everything, if there is a plan at all: the sum over operations of the longer of
// duration and longest gap that leaves it. In start order no operation waits longer than that for those before it, else all
// from there on could move one earlier.
int horizon(const Problem& problem);

// The same with time turned round: an arc (i, j, l) becomes (j, i, l + p_j - p_i), and a start S becomes C - p - S for any C.
Problem mirrored(const Problem& problem);

}  // namespace dampward::solver
