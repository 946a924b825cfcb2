#pragma once

#include <vector>

#include "core/solver/problem.h"

namespace dampward::solver {

// The longest paths that all arcs together force, resources left out.
struct EarliestStarts {
  Starts starts;  // the earliest start of each operation, from 0; empty where there is a cycle
  std::vector<int>
      cycle;  // indices of arcs round a cycle of positive length, in order: no plan can keep them all
};
EarliestStarts earliest_starts(const Problem& problem);

// Longest paths from each operation to the last one; `no_path` where none leads there. The arcs hold no positive cycle.
inline constexpr int no_path = -(1 << 30);
std::vector<int> longest_to_last(const Problem& problem);

// Operations that hang together both ways: each can reach each other along arcs. Blocks are numbered so that arcs between blocks
// go from a lower number to a higher one (Tarjan 1972).
struct Blocks {
  std::vector<int> of;                    // block of each operation
  std::vector<std::vector<int>> members;  // operations of each block, ascending
};
Blocks blocks_of(const Problem& problem);

}  // namespace dampward::solver
