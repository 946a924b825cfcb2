#pragma once

#include <compare>

#include "core/quantity/quantity.h"

namespace dampward {

// A point on the temperature scale. Two points differ by a TemperatureStep; their sum means nothing and does not compile.
class Temperature {
 public:
  constexpr Temperature() = default;  // 0 °C
  static constexpr Temperature celsius(double value) { return Temperature(value + zero_celsius); }
  static constexpr Temperature fahrenheit(double value) { return celsius((value - 32) / 1.8); }
  static constexpr Temperature kelvins(double value) { return Temperature(value); }

  constexpr double celsius() const { return kelvin_ - zero_celsius; }
  constexpr double fahrenheit() const { return celsius() * 1.8 + 32; }
  constexpr double kelvins() const { return kelvin_; }

  friend constexpr TemperatureStep operator-(Temperature a, Temperature b) {
    return TemperatureStep::si(a.kelvin_ - b.kelvin_);
  }
  friend constexpr Temperature operator+(Temperature t, TemperatureStep step) {
    return Temperature(t.kelvin_ + step.si());
  }
  friend constexpr Temperature operator-(Temperature t, TemperatureStep step) {
    return Temperature(t.kelvin_ - step.si());
  }
  friend constexpr auto operator<=>(Temperature a, Temperature b) = default;

 private:
  static constexpr double zero_celsius = 273.15;
  constexpr explicit Temperature(double kelvin) : kelvin_(kelvin) {}
  double kelvin_ = zero_celsius;
};

}  // namespace dampward
