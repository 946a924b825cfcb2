#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/id.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"
#include "core/shop/costs.h"

namespace dampward::shop {

// Where equipment stands between treatments.
enum class Storage { open_shed, closed_room, closed_case, heated_case, air_conditioned };

// What a generator, or a weak line, gives all the shop together.
struct PowerSupply {
  Power gives;      // for hours on end, as its plate says
  Power always_on;  // fans, lights, benches: taken off before anything is planned
  Power left() const { return gives - always_on; }
};

struct Site {
  std::string name;
  std::string time_zone;  // IANA name
  WallClock clock{std::chrono::seconds(0)};
  Length altitude;
  std::string weather_file;             // path as written; empty: none
  std::optional<DepositionRate> salt;   // chloride deposition
  std::optional<Length> surf_distance;  // used to estimate salt where it was not measured
  std::vector<Storage> storage;         // how sets are stored and used in the field
  std::optional<PowerSupply> power;     // none: nobody wrote a limit down, and none is kept to
  std::optional<Mass>
      lifts;  // the most a lift table, hoist or crane takes up; none: everything is lifted by hand
};

struct DailyHours {
  std::chrono::minutes from, to;  // local time of day; `to` may be 24:00
};

// Hours of the week, by weekday (std::chrono::weekday::c_encoding(), 0 = Sunday).
struct WeekHours {
  std::map<unsigned, std::vector<DailyHours>> days;
};

struct Lamps {
  int count = 0;
  Power each;
  Length distance;                      // from lamp to the nearest lit part
  double beam_degrees = 0;              // full cone angle
  std::optional<double> radiant_share;  // of the watts that leave as radiation; none: 0.8, an estimate
};

struct Oven {
  OvenId id;
  std::string name;
  Length inside_length, inside_width, inside_height;
  std::string
      wall;  // id of a wall construction: bare_steel, insulated_25mm, insulated_50mm, brick, wood_lined
  std::optional<Power> heater;
  std::optional<Lamps> lamps;
  bool air_moves = false;  // a fan stirs the air inside
  Temperature coldest_setting, hottest_setting;
  TemperatureStep swing;            // thermostat: plus or minus about the set point
  TemperatureStep evenness;         // hottest place above (and coldest below) the control sensor
  VolumeFlow vent;                  // fresh air through the oven
  bool independent_cutoff = false;  // a second sensor that cuts the power by itself
  Power supply;                     // what the socket or generator can give it
  WeekHours powered;
  std::string room;                         // room it stands in, as named by the spray place
  std::optional<Length> distance_to_spray;  // none: counts as the same room
  bool control_amid_load = false;           // control thermostat amid the load
  bool separate_thermometer = false;
};

enum class PlaceKind { booth, room, van, tent, outdoors };

struct HeatSource {
  std::string name;
  std::string room;
  std::optional<Length> distance;  // from the spray place; none: counts as the same room
};

struct SprayPlace {
  std::string name;
  PlaceKind kind = PlaceKind::room;
  std::string room;  // room it stands in
  Length length, width, height;
  std::optional<VolumeFlow> fan;  // measured or rated extraction
  std::optional<double> air_changes_per_hour;
  double mixing = 0.3;  // 0.1 poorly mixed to 1 perfectly mixed
  bool opening_to_outside = false;
  bool ventilated_booth = false;  // stated to be a booth with measured face velocity
  bool low_extraction = false;
  int ways_out = 1;
  bool shelter_from_dust = false, shelter_from_rain = false;
  bool makeup_air_filtered = false;
  std::optional<RelativeHumidity>
      dried_to;  // kept at or under it while lacquer goes on; none: as damp as the day
  std::vector<HeatSource> heat_sources;
};

enum class GunKind { suction_gun, gravity_gun, hvlp, aerosol, brush };

struct Gun {
  GunId id;
  std::string name;
  GunKind kind = GunKind::brush;
  bool power = false;  // fed by a compressor of its own all day ("power gun"); else a hand gun
  std::optional<Power>
      draws;  // what it takes from the supply while it is used; none: nobody said, or nothing
  Range<TransferEfficiency> efficiency;
  VolumeFlow fluid_rate;
};

struct Person {
  PersonId id;  // a role, never a real name
  std::string name;
  std::vector<std::string>
      skills;  // make_safe, test, strip, clean, mask, oven, spray, brush, touch_up, mark, assemble
  WeekHours shifts;
  std::vector<DailyHours> breaks;  // every working day
  std::string language;            // of their sheets, ISO 639-1; empty: none of their own
};

struct Station {
  StationId id;
  std::string name;
  int places = 1;                   // units worked on at once
  std::vector<std::string> serves;  // skills done here
};

struct Instrument {
  InstrumentId id;
  std::string name;
  std::string measures;     // temperature, humidity, insulation, film, viscosity …
  std::string uncertainty;  // as written, with unit
  std::optional<Date> calibrated, calibration_due;
};

// The workshop as its lead describes it.
struct Shop {
  Site site;
  std::vector<Oven> ovens;
  SprayPlace spray;
  std::vector<Gun> guns;
  std::vector<Person> crew;
  std::vector<Station> stations;
  std::vector<Instrument> instruments;
  LacquerId lacquer;        // the one in use
  bool valves_stay = true;  // as masks for their own sockets; false: they come out
  Temperature tape_rating = Temperature::celsius(60);
  Costs costs;  // of changing it
};

}  // namespace dampward::shop
