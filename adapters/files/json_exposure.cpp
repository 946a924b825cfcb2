#include "adapters/files/json_documents.h"
#include "adapters/files/json_values.h"
#include "core/base/civil_time.h"
#include "workbench/exposure_report.h"

namespace dampward::files {
namespace {

using workbench::ExposureReport;

double celsius(Temperature t) {
  return rounded(t.celsius(), 1);
}
double hours(Duration time) {
  return rounded(time.in(hour), 1);
}
double micrometres_a_year(Speed loss) {
  return rounded(loss.in(micrometre / year), 2);
}

Json degrees(const std::optional<double>& angle) {
  return angle ? Json(rounded(*angle, 3)) : Json(nullptr);
}

// The file's own local standard time.
std::string stamp(LocalTime time, const ExposureReport& report) {
  const WallClock clock{std::chrono::duration_cast<std::chrono::seconds>(report.ahead_of_utc)};
  return iso_text(clock.instant(time), clock);
}

Json by_class(const exposure::MouldIndices& indices) {
  Json json = Json::object();
  for (std::size_t i = 0; i < exposure::mould_classes.size(); ++i) {
    json[std::string(name(exposure::mould_classes[i]))] = rounded(indices[i], 2);
  }
  return json;
}

Json month_json(const exposure::MonthInStore& month) {
  return {{"month", month.month},
          {"hours", month.hours},
          {"mean_surface_c", celsius(month.mean_surface)},
          {"mean_humidity_pct", rounded(month.mean_humidity.percent(), 1)},
          {"dew_point_95_c", celsius(month.dew_point_95)},
          {"wet_hours", month.wet_hours},
          {"condensation_hours", hours(month.condensation)},
          {"mould_index_end", by_class(month.mould_end)}};
}

Json storage_json(const exposure::StorageExposure& storage, const ExposureReport& report) {
  Json months = Json::array();
  for (const auto& month : storage.months) months.push_back(month_json(month));
  Json seen = Json::object();
  for (std::size_t i = 0; i < exposure::mould_classes.size(); ++i) {
    const auto& first = storage.first_seen[i];
    seen[std::string(name(exposure::mould_classes[i]))] = first ? Json(stamp(*first, report)) : Json(nullptr);
  }
  const auto& rule = storage.thirty_days;
  Json json = {{"condensation_hours", hours(storage.condensation)},
               {"wet_surface_hours", storage.wet_hours},
               {"xerophile_hours", storage.xerophile_hours},
               {"brine_hours", storage.brine_hours},
               {"sea_salt_hours", storage.sea_salt_hours},
               {"mould_index_max", by_class(storage.mould_max)},
               {"mould_index_max_held", by_class(storage.mould_max_held)},
               {"mould_index_end", by_class(storage.mould_end)},
               {"mould_first_seen_at", seen},
               {"mould_first_seen_at_reason",
                "null: the index of that class never reached 3, the first growth seen by eye"},
               {"thirty_day_rule_passed", rule.judged ? Json(rule.passed) : Json(nullptr)}};
  json["thirty_day_worst_mean_pct"] =
      rule.worst_mean ? Json(rounded(rule.worst_mean->percent(), 1)) : Json(nullptr);
  if (!rule.judged) json["thirty_day_rule_passed_reason"] = "no 30 days between 5 and 40 °C in a row";
  if (!rule.worst_mean) json["thirty_day_worst_mean_pct_reason"] = "no 30 days between 5 and 40 °C in a row";
  json["months"] = months;
  return json;
}

Json climate_month_json(const exposure::MonthClimate& month) {
  return {{"month", month.month},
          {"hours", month.hours},
          {"mean_temperature_c", celsius(month.mean_temperature)},
          {"temperature_95_c", celsius(month.temperature_95)},
          {"mean_humidity_pct", rounded(month.mean_humidity.percent(), 1)},
          {"dew_point_95_c", celsius(month.dew_point_95)},
          {"humidity_95_pct", rounded(month.humidity_95.percent(), 1)},
          {"wet_hours", month.wet_hours}};
}

Json corrosion_json(const workbench::CorrosionReport& corrosion) {
  Json metals = Json::array();
  for (const auto& metal : corrosion.metals) {
    metals.push_back({{"metal", name(metal.metal)},
                      {"first_year_loss_um",
                       {{"low", micrometres_a_year(metal.loss.low)},
                        {"typical", micrometres_a_year(metal.loss.typical)},
                        {"high", micrometres_a_year(metal.loss.high)}}},
                      {"category", name(metal.category)},
                      {"category_worst", name(metal.worst)}});
  }
  return {{"salt_mg_per_m2_day", range_json(corrosion.salt.chloride, milligram_per_square_metre_day, 1)},
          {"salt_source", corrosion.salt.source},
          {"sulphur_dioxide_mg_per_m2_day",
           rounded(corrosion.sulphur_dioxide.in(milligram_per_square_metre_day), 1)},
          {"metals", metals},
          {"warnings", corrosion.warnings}};
}

}  // namespace

std::string exposure_json(const ExposureReport& report) {
  Json gaps = Json::array(), months = Json::array(), storage = Json::object();
  for (const auto& gap : report.gaps) {
    gaps.push_back({{"from", stamp(gap.from, report)}, {"to", stamp(gap.to, report)}, {"hours", gap.hours}});
  }
  for (const auto& month : report.climate.months) months.push_back(climate_month_json(month));
  for (const auto& store : report.storage)
    storage[std::string(exposure::name(store.storage))] = storage_json(store, report);
  return document(
      {{"verb", "exposure"},
       {"station", report.station},
       {"file_kind", report.kind},
       {"latitude_deg", degrees(report.latitude)},
       {"longitude_deg", degrees(report.longitude)},
       {"elevation_m", report.elevation ? Json(rounded(report.elevation->in(metre), 0)) : Json(nullptr)},
       {"place_reason", "null: the file does not say"},
       {"hours", report.hours},
       {"filled_hours", report.filled_hours},
       {"gaps", gaps},
       {"clamped_hours", report.clamped_hours},
       {"dew_above_dry_hours", report.dew_above_dry_hours},
       {"wet_hours", report.wet_hours},
       {"worst_months", report.climate.worst_months},
       {"months", months},
       {"storage", storage},
       {"corrosion", corrosion_json(report.corrosion)},
       {"treat_first", report.treat_first},
       {"left_out", report.left_out},
       {"faults", Json::array()}});
}

}  // namespace dampward::files
