#pragma once

#include <vector>

#include "core/solver/detail/decoder.h"
#include "core/solver/problem.h"

namespace dampward::solver::detail {

// Plans from keys, drawn together by packing them to the right and to the left again: forward-backward improvement (Li and
// Willis 1992; Valls, Ballestín and Quintanilla 2005 call it double justification).
class Justifier {
 public:
  // No faults, no positive cycle; the problem must outlive this.
  explicit Justifier(const Problem& problem)
      : problem_(problem), mirror_(mirrored(problem)), forwards_(problem), backwards_(mirror_) {}

  // The plan of the keys (lower first), improved for as long as a round helps. False: none was found.
  bool plan(const std::vector<int>& keys, Starts& starts);
  std::int64_t work() const { return forwards_.work() + backwards_.work(); }

 private:
  bool round(Starts& starts);

  const Problem& problem_;
  Problem mirror_;
  Decoder forwards_, backwards_;
  std::vector<int> keys_;
  Starts packed_;
};

}  // namespace dampward::solver::detail
