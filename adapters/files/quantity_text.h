#pragma once

#include <array>
#include <string_view>
#include <vector>

#include "adapters/files/detail/measure.h"
#include "core/base/result.h"
#include "core/quantity/range.h"

namespace dampward::files {

// How the number at hand may be written.
enum class Decimal {
  point,   // 12.5
  either,  // 12.5 or 12,5; "1,500" is refused, because it may mean two things
  comma,   // as `either` in a sheet that writes 12,5 elsewhere, where "1.500" may mean two things as well
};

namespace detail {

// The numbers of a text, one to three, in SI base units.
Result<std::vector<double>> numbers_from_text(std::string_view text, const Measure& measure, Decimal decimal);
// What is told of a range where one value belongs.
Problem no_single_value(std::string_view text, const Measure& measure);

}  // namespace detail

// A number with its unit from text a person wrote: "71 °C", "160 °F", "0.5 gal", "10 in".
// T: Temperature, TemperatureStep, Length, Area, Volume, Mass, Duration, Power, VolumeFlow, Pressure, Density,
// DepositionRate, HeatTransferCoefficient, Angle, or a share (in percent). `double` is a plain number of 0 or more.
// A problem (its place left to the caller) says what was found and what would be right: no unit, a unit of another
// measure, no number, not finite, negative, or beyond anything a workshop has.
template <class T>
Result<T> quantity_from_text(std::string_view text, Decimal decimal = Decimal::point) {
  const auto numbers = detail::numbers_from_text(text, detail::measure_of<T>(), decimal);
  if (!numbers) return numbers.problems();
  if (numbers->size() > 1) return detail::no_single_value(text, detail::measure_of<T>());
  return detail::from_si<T>(numbers->front());
}

// A range "low..typical..high", "low..high" (typical halfway) or one exact value. The unit stands after the last
// number; each number may carry its own ("160 °F..75 °C").
template <class T>
Result<Range<T>> range_from_text(std::string_view text, Decimal decimal = Decimal::point) {
  const auto numbers = detail::numbers_from_text(text, detail::measure_of<T>(), decimal);
  if (!numbers) return numbers.problems();
  const double low = numbers->front(), high = numbers->back();
  const double typical = numbers->size() == 3 ? (*numbers)[1] : 0.5 * (low + high);
  return Range<T>{detail::from_si<T>(low), detail::from_si<T>(typical), detail::from_si<T>(high)};
}

// Three sides: "4 x 3 x 2.5 m", "13x10x8 ft", each above zero. The unit stands after the last, or each side carries its own.
Result<std::array<Length, 3>> box_from_text(std::string_view text);

// How warm and how damp the air is: "32 °C 85 %", "90 F, 85 %".
struct WrittenAir {
  Temperature temperature;
  RelativeHumidity humidity;
};
Result<WrittenAir> air_from_text(std::string_view text);

// What a value of this measure looks like, for messages: "a temperature with its unit, such as 71 °C or 160 °F".
template <class T>
std::string_view looks_like() {
  return detail::measure_of<T>().like;
}

}  // namespace dampward::files
