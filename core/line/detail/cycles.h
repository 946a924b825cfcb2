#pragma once

#include <vector>

#include "core/line/detail/model.h"

namespace dampward::line::detail {

// Gaps that no timetable can keep together, even with people and places without end: a ring of operations each waiting for
// the next, or shortest gaps and lengths that add to more than a longest gap allows. One ring, in its order; `backwards`
// arcs are longest gaps. Empty: none among the operations still wanted.
struct Link {
  Arc arc;
  bool backwards;
};
std::vector<Link> impossible_ring(const Model& model, const std::vector<char>& wanted);

}  // namespace dampward::line::detail
