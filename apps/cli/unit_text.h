#pragma once

#include <string>

#include "core/quantity/quantity.h"
#include "core/quantity/range.h"
#include "core/quantity/temperature.h"

namespace dampward::cli {

enum class UnitSystem { metric, us };

// Quantities as a person reads them: number, no-break space, unit. Rounded for reading, never for computing.
class UnitText {
 public:
  explicit UnitText(UnitSystem system) : us_(system == UnitSystem::us) {}

  std::string temperature(Temperature t) const;  // 71 °C, 160 °F
  std::string setting(Temperature t) const;      // the same, never above it: 51 °C is 123 °F
  std::string step(TemperatureStep step) const;  // 5 K, 9 °F
  std::string length(Length length) const;       // 6.1 m, 20 ft
  std::string side(Length length) const;         // of a box, rounded up: 70 cm, 28 in
  std::string hours(Duration time) const;        // 3.5 h
  std::string minutes(Duration time) const;      // 20 min
  std::string volume(Volume volume) const;       // 1.25 L, 0.33 gal
  std::string volume(const Range<Volume>& range) const;
  std::string amount(Volume volume) const;  // the same, and small ones told apart: 12 mL, 0.4 fl oz
  std::string flow(VolumeFlow flow) const;  // 12 m³/min, 424 cfm
  std::string rate(VolumeFlow flow) const;  // 0.10 L/min, 0.026 gal/min
  std::string space(Volume volume) const;   // 36 m³, 1285 ft³
  std::string area(Area area) const;        // 0.42 m², 4.5 ft²
  std::string film(const Range<Length>& range) const;  // 51 to 75 µm, 2.0 to 3.0 mil
  // A sentence put together elsewhere in metric figures, with its °C, K, m³/min, m and L turned for a US reader.
  std::string sentence(const std::string& metric) const;

 private:
  bool us_;
};

}  // namespace dampward::cli
