#pragma once

#include <string>
#include <vector>

#include "core/charts/alignment.h"
#include "core/charts/figures.h"
#include "core/quantity/range.h"

namespace dampward::charts {

// How much mix a set takes: its coated surface times what a square metre takes by gun or brush.
struct LitresChart {
  struct Set {
    std::string name;
    Range<Area> area;
  };
  struct Tool {
    std::string name;
    Range<Length>
        on_the_surface;  // mix for each surface in all coats, lost overspray included (coating/consumption.h)
  };
  std::vector<Set> sets;
  std::vector<Tool> tools;  // at least one
};

struct LitresScales {
  ScaleOf<Area> area;
  ScaleOf<Volume> mix;
  ScaleOf<Length> on_the_surface;
  Alignment ruler() const { return {area.scale, on_the_surface.scale, mix.scale}; }
};

// ln mix = ln area + ln mix for each surface: a ruler is exact. The scales reach from the smallest to the largest, rounded outwards.
// Promise: at least one tool, its figures above zero.
LitresScales placed(const LitresChart& chart, const Frame& frame);

}  // namespace dampward::charts
