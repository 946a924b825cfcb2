#include "core/exposure/stored_unit.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/promise.h"
#include "core/moist_air/saturation.h"

namespace dampward::exposure {
namespace {

using moist_air::saturation_pressure;
using moist_air::saturation_temperature;
using shop::Storage;

// Share of its distance to the surroundings that a lagging body covers in an hour of steady surroundings.
double step_of(Duration lag) {
  return -std::expm1(-(hour / lag));
}

void follow(Temperature& body, Temperature surroundings, double step) {
  body = body + step * (surroundings - body);
}

void follow(Pressure& body, Pressure surroundings, double step) {
  body += step * (surroundings - body);
}

Pressure vapour_of(const WeatherHour& weather) {
  return weather.humidity.fraction() * saturation_pressure(weather.temperature);
}

RelativeHumidity at_surface(Pressure vapour, Pressure saturation) {
  return RelativeHumidity::fraction(std::min(vapour / saturation, 1.0));
}

}  // namespace

StoredUnit::StoredUnit(Storage storage, const WeatherHour& first, const StorageSettings& settings)
    : storage_(storage),
      settings_(settings),
      unit_step_(step_of(settings.unit_heat)),
      room_heat_step_(step_of(settings.room_heat)),
      room_vapour_step_(step_of(settings.room_vapour)),
      wall_step_(step_of(settings.case_wall_heat)),
      case_step_(step_of(settings.case_heat)),
      case_vapour_step_(step_of(settings.case_vapour)),
      air_(first.temperature),
      surface_(first.temperature),
      wall_(first.temperature),
      vapour_(vapour_of(first)) {
  if (storage == Storage::heated_case) surface_ = surface_ + settings.case_heating;
  if (storage == Storage::air_conditioned) surface_ = settings.conditioned;
}

SurfaceHour StoredUnit::hour(const WeatherHour& weather) {
  switch (storage_) {
    case Storage::open_shed:
      return in_shed(weather);
    case Storage::closed_room:
      return in_room(weather);
    case Storage::closed_case:
      return in_case(weather);
    case Storage::heated_case:
      return in_heated_case(weather);
    case Storage::air_conditioned:
      return in_conditioned_room(weather);
  }
  broken_promise("every way of storing has a model");
}

SurfaceHour StoredUnit::in_shed(const WeatherHour& weather) {
  follow(surface_, weather.temperature, unit_step_);
  const Pressure vapour = vapour_of(weather), saturation = saturation_pressure(surface_);
  return {weather.temperature, surface_, vapour, at_surface(vapour, saturation),
          vapour > saturation ? dampward::hour : Duration{}};
}

SurfaceHour StoredUnit::in_room(const WeatherHour& weather) {
  follow(air_, weather.temperature, room_heat_step_);
  follow(vapour_, vapour_of(weather), room_vapour_step_);
  follow(surface_, air_, unit_step_);
  const Pressure saturation = saturation_pressure(surface_);
  const bool wet = vapour_ > saturation;
  vapour_ = std::min(vapour_, saturation);  // the rest settles on walls and unit
  return {air_, surface_, vapour_, at_surface(vapour_, saturation), wet ? dampward::hour : Duration{}};
}

SurfaceHour StoredUnit::in_case(const WeatherHour& weather) {
  follow(wall_, weather.temperature, wall_step_);
  follow(surface_, weather.temperature, case_step_);
  const Pressure saturation = saturation_pressure(surface_);
  const Pressure coldest = std::min(saturation, saturation_pressure(wall_));
  const bool wet = vapour_ > coldest;
  const Pressure inside = std::min(vapour_, coldest);
  vapour_ += case_vapour_step_ * (vapour_of(weather) - inside);
  return {surface_, surface_, inside, at_surface(inside, saturation), wet ? dampward::hour : Duration{}};
}

SurfaceHour StoredUnit::in_heated_case(const WeatherHour& weather) {
  follow(surface_, weather.temperature + settings_.case_heating, case_step_);
  follow(vapour_, vapour_of(weather), case_vapour_step_);
  const Pressure saturation = saturation_pressure(surface_);
  const bool wet = vapour_ > saturation;
  vapour_ = std::min(vapour_, saturation);
  return {surface_, surface_, vapour_, at_surface(vapour_, saturation), wet ? dampward::hour : Duration{}};
}

SurfaceHour StoredUnit::in_conditioned_room(const WeatherHour& weather) {
  const bool outside =
      weather.hour_of_day >= settings_.carried_out && weather.hour_of_day < settings_.carried_in;
  if (!outside) {
    follow(surface_, settings_.conditioned, unit_step_);
    const Pressure vapour =
        settings_.conditioned_humidity.fraction() * saturation_pressure(settings_.conditioned);
    return {settings_.conditioned, surface_, vapour, at_surface(vapour, saturation_pressure(surface_)), {}};
  }
  const Pressure vapour = vapour_of(weather);
  Duration wet;
  if (vapour > saturation_pressure(surface_)) {
    const TemperatureStep behind = weather.temperature - surface_;
    const TemperatureStep from_dew = weather.temperature - saturation_temperature(vapour);
    wet = from_dew > 0 * kelvin ? std::min(settings_.unit_heat * std::log(behind / from_dew), dampward::hour)
                                : dampward::hour;
  }
  follow(surface_, weather.temperature, unit_step_);
  const RelativeHumidity humidity = at_surface(vapour, saturation_pressure(surface_));
  return {weather.temperature, surface_, vapour, humidity, wet};
}

std::string_view name(Storage storage) {
  constexpr std::array<std::string_view, 5> names = {"open_shed", "closed_room", "closed_case", "heated_case",
                                                     "air_conditioned"};
  return names[static_cast<std::size_t>(storage)];
}

}  // namespace dampward::exposure
