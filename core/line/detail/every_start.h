#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "core/line/detail/floor.h"

namespace dampward::line::detail {

// Operations this few are worth trying at every start; more would not be got through. Estimate.
inline constexpr std::size_t few_enough_for_every_start = 12;

// Puts a handful of operations on the floor by trying every start of each, with every crew, place and oven, the earliest
// first: what waits on purpose, so that a longest gap after it holds, is found too. Ends after `most_looks` looks for a spot,
// so the same problem gives the same answer on any machine.
class EveryStart {
 public:
  EveryStart(const Model& model, Floor& floor, const std::function<bool()>& keep_going)
      : model_(model), floor_(floor), keep_going_(keep_going) {}

  // True: all of them stand. False: none does, for there is no way or none was found within the looks.
  bool place(const std::vector<int>& ops);

 private:
  struct Window {
    Minute from, to;  // of the start, both allowed
  };

  bool extend(std::size_t next);
  bool start_somewhere(std::size_t next);
  // The soonest spots from that minute on, one for each crew and place that can begin then.
  std::vector<Spot> soonest(int op, Minute from);
  Window window(int op) const;
  bool someone_is_too_late(std::size_t next) const;
  bool given_up() const;

  const Model& model_;
  Floor& floor_;
  const std::function<bool()>& keep_going_;
  std::vector<int> order_;
  std::int64_t last_look_ = 0;
};

}  // namespace dampward::line::detail
