#pragma once

#include <string_view>

#include "core/base/result.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::files {

// How the number at hand may be written.
enum class Decimal {
  point,   // 12.5
  either,  // 12.5 or 12,5; "1,500" is refused, because it may mean two things
  comma,   // as `either` in a sheet that writes 12,5 elsewhere, where "1.500" may mean two things as well
};

// An angle as a person states it.
struct Angle {
  double degrees = 0;
  friend constexpr auto operator<=>(Angle, Angle) = default;
};

// A number with its unit from text a person wrote: "71 °C", "160 °F", "0.5 gal", "10 in".
// T: Temperature, TemperatureStep, Length, Area, Volume, Mass, Duration, Power, VolumeFlow, Pressure, Density,
// DepositionRate, HeatTransferCoefficient, Angle, or a share (in percent). `double` is a plain number of 0 or more.
// A problem (its place left to the caller) says what was found and what would be right: no unit, a unit of another
// measure, no number, not finite, negative, or beyond anything a workshop has.
template <class T>
Result<T> quantity_from_text(std::string_view text, Decimal decimal = Decimal::point);

// A range "low..typical..high", "low..high" (typical halfway) or one exact value. The unit stands after the last
// number; each number may carry its own ("160 °F..75 °C").
template <class T>
Result<Range<T>> range_from_text(std::string_view text, Decimal decimal = Decimal::point);

// What a value of this measure looks like, for messages: "a temperature with its unit, such as 71 °C or 160 °F".
template <class T>
std::string_view looks_like();

}  // namespace dampward::files
