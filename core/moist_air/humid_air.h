#pragma once

#include "core/moist_air/atmosphere.h"
#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::moist_air {

using HumidityRatio = Share<struct HumidityRatioTag>;  // kg water vapour over kg dry air
using SpecificEnergy = Quantity<0, 2, -2>;             // J per kg of dry air
using SpecificVolume = Quantity<-1, 3, 0>;             // m³ per kg of dry air

// Damp air. Means something while `in_range` says so; a humidity above 1 says that water comes out.
struct HumidAir {
  Temperature temperature;
  RelativeHumidity humidity;
  Pressure pressure = sea_level_pressure;  // of air and vapour together
};

// Temperature -100 to 200 °C, humidity 0 to 1, vapour pressure below the total. Not a number: false.
bool in_range(const HumidAir& air);

// Making a state from other readings. Humidity comes out above 1 (or below 0) where the readings contradict each other.
HumidAir from_vapour_pressure(Temperature temperature, Pressure vapour, Pressure pressure);
HumidAir from_dew_point(Temperature temperature, Temperature dew_point, Pressure pressure);
HumidAir from_humidity_ratio(Temperature temperature, HumidityRatio ratio, Pressure pressure);
// Thermodynamic wet bulb, over ice below 0 °C; a well-aired sling psychrometer reads it within about 0.3 K.
HumidAir from_wet_bulb(Temperature temperature, Temperature wet_bulb, Pressure pressure);

Pressure vapour_pressure(const HumidAir& air);
Temperature dew_point(const HumidAir& air);  // frost point below 0 °C

// W = 0.621945 pw/(p − pw)   ASHRAE Fundamentals 2017 ch. 1 eq. 20. Ideal gas: 0.4 to 0.6 % below the handbook's saturated
// table up to 50 °C and 1.2 % below at 85 °C, which carries the enhancement factor.
HumidityRatio humidity_ratio(const HumidAir& air);

// The temperature water takes while it evaporates into this air with nothing else heating it: solves eq. 33 (water) or
// eq. 35 (ice) of the same chapter between dew point and air temperature.
Temperature wet_bulb(const HumidAir& air);

// h = 1006 t + W (2 501 000 + 1860 t)   t in °C, eq. 30; zero for dry air at 0 °C.
SpecificEnergy enthalpy(const HumidAir& air);

// v = 287.042 T (1 + 1.607858 W)/p   eq. 26.
SpecificVolume specific_volume(const HumidAir& air);

// kg of air and vapour in a m³: (1 + W)/v.
Density density(const HumidAir& air);

// kg of water in a m³: pw/(461.526 T).
Density vapour_density(const HumidAir& air);

// The same air brought to another temperature, no water lost or gained, total pressure kept: an oven's intake, or the layer
// against a cooler surface. Above 1 the surface is wet.
HumidAir brought_to(const HumidAir& air, Temperature temperature);

}  // namespace dampward::moist_air
