#pragma once

#include <string>

#include "core/quantity/quantity.h"

namespace dampward::equipment {

enum class CutShape { disc, ring, rectangle, strip };

// A piece of mask that is cut to size.
struct Cut {
  CutShape shape = CutShape::rectangle;
  Length size;    // disc, ring: across; rectangle, strip: the longer side
  Length width;   // rectangle, strip: the shorter side; ring: across its hole
  int count = 1;  // for one unit
  std::string material;
  bool measured = false;  // on a unit of the shop's own; else an estimate
};

}  // namespace dampward::equipment
