#include "adapters/files/detail/measure.h"

namespace dampward::files::detail {
namespace {

constexpr double f_offset = 273.15 - 32 / 1.8;
constexpr Unit temperature_units[] = {
    {"°C", 1, 273.15}, {"C", 1, 273.15}, {"°F", 1 / 1.8, f_offset}, {"F", 1 / 1.8, f_offset}};
constexpr Unit step_units[] = {{"K", 1},        {"C°", 1},       {"°C", 1},     {"C", 1},
                               {"F°", 1 / 1.8}, {"°F", 1 / 1.8}, {"F", 1 / 1.8}};
constexpr Unit length_units[] = {{"mm", millimetre.si()}, {"cm", centimetre.si()}, {"m", 1},
                                 {"km", kilometre.si()},  {"in", inch.si()},       {"ft", foot.si()},
                                 {"um", micrometre.si()}, {"µm", micrometre.si()}, {"mil", mil.si()}};
constexpr Unit area_units[] = {{"m2", 1}, {"cm2", 1e-4}, {"ft2", square_foot.si()}};
constexpr Unit volume_units[] = {{"L", litre.si()},       {"l", litre.si()}, {"ml", millilitre.si()},
                                 {"mL", millilitre.si()}, {"m3", 1},         {"gal", us_gallon.si()},
                                 {"ft3", cubic_foot.si()}};
constexpr Unit mass_units[] = {{"g", gram.si()}, {"kg", 1}, {"lb", pound.si()}, {"oz", ounce.si()}};
constexpr Unit duration_units[] = {{"min", minute.si()}, {"h", hour.si()}, {"s", 1}, {"d", day.si()}};
constexpr Unit power_units[] = {{"W", 1}, {"kW", kilowatt.si()}};
constexpr Unit flow_units[] = {{"m3/min", cubic_metre_per_minute.si()},
                               {"m3/h", cubic_metre_per_hour.si()},
                               {"cfm", cubic_foot_per_minute.si()},
                               {"L/min", litre_per_minute.si()},
                               {"ml/min", litre_per_minute.si() / 1000}};
constexpr Unit pressure_units[] = {{"Pa", 1}, {"hPa", hectopascal.si()}, {"kPa", kilopascal.si()}};
constexpr Unit density_units[] = {{"kg/L", 1000}, {"kg/m3", 1}, {"g/mL", 1000}, {"g/cm3", 1000}};
constexpr Unit deposition_units[] = {{"mg/m2/d", milligram_per_square_metre_day.si()},
                                     {"mg/(m2d)", milligram_per_square_metre_day.si()}};
constexpr Unit transfer_units[] = {{"W/m2K", 1}, {"W/(m2K)", 1}};
constexpr Unit angle_units[] = {{"deg", 1}, {"°", 1}};
constexpr Unit percent_units[] = {{"%", 0.01}};
constexpr Unit vapour_units[] = {{"%", 0.01}, {"ppm", 1e-6}};

constexpr Measure temperature_measure{"a temperature", "a temperature with its unit, such as 71 °C or 160 °F",
                                      temperature_units, 173.15, 1773.15};
constexpr Measure step_measure{"a temperature difference", "a temperature difference such as 5 K or 9 F°",
                               step_units, 0, 500};
constexpr Measure length_measure{"a length", "a length such as 250 mm, 10 in or 1.2 m", length_units, 0, 1e6};
constexpr Measure area_measure{"an area", "an area such as 0.9 m2 or 9.5 ft2", area_units, 0, 1e5};
constexpr Measure volume_measure{"a volume", "a volume such as 2 L, 500 ml or 0.5 gal", volume_units, 0, 1e4};
constexpr Measure mass_measure{"a mass", "a mass such as 8.5 kg, 120 g or 3 lb", mass_units, 0, 1e5};
constexpr Measure duration_measure{"a time", "a time such as 20 min or 3 h", duration_units, 0,
                                   20 * year.si()};
constexpr Measure power_measure{"a power", "a power such as 600 W or 2.4 kW", power_units, 0, 1e6};
constexpr Measure flow_measure{"a flow", "a flow such as 1.2 m3/min, 400 cfm or 0.15 L/min", flow_units, 0,
                               1e3};
constexpr Measure pressure_measure{"a pressure", "a pressure such as 1013 hPa", pressure_units, 0, 1e7};
constexpr Measure density_measure{"a density", "a density such as 0.95 kg/L or 950 kg/m3", density_units, 1,
                                  3e4};
constexpr Measure deposition_measure{"a salt deposition", "a salt deposition such as 60 mg/m2/d",
                                     deposition_units, 0, 1e5 * milligram_per_square_metre_day.si()};
constexpr Measure transfer_measure{"a heat transfer coefficient",
                                   "a heat transfer coefficient such as 5 W/m2K", transfer_units, 0, 1e5};
constexpr Measure angle_measure{"an angle", "an angle such as 60 deg", angle_units, 0, 360};
constexpr Measure share_measure{"a share", "a share from 0 % to 100 %, such as 30 %", percent_units, 0, 1};
constexpr Measure vapour_measure{"a share", "a share such as 1.1 % or 500 ppm", vapour_units, 0, 1};
constexpr Measure number_measure{"a number", "a plain number of 0 or more, such as 3", {}, 0, 1e9, true};

constexpr const Measure* all_measures[] = {
    &temperature_measure, &length_measure, &area_measure,   &volume_measure,   &mass_measure,
    &duration_measure,    &power_measure,  &flow_measure,   &pressure_measure, &density_measure,
    &deposition_measure,  &angle_measure,  &vapour_measure, &step_measure,     &transfer_measure};

}  // namespace

template <>
const Measure& measure_of<Temperature>() {
  return temperature_measure;
}
template <>
const Measure& measure_of<TemperatureStep>() {
  return step_measure;
}
template <>
const Measure& measure_of<Length>() {
  return length_measure;
}
template <>
const Measure& measure_of<Area>() {
  return area_measure;
}
template <>
const Measure& measure_of<Volume>() {
  return volume_measure;
}
template <>
const Measure& measure_of<Mass>() {
  return mass_measure;
}
template <>
const Measure& measure_of<Duration>() {
  return duration_measure;
}
template <>
const Measure& measure_of<Power>() {
  return power_measure;
}
template <>
const Measure& measure_of<VolumeFlow>() {
  return flow_measure;
}
template <>
const Measure& measure_of<Pressure>() {
  return pressure_measure;
}
template <>
const Measure& measure_of<Density>() {
  return density_measure;
}
template <>
const Measure& measure_of<DepositionRate>() {
  return deposition_measure;
}
template <>
const Measure& measure_of<HeatTransferCoefficient>() {
  return transfer_measure;
}
template <>
const Measure& measure_of<Angle>() {
  return angle_measure;
}
template <>
const Measure& measure_of<RelativeHumidity>() {
  return share_measure;
}
template <>
const Measure& measure_of<MassShare>() {
  return share_measure;
}
template <>
const Measure& measure_of<TransferEfficiency>() {
  return share_measure;
}
template <>
const Measure& measure_of<VapourShare>() {
  return vapour_measure;
}
template <>
const Measure& measure_of<double>() {
  return number_measure;
}

// Exactly: "MM" must not be named after some measure's "mm".
const Measure* measure_with_unit(std::string_view word) {
  for (const Measure* measure : all_measures) {
    for (const Unit& unit : measure->units) {
      if (unit.word == word) return measure;
    }
  }
  return nullptr;
}

}  // namespace dampward::files::detail
