#pragma once

#include "core/papers/pen.h"
#include "core/papers/safety_sheet.h"

namespace dampward::papers {

inline constexpr double sketch_width = 78;

// The spray place in its own proportions, with as many ways out as were written down, its size in words below. Gives where it ends.
double room_sketch(Pen& pen, double y, const SafetySheet& sheet, const Words& words);

}  // namespace dampward::papers
