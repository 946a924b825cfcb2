#pragma once

#include <span>
#include <string_view>

#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::files {

// An angle as a person states it.
struct Angle {
  double degrees = 0;
  friend constexpr auto operator<=>(Angle, Angle) = default;
};

}  // namespace dampward::files

namespace dampward::files::detail {

// One unit: value in SI base units = number · factor + offset.
struct Unit {
  std::string_view word;
  double factor;
  double offset = 0;
};

struct Measure {
  std::string_view name;  // "a length"
  std::string_view like;  // "a length such as 250 mm or 10 in"
  std::span<const Unit> units;
  double lowest, highest;  // SI; beyond them no workshop has such a value
  bool plain = false;      // a number without unit
};

// The measure a type stands for, with the units people write.
template <class T>
const Measure& measure_of();
template <>
const Measure& measure_of<Temperature>();
template <>
const Measure& measure_of<TemperatureStep>();
template <>
const Measure& measure_of<Length>();
template <>
const Measure& measure_of<Area>();
template <>
const Measure& measure_of<Volume>();
template <>
const Measure& measure_of<Mass>();
template <>
const Measure& measure_of<Duration>();
template <>
const Measure& measure_of<Power>();
template <>
const Measure& measure_of<VolumeFlow>();
template <>
const Measure& measure_of<Pressure>();
template <>
const Measure& measure_of<Density>();
template <>
const Measure& measure_of<DepositionRate>();
template <>
const Measure& measure_of<HeatTransferCoefficient>();
template <>
const Measure& measure_of<Angle>();
template <>
const Measure& measure_of<RelativeHumidity>();
template <>
const Measure& measure_of<MassShare>();
template <>
const Measure& measure_of<TransferEfficiency>();
template <>
const Measure& measure_of<VapourShare>();
template <>
const Measure& measure_of<double>();

// The value of a type from its number in SI base units (°C scale: kelvins; angle: degrees; share: fraction).
template <class T>
constexpr T from_si(double si) {
  if constexpr (requires { T::si(si); }) {
    return T::si(si);
  } else if constexpr (requires { T::kelvins(si); }) {
    return T::kelvins(si);
  } else if constexpr (requires { T::fraction(si); }) {
    return T::fraction(si);
  } else {
    return T{si};
  }
}

// The measure that has exactly this unit; null when none has.
const Measure* measure_with_unit(std::string_view word);

}  // namespace dampward::files::detail
