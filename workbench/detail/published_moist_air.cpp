#include "core/moist_air/atmosphere.h"
#include "core/moist_air/deliquescence.h"
#include "core/moist_air/humid_air.h"
#include "core/moist_air/saturation.h"
#include "workbench/detail/published_quantities.h"

#include <limits>
#include <utility>

namespace dampward::workbench {
namespace {

using namespace moist_air;

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();
constexpr SpecificEnergy joule_per_kilogram = SpecificEnergy::si(1);
constexpr SpecificVolume cubic_metre_per_kilogram = SpecificVolume::si(1);

HumidAir air(PublishedInputs& in) {
  return {Temperature::celsius(in.number("t_c")), RelativeHumidity::percent(in.number("rh_pct")),
          in.number("p_pa") * pascal};
}
HumidAir air_of_ratio(PublishedInputs& in) {
  return from_humidity_ratio(Temperature::celsius(in.number("t_c")),
                             HumidityRatio::fraction(in.number("w_kg_kg")), in.number("p_pa") * pascal);
}
HumidAir air_of_wet_bulb(PublishedInputs& in) {
  return from_wet_bulb(Temperature::celsius(in.number("t_c")), Temperature::celsius(in.number("wet_bulb_c")),
                       in.number("p_pa") * pascal);
}

double salt_humidity(PublishedInputs& in) {
  static constexpr std::pair<std::string_view, Salt> salts[] = {
      {"lithium_chloride", Salt::lithium_chloride},   {"magnesium_chloride", Salt::magnesium_chloride},
      {"sodium_chloride", Salt::sodium_chloride},     {"potassium_chloride", Salt::potassium_chloride},
      {"potassium_nitrate", Salt::potassium_nitrate}, {"potassium_sulphate", Salt::potassium_sulphate},
  };
  const Temperature temperature = Temperature::celsius(in.number("t_c"));
  for (const auto& [word, salt] : salts) {
    if (in.word("salt") == word) return deliquescence(salt, temperature).percent();
  }
  return no_number;
}

constexpr PublishedQuantity quantities[] = {
    {"saturation_pressure", "vapour pressure over water, or ice below 0 °C",
     [](PublishedInputs& in) {
       return saturation_pressure(Temperature::celsius(in.number("t_c"))).in(pascal);
     }},
    {"humidity_ratio", "water over dry air by mass",
     [](PublishedInputs& in) { return humidity_ratio(air(in)).fraction(); }},
    {"humidity_ratio_from_wet_bulb", "the same from a wet-bulb reading",
     [](PublishedInputs& in) { return humidity_ratio(air_of_wet_bulb(in)).fraction(); }},
    {"relative_humidity_from_wet_bulb", "relative humidity from a wet-bulb reading",
     [](PublishedInputs& in) { return air_of_wet_bulb(in).humidity.percent(); }},
    {"dew_point", "temperature at which this air turns wet",
     [](PublishedInputs& in) { return dew_point(air(in)).celsius(); }},
    {"dew_point_from_wet_bulb", "the same from a wet-bulb reading",
     [](PublishedInputs& in) { return dew_point(air_of_wet_bulb(in)).celsius(); }},
    {"wet_bulb", "temperature of water evaporating into this air",
     [](PublishedInputs& in) { return wet_bulb(air(in)).celsius(); }},
    {"enthalpy", "heat content of a kilogram of dry air with its vapour",
     [](PublishedInputs& in) { return enthalpy(air(in)).in(joule_per_kilogram); }},
    {"enthalpy_from_wet_bulb", "the same from a wet-bulb reading",
     [](PublishedInputs& in) { return enthalpy(air_of_wet_bulb(in)).in(joule_per_kilogram); }},
    {"specific_volume", "volume of a kilogram of dry air with its vapour",
     [](PublishedInputs& in) { return specific_volume(air_of_ratio(in)).in(cubic_metre_per_kilogram); }},
    {"specific_volume_from_wet_bulb", "the same from a wet-bulb reading",
     [](PublishedInputs& in) { return specific_volume(air_of_wet_bulb(in)).in(cubic_metre_per_kilogram); }},
    {"vapour_density", "water in a cubic metre of air",
     [](PublishedInputs& in) { return vapour_density(air(in)).in(gram / cubic_metre); }},
    {"standard_pressure", "pressure of the standard atmosphere",
     [](PublishedInputs& in) { return standard_pressure(in.number("altitude_m") * metre).in(pascal); }},
    {"deliquescence", "humidity at which a dry salt draws water", salt_humidity},
};

}  // namespace

std::span<const PublishedQuantity> moist_air_quantities() {
  return quantities;
}

}  // namespace dampward::workbench
