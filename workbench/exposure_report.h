#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/exposure/climate.h"
#include "core/exposure/corrosion.h"
#include "core/exposure/storage_exposure.h"
#include "core/exposure/weather.h"
#include "core/shop/shop.h"

namespace dampward::workbench {

struct CorrosionReport {
  exposure::SaltDeposition salt;  // with its source in words
  DepositionRate sulphur_dioxide;
  std::vector<exposure::MetalLoss> metals;  // worst category first
  std::vector<std::string> warnings;        // outside the functions' range; each a sentence
};

// What a climate does to equipment kept in each of the ways asked for.
struct ExposureReport {
  std::string station, kind;  // kind of file: EPW, TMY3 CSV or NSRDB CSV
  std::optional<double> latitude, longitude;
  std::optional<Length> elevation;
  std::chrono::minutes ahead_of_utc{
      0};         // of the file's local standard time, also for `gaps` and `first_seen`
  int hours = 0;  // counted, filled ones included
  int filled_hours = 0, clamped_hours = 0, dew_above_dry_hours = 0;
  std::vector<exposure::WeatherGap> gaps;          // left out
  int wet_hours = 0;                               // outdoors, above 80 % and above 0 °C
  exposure::Climate climate;                       // months of the weather itself, worst months
  std::vector<exposure::StorageExposure> storage;  // in the order asked for, each once
  CorrosionReport corrosion;
  std::vector<std::string> treat_first;  // sentences with numbers, most urgent first
  std::vector<std::string> left_out;     // what the models do not know; each a sentence
};

struct ExposureQuestion {
  std::vector<shop::Storage> storage;  // empty: every way of storing
  std::optional<DepositionRate> salt;  // measured chloride; goes before the distance
  std::optional<Length> surf_distance;
  DepositionRate sulphur_dioxide = 5 * milligram_per_square_metre_day;  // countryside; an estimate
  exposure::StorageSettings settings;
};

// Promise: the weather has at least one hour (a reader refuses a file without any).
ExposureReport exposure_report(const exposure::Weather& weather, const ExposureQuestion& question = {});

}  // namespace dampward::workbench
