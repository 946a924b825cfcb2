#pragma once

#include <string_view>

#include "core/exposure/weather.h"
#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"
#include "core/shop/shop.h"

namespace dampward::exposure {

// How fast a stored unit and the air about it follow the weather. All are estimates for sets of 5 to 30 kg; a pair of
// temperature and humidity loggers, one inside and one out, for two weeks would settle them for one store.
struct StorageSettings {
  Duration unit_heat =
      45 * minute;  // body of a set against the air it stands in: about 20 kg of metal, 8 W/(m² K)
  Duration room_heat = 12 * hour;  // a light building closed up
  Duration room_vapour =
      8 * hour;  // half an air change an hour, slowed fourfold by what stores damp in the room
  Duration case_wall_heat = 30 * minute;      // the lid of a carrying case in a shed
  Duration case_heat = 2 * hour;              // the set within
  Duration case_vapour = 48 * hour;           // through the cracks of a gasket that no longer seals
  TemperatureStep case_heating = 8 * kelvin;  // a lamp of 15 to 25 W or a resistor rod
  Temperature conditioned = Temperature::celsius(24);
  RelativeHumidity conditioned_humidity = RelativeHumidity::percent(55);
  unsigned carried_out = 8, carried_in = 16;  // hour of day; every day
};

// What the surface of a stored unit meets in one hour.
struct SurfaceHour {
  Temperature air;            // about the unit
  Temperature surface;        // of the unit itself
  Pressure vapour;            // in the air about it
  RelativeHumidity humidity;  // at the surface, not above 1
  Duration wet;               // part of the hour with water condensing or standing on the unit or its case
};

// One unit kept in one way, hour after hour. Lumped: one temperature for the unit, one vapour pressure for its air.
//   open shed        air is the weather, the unit lags behind it
//   closed room      air and vapour lag; what the room's own walls take up is in the vapour lag
//   closed case      in an open shed; vapour seeps, water that condensed on the lid stays in until vapour can leave
//   heated case      the same case, warmed a fixed step above the weather
//   air-conditioned  fixed air; once a day the cool unit is carried out into the weather for some hours. Time wet is that
//                    of a lumped body, tau ln((Ta − T0)/(Ta − Tdew))
// Sun, wind, night sky and rain are left out: equipment under a roof.
class StoredUnit {
 public:
  // Starts in balance with the first hour's air (air-conditioned: with its room).
  StoredUnit(shop::Storage storage, const WeatherHour& first, const StorageSettings& settings = {});

  SurfaceHour hour(const WeatherHour& weather);

 private:
  SurfaceHour in_shed(const WeatherHour& weather);
  SurfaceHour in_room(const WeatherHour& weather);
  SurfaceHour in_case(const WeatherHour& weather);
  SurfaceHour in_heated_case(const WeatherHour& weather);
  SurfaceHour in_conditioned_room(const WeatherHour& weather);

  shop::Storage storage_;
  StorageSettings settings_;
  double unit_step_, room_heat_step_, room_vapour_step_, wall_step_, case_step_, case_vapour_step_;
  Temperature air_, surface_, wall_;
  Pressure vapour_;  // in a closed case: with the water on its walls counted as if it were vapour
};

std::string_view name(shop::Storage storage);  // "open_shed" and so on

}  // namespace dampward::exposure
