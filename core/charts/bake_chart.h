#pragma once

#include <string>
#include <vector>

#include "core/charts/alignment.h"
#include "core/charts/figures.h"
#include "core/drying/part_drying.h"
#include "core/materials/material.h"

namespace dampward::charts {

// How long one oven holds, against its setting and the thickest porous part. Promise: some material has a diffusivity.
struct BakeChart {
  std::string oven;                                  // its name; empty: none is known
  Temperature set_low, set_high;                     // of the thermostat
  TemperatureStep excess;                            // of the hottest place over the setting
  TemperatureStep evenness;                          // of the coldest under it
  TemperatureStep margin;                            // kept below the weakest part's limit
  Length thinnest, thickest;                         // of the part, open on two faces
  double residual = 0.10;                            // of the removable moisture may be left
  std::vector<materials::MoistureDiffusion> porous;  // of every porous material
};

struct BakeScales {
  ScaleOf<Temperature> set, limit;  // of the oven; of the weakest part, on the same line
  ScaleOf<Duration> hold;
  ScaleOf<Length> thickness;
  Alignment ruler() const { return {set.scale, thickness.scale, hold.scale}; }
};

// ln hold = 2 ln thickness + f(setting): time goes with the square of the thickness (diffusion), so that a ruler is exact whatever f is.
// Promise: ranges in order.
BakeScales placed(const BakeChart& chart, const Frame& frame);

// The hold of a sheet of the slowest porous material, at the oven's coldest place (drying/part_drying.h). `thickness` is exact: a caliper
// is at hand.
Duration hold_of(const BakeChart& chart, Temperature set, Length thickness,
                 drying::Side side = drying::Side::safe);

}  // namespace dampward::charts
