#pragma once

#include <vector>

#include "core/charts/alignment.h"
#include "core/charts/figures.h"
#include "core/coating/warm_window.h"

namespace dampward::charts {

// How cold a surface may be coated in a room's air, and how long a warm unit stays above that.
struct WindowChart {
  Temperature air_low, air_high;
  RelativeHumidity humidity_low;  // up to 100 %
  Temperature dew_low;            // the coldest dew point on it
  coating::WindowRules rules;
  Duration cooling;  // time constant of the quickest surface, the low end of its range
};

struct WindowScales {
  ScaleOf<RelativeHumidity> humidity;
  ScaleOf<Temperature> air, surface;  // the coldest surface that may be coated
  // Level from `surface` into the field of minutes, whose foot is the room's air once more.
  ScaleOf<Temperature> room;
  TemperatureStep safe;  // how far off a surface may be once it is carried into the field

  Alignment ruler() const { return {humidity.scale, air.scale, surface.scale}; }
};

// Humidity, air and dew point add up as logarithms:  ln ps(dew) = ln RH + ln ps(air), so that a ruler is exact. The third scale is
// named by the dew point plus the lacquer's margin.
// Promise: ranges in order; dew point plus margin reaches below the hottest surface.
WindowScales placed(const WindowChart& chart, const Frame& frame);

// The coldest surface for this air, from the model.
Temperature floor_of(const WindowChart& chart, Temperature air, RelativeHumidity humidity);

// How long the quickest surface takes from the hottest allowed down to this one; none: it never cools so far in this air.
std::optional<Duration> time_down_to(const WindowChart& chart, Temperature surface, Temperature air);
// Where it stands after a time: one point of a curve of the field.
Temperature cooled_for(const WindowChart& chart, Duration time, Temperature air);

// The curves of the field: round times, the last about two and a half time constants.
std::vector<Duration> curves_of(const WindowChart& chart);
// Where the curve of so long stands above this air; none for `time`: where no clock runs. It is drawn colder than the model by all that
// ruler and pencil may be off (`WindowScales::safe`), so that the curve above a point never promises more than the model.
Temperature drawn(const WindowChart& chart, const WindowScales& scales, std::optional<Duration> time,
                  Temperature air);

}  // namespace dampward::charts
