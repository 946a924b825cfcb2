#include "workbench/detail/home_heat.h"

#include <algorithm>

namespace dampward::workbench {
namespace {

constexpr double leaks_per_hour = 0.5;
constexpr Density air_density = 1.2 * kilogram_per_cubic_metre;
constexpr SpecificHeat air_heat = 1007 * joule_per_kilogram_kelvin;
constexpr double absorbed = 0.9;
constexpr int lamps[] = {7, 10, 15, 25, 40, 60, 75, 100, 150};  // watts

}  // namespace

HeatConductance loss_of(const HomeBox& box, HeatTransferCoefficient u) {
  const auto& [length, width, height] = box.inside;
  const Area walls = 2 * (length * width + length * height + width * height);
  return u * walls + (leaks_per_hour / hour) * (length * width * height) * air_density * air_heat;
}

HomeWarmth warmth_of(const HomeBox& box, Power least, Power usual, Power most, Temperature air) {
  const Range<HeatTransferCoefficient>& u = box.wall.loss.value;
  const TemperatureStep low = least / loss_of(box, u.high), middle = usual / loss_of(box, u.typical),
                        high = most / loss_of(box, u.low);
  return {air - day_spread + (1 - place_spread) * low, air + middle,
          air + day_spread + (1 + place_spread) * high, air - day_spread + low, air + day_spread + high};
}

std::optional<Power> strongest_heat(const HomeBox& box, Temperature allowed, Temperature air) {
  const TemperatureStep room = allowed - (air + day_spread);
  if (room < TemperatureStep{}) return std::nullopt;
  return (1 / (1 + place_spread)) * room * loss_of(box, box.wall.loss.value.low);
}

Power sun_on(Area black, double watts_per_square_metre) {
  return absorbed * watts_per_square_metre * (black / square_metre) * watt;
}

std::optional<Power> usual_lamp(Power at_most) {
  std::optional<Power> strongest;
  for (const int watts : lamps) {
    if (watts * watt <= at_most) strongest = watts * watt;
  }
  return strongest;
}

}  // namespace dampward::workbench
