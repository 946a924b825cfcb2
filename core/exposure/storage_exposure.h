#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/exposure/mould.h"
#include "core/exposure/stored_unit.h"
#include "core/exposure/weather.h"

namespace dampward::exposure {

// One calendar month in one store; all years of the record together.
struct MonthInStore {
  unsigned month = 1;
  int hours = 0;
  Temperature mean_surface;
  RelativeHumidity mean_humidity;  // at the surface
  Temperature dew_point_95;        // of the air about the unit
  int wet_hours = 0;               // surface above 80 % and above 0 °C
  Duration condensation;
  MouldIndices mould_end{};  // at the end of the month's last year
};

// The 30-day rule of ASHRAE 160-2009 for surfaces: where the running mean temperature of 30 days is 5 to 40 °C, the
// running mean humidity stays below 80 %. Source: abstract of a symposium paper on the standard (ASTM STP 1599, read).
struct ThirtyDayRule {
  bool passed = true;  // also where the record is shorter than 30 days: see `judged`
  bool judged = false;
  std::optional<RelativeHumidity> worst_mean;  // highest 30-day mean while the rule applied
};

// What a way of storing does to a unit over the record.
struct StorageExposure {
  shop::Storage storage = shop::Storage::open_shed;
  Duration condensation;
  int wet_hours = 0;  // surface above 80 % and above 0 °C
  int xerophile_hours =
      0;  // surface 70 to 80 % above 0 °C: below every class's threshold, yet dry-loving moulds may grow
          // on leather, grease and dust (germination of Eurotium repens, Gock et al. 2003, abstract read)
  int brine_hours = 0;     // table salt left on the unit is liquid
  int sea_salt_hours = 0;  // magnesium chloride, the first of sea salt and sweat to draw water, is liquid
  MouldIndices mould_max{}, mould_end{};  // decline as published for pine
  MouldIndices
      mould_max_held{};  // highest where the surface holds its growth through dry spells: the safe side
  std::array<std::optional<LocalTime>, 4> first_seen{};  // when each class reached index 3
  ThirtyDayRule thirty_days;
  std::vector<MonthInStore> months;  // those the record has, January first
};

// One pass through the record, mould from index 0. A gap stops the clock: states are kept across it.
// Promise: the record has at least one hour.
StorageExposure expose(const Weather& weather, shop::Storage storage, const StorageSettings& settings = {});

}  // namespace dampward::exposure
