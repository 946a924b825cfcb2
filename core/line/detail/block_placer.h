#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/line/answer.h"
#include "core/line/detail/blocks.h"
#include "core/line/detail/floor.h"

namespace dampward::line::detail {

// Puts one block on the floor so that no gap is broken: each operation at its earliest spot, and where a longest gap then
// fails, the operation it is counted from moves later and what followed it is placed anew. Starts only ever move later, so
// it ends. Tries each oven of the block's loads and keeps the plan that ends first.
class BlockPlacer {
 public:
  BlockPlacer(const Model& model, Floor& floor, const std::function<bool()>& keep_going)
      : model_(model), floor_(floor), keep_going_(keep_going), pull_(model.ops.size(), 0) {}

  // Nothing: the block stands. Else nothing of it does, and this is the operation that found no place, and why.
  std::optional<Unplaced> place(const std::vector<int>& ops);
  bool stopped() const { return stopped_; }
  // Tries so many more orders, shuffled, where those that follow from the failures lead nowhere.
  void try_more_orders(int orders) { shuffled_orders_ = orders; }

 private:
  struct Failure {
    int op = -1;
    std::optional<Arc> gap;  // the gap that could not be kept
    bool hopeless = false;   // no other order would help
    std::string hot_oven;    // the oven whose heat kept its solvent away
  };

  std::optional<Failure> try_ovens(const std::vector<int>& ops);
  std::optional<Failure> try_orders(const std::vector<int>& ops);
  std::optional<Failure> try_order(const std::vector<int>& order);
  // The gap to something fixed that a spot comes too late for.
  const Arc* too_late_for_fixed(const Op& op, const Spot& spot) const;
  void load_late(const std::vector<int>& order);
  void take_out(const std::vector<int>& ops);
  Minute end_of(const std::vector<int>& ops) const;
  Unplaced told(const Failure& failure) const;

  const Model& model_;
  Floor& floor_;
  const std::function<bool()>& keep_going_;
  std::vector<int> pull_;
  std::vector<Minute> floor_from_;  // by operation: no sooner than this (raised while a block is tried)
  bool stopped_ = false;
  bool keeps_ = true;  // where an earlier plan had them, at the soonest
  int shuffled_orders_ = 0;
};

}  // namespace dampward::line::detail
