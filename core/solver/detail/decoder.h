#pragma once

#include <cstdint>
#include <memory>
#include <utility>
#include <vector>

#include "core/solver/detail/distances.h"
#include "core/solver/detail/profile.h"
#include "core/solver/problem.h"

namespace dampward::solver::detail {

// Turns an order of preference into a plan: the serial schedule generation scheme, each operation at its earliest start that
// fits what is placed. Where a longest gap is missed, whoever binds it moves later and all placed since are placed anew, after
// Franck, Neumann and Schwindt (2001, from memory).
class Decoder {
 public:
  // The problem has no faults, its arcs no positive cycle; it must outlive the decoder.
  explicit Decoder(const Problem& problem);

  // Lower keys first, ties by index, among operations with nothing unplaced before them. The first start
  // is 0. False: longest gaps kept failing.
  bool decode(const std::vector<int>& keys, Starts& starts);
  // Placements tried so far: the unit of work.
  std::int64_t work() const { return work_; }

 private:
  struct Out {
    int to, lag;
  };
  void reset(const std::vector<int>& keys);
  void offer(int operation);
  int take_next();
  void fix(int operation, int start);
  void put(int operation, int start);
  void rewind(std::size_t kept);
  void make_room(int operation, int start);

  const Problem& problem_;
  Starts earliest_;
  BlockDistances distances_;
  std::vector<std::vector<Out>> out_;  // arcs to other blocks
  std::vector<int> waits_for_;         // how many must be placed before it
  bool has_longest_gaps_ = false;

  Profile profile_;
  std::vector<int> keys_, first_, last_, waiting_, released_, start_;
  std::vector<int> placed_;                    // in order
  std::vector<std::pair<int, int>> eligible_;  // heap of key and operation
  std::int64_t work_ = 0;
};

}  // namespace dampward::solver::detail
