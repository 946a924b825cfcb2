#include "core/drying/step_down.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/drying/load_run.h"
#include "core/moist_air/saturation.h"

namespace dampward::drying {
namespace {

constexpr Duration step = 30 * second, never_cool = 24 * hour;

std::string degrees(Temperature t) {
  return fixed(t.celsius(), 0) + " °C";
}

Temperature hottest_node(const MixedLoad& load) {
  Temperature hottest = load.air();
  for (std::size_t i = 0; i < load.size(); ++i) hottest = std::max({hottest, load.shell(i), load.inner(i)});
  return hottest;
}

}  // namespace

StepDownAnswer step_down(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load,
                         const BakePlan& bake, const moist_air::HumidAir& room, Temperature hottest) {
  if (!oven.heater) return NoStepDown{"only lamps heat it, and whatever they light stands above the air"};
  const double uneven = oven.evenness / (bake.set - room.temperature);
  const TemperatureStep over_room = (1 / (1 + uneven)) * (hottest - oven.swing - room.temperature);
  const Temperature set = room.temperature + over_room;
  if (over_room <= TemperatureStep{}) {
    return NoStepDown{format("the shop is at {}, too near the {} that the lacquer allows",
                             degrees(room.temperature), degrees(hottest))};
  }
  if (set < oven.coldest_setting) {
    return NoStepDown{format("its thermostat goes no lower than {}, and {} would be needed",
                             degrees(oven.coldest_setting), degrees(set))};
  }
  shop::Oven dark = oven;
  dark.lamps.reset();
  const TemperatureStep spread = uneven * over_room + oven.swing;
  // The thermostat at its highest at the hottest place: the slowest to cool.
  MixedLoad cooling = mixed_load(dark, wall, load, room,
                                 {.air = set + spread - thermostat_band,
                                  .side = Side::safe,
                                  .rules = {},
                                  .at_least = {},
                                  .at_least_hold = {},
                                  .loss = Loss::lowest});
  cooling.start_dry(bake.set + bake.excess.sum());
  StepDown down{set, {}, set - spread, moist_air::vapour_pressure(room), {}};
  // A node comes near its air for ever: within a tenth of a kelvin it is there.
  while (hottest_node(cooling) > hottest + 0.1 * kelvin) {
    cooling.advance(step, MassFlow{});
    down.takes += step;
    if (down.takes > never_cool) return NoStepDown{"a day later the load would still be too hot"};
  }
  down.humidity =
      std::min(RelativeHumidity::percent(100),
               RelativeHumidity::fraction(down.vapour / moist_air::saturation_pressure(down.coldest)));
  return down;
}

}  // namespace dampward::drying
