#pragma once

#include "core/charts/alignment.h"
#include "core/charts/figures.h"
#include "core/coating/warm_window.h"

namespace dampward::charts {

// The dew point from a dry and a wet thermometer in a stream of air, at one pressure.
struct DewChart {
  Temperature air_low, air_high;  // of the dry one
  Temperature dew_low, dew_high;  // below `air_high`
  Pressure pressure;
  coating::WindowRules rules;  // what the dew point is for: the coldest surface that may be coated
};

struct DewScales {
  ScaleOf<Temperature> air, wet, dew;
  Alignment ruler() const { return {air.scale, wet.scale, dew.scale}; }
};

// The coldest bulb on the chart: below it water on the wick may be ice or not, and nobody sees which.
inline constexpr Temperature coldest_bulb = Temperature::celsius(1);

// Air and dew point stand on uprights, the wet bulb on a slightly bent line between them. The wet-bulb equation of
// moist_air/humid_air.h, (2501 + 1.86 t − 4.186 b) W = (2501 − 2.326 b) Ws(b) − 1.006 (t − b), is written with
// v = 1/(W + 1.006/1.86) as M(b) v − 1.86 t = D(b), and three scales in v, t and b stand on one ruler exactly. Where a bulb
// stands is found as the crossing of two such rulers, their dew points taken from the model; a test shows that all others go through it.
// Promise: air and dew point ranges as above, above freezing.
DewScales placed(const DewChart& chart, const Frame& frame);

// What the model gives for the same two thermometers.
Temperature dew_point_of(const DewChart& chart, Temperature air, Temperature wet);

}  // namespace dampward::charts
