#pragma once

#include <vector>

#include "core/solver/problem.h"
#include "core/solver/temporal.h"

namespace dampward::solver::detail {

// Longest paths between all operations of the same block: how much later than i must j start at least; no_path where none leads.
class BlockDistances {
 public:
  // The arcs hold no positive cycle; `earliest` are their earliest starts.
  BlockDistances(const Problem& problem, const Starts& earliest, Blocks blocks);

  const Blocks& blocks() const { return blocks_; }
  int place(int operation) const { return place_[operation]; }  // its place among the members of its block
  // From the operation to each member of its block, and from each member to it.
  const int* from(int operation) const { return row(from_, operation); }
  const int* to(int operation) const { return row(to_, operation); }

 private:
  using Matrices = std::vector<std::vector<int>>;  // by block, row by row
  const int* row(const Matrices& matrices, int operation) const {
    const int block = blocks_.of[operation];
    return matrices[block].data() +
           static_cast<std::size_t>(place_[operation]) * blocks_.members[block].size();
  }

  Blocks blocks_;
  std::vector<int> place_;
  Matrices from_, to_;
};

// All operations in one block where that is small enough to be kept, else those that hang together.
Blocks widest_blocks(const Problem& problem);

}  // namespace dampward::solver::detail
