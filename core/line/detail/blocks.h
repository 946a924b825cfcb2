#pragma once

#include <vector>

#include "core/line/detail/model.h"

namespace dampward::line::detail {

// Operations that must be placed together, because longest gaps or one oven's load tie them.
struct Block {
  std::vector<int> ops;     // in the order of their ids
  std::vector<int> before;  // blocks that must be placed first
  std::vector<int> after;
  int rank = 0;  // of its most urgent unit
};

// The wanted operations as blocks whose order of waiting has no ring.
std::vector<Block> blocks_of(const Model& model, const std::vector<char>& wanted);

// The order in which a block's operations are placed: whoever is waited for first, then loadings and bakes, then unit by
// unit by urgency. An operation with a higher `pull` comes, with all it waits for, before others. The units of a load in
// `out_first` all leave the oven before anything else of the block is placed.
std::vector<int> order_within(const Model& model, const std::vector<int>& ops, const std::vector<int>& pull,
                              const std::vector<char>& out_first);

}  // namespace dampward::line::detail
