#pragma once

#include <optional>
#include <string>
#include <variant>

#include "core/quantity/temperature_curve.h"

namespace dampward::coating {

// A body of one temperature cooling in air that stays as it is: T = Ta + (T0 − Ta) exp(−t/τ).
// Source: Newton's law of cooling; holds for Biot numbers under 0.1 and a constant film coefficient.
struct LumpedCooling {
  Temperature at_start;
  Temperature air;
  Duration time_constant;
};

// One surface of a unit from the moment it leaves the oven. A curve ends level: it must reach far enough.
struct Surface {
  std::string name;
  std::variant<LumpedCooling, TemperatureCurve> cooling;

  Temperature at(Duration after_oven) const;
  // The moment from which the surface stays at or below `top`; none: it never does.
  std::optional<Duration> at_or_below(Temperature top) const;
  // The first moment, not before `from`, at which the surface is colder than `floor`; none: it never is.
  std::optional<Duration> colder_than(Temperature floor, Duration from) const;
};

}  // namespace dampward::coating
