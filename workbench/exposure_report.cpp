#include "workbench/exposure_report.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::workbench {
namespace {

using namespace exposure;

constexpr double seen_by_eye = 3;  // mould index

std::string_view in_words(shop::Storage storage) {
  constexpr std::array<std::string_view, 5> words = {"an open shed", "a closed room", "a closed case",
                                                     "a heated case",
                                                     "an air-conditioned room with carry-out"};
  return words[static_cast<std::size_t>(storage)];
}

std::string_view materials_of(MouldClass mould_class) {
  constexpr std::array<std::string_view, 4> words = {
      "raw wood, leather, cotton webbing, kraft paper and anything greasy or dirty",
      "paper-faced and glued wood, cloth-covered wire and cut edges of phenolic paper",
      "plasticised vinyl and dusty paint", "clean metal, glass, ceramic and sound lacquer"};
  return words[static_cast<std::size_t>(mould_class)];
}

std::string_view month_name(unsigned month) {
  constexpr std::array<std::string_view, 12> names = {"January",   "February", "March",    "April",
                                                      "May",       "June",     "July",     "August",
                                                      "September", "October",  "November", "December"};
  return names[month - 1];
}

unsigned month_of(LocalTime time) {
  return static_cast<unsigned>(
      std::chrono::year_month_day(std::chrono::floor<std::chrono::days>(time)).month());
}

std::vector<shop::Storage> each_once(const std::vector<shop::Storage>& asked) {
  std::vector<shop::Storage> all = asked;
  if (all.empty()) {
    all = {shop::Storage::open_shed, shop::Storage::closed_room, shop::Storage::closed_case,
           shop::Storage::heated_case, shop::Storage::air_conditioned};
  }
  std::vector<shop::Storage> once;
  for (const shop::Storage storage : all) {
    if (std::find(once.begin(), once.end(), storage) == once.end()) once.push_back(storage);
  }
  return once;
}

CorrosionReport corrosion_of(const Climate& climate, const ExposureQuestion& question) {
  CorrosionReport report;
  report.salt = question.salt            ? given_salt(*question.salt)
                : question.surf_distance ? estimated_salt(*question.surf_distance)
                                         : unknown_salt();
  report.sulphur_dioxide = question.sulphur_dioxide;
  report.metals = first_year_loss(climate.mean_temperature, climate.mean_humidity, report.salt.chloride,
                                  question.sulphur_dioxide);
  std::stable_sort(report.metals.begin(), report.metals.end(),
                   [](const MetalLoss& a, const MetalLoss& b) { return a.category > b.category; });
  report.warnings = outside_validity(climate.mean_temperature, climate.mean_humidity, report.salt.chloride,
                                     question.sulphur_dioxide);
  return report;
}

std::string about_store(const StorageExposure& store) {
  const std::size_t most_ready = 0;  // the class mould takes first
  std::string sentence = format(
      "Sets kept in {}: mould index up to {} on leather, webbing and dirt, {} where it does not die back in "
      "dry spells",
      in_words(store.storage), fixed(store.mould_max[most_ready], 1),
      fixed(store.mould_max_held[most_ready], 1));
  if (store.first_seen[most_ready]) {
    sentence += format("; seen by eye from {} on", month_name(month_of(*store.first_seen[most_ready])));
  }
  sentence += format("; {} h with water on set or case, {} h with left salt turned to brine.",
                     fixed(store.condensation.in(hour), 0), store.brine_hours);
  return sentence;
}

// Worst store first: by mould where it holds, in tenths of an index point, then by hours with water on the set.
std::vector<StorageExposure> worst_first(std::vector<StorageExposure> stores) {
  std::stable_sort(stores.begin(), stores.end(), [](const StorageExposure& a, const StorageExposure& b) {
    const auto tenths = [](const StorageExposure& store) {
      return std::lround(10 * store.mould_max_held[0]);
    };
    return tenths(a) != tenths(b) ? tenths(a) > tenths(b) : a.condensation > b.condensation;
  });
  return stores;
}

std::vector<std::string> about_surfaces(const StorageExposure& store) {
  std::vector<std::string> sentences;
  for (const MouldClass mould_class : mould_classes) {
    const auto i = static_cast<std::size_t>(mould_class);
    if (store.mould_max_held[i] < seen_by_eye) continue;
    sentences.push_back(format("In {} mould may be seen on {} (index {} to {}): these first.",
                               in_words(store.storage), materials_of(mould_class),
                               fixed(store.mould_max[i], 1), fixed(store.mould_max_held[i], 1)));
  }
  if (sentences.empty() && store.xerophile_hours > 0) {
    sentences.push_back(
        format("In {} no mould is expected to be seen, but for {} h surfaces stand at 70 to 80 %, where "
               "dry-loving moulds may "
               "take leather, grease and dust: clean these.",
               in_words(store.storage), store.xerophile_hours));
  }
  if (store.brine_hours > 0) {
    sentences.push_back("Wash salt and sweat off before coating: salt under a film draws water through it.");
  }
  return sentences;
}

std::string about_metal(const CorrosionReport& corrosion) {
  const MetalLoss& metal = corrosion.metals.front();
  return format("Bare {} stands worst among the metals outdoors: {} ({} at worst); salt {}.",
                name(metal.metal), name(metal.category), name(metal.worst), corrosion.salt.source);
}

std::vector<std::string> treat_first(const std::vector<StorageExposure>& stores,
                                     const CorrosionReport& corrosion, const Climate& climate) {
  const std::vector<StorageExposure> ranked = worst_first(stores);
  std::vector<std::string> sentences;
  for (const StorageExposure& store : ranked) sentences.push_back(about_store(store));
  for (const std::string& sentence : about_surfaces(ranked.front())) sentences.push_back(sentence);
  sentences.push_back(about_metal(corrosion));
  if (!climate.worst_months.empty()) {
    std::vector<std::string> months;
    for (const unsigned month : climate.worst_months) months.emplace_back(month_name(month));
    sentences.push_back(format("Have sets treated before the wettest months: {}.", listed(months)));
  }
  return sentences;
}

std::vector<std::string> limits_of_the_models() {
  return {
      "Sun, wind, rain and night sky on the store are left out; how fast stores follow the weather is an "
      "estimate.",
      "The mould model was fitted to wood and building materials; which of our materials belongs to which "
      "class is a judgement; its "
      "decline is that of pine, so the index where growth holds stands beside it.",
      "Corrosion figures are for bare metal outdoors and rank places; inside a set only test coupons tell.",
      "Hours inside gaps of the weather file are left out of every count.",
  };
}

}  // namespace

ExposureReport exposure_report(const Weather& weather, const ExposureQuestion& question) {
  ExposureReport report;
  report.station = weather.station;
  report.kind = weather.kind;
  report.latitude = weather.latitude;
  report.longitude = weather.longitude;
  report.elevation = weather.elevation;
  report.ahead_of_utc = weather.ahead_of_utc;
  report.hours = static_cast<int>(weather.hours.size());
  report.filled_hours = weather.filled_hours;
  report.clamped_hours = weather.clamped_hours;
  report.dew_above_dry_hours = weather.dew_above_dry_hours;
  report.gaps = weather.gaps;
  report.climate = climate_of(weather);
  report.wet_hours = report.climate.wet_hours;
  for (const shop::Storage storage : each_once(question.storage)) {
    report.storage.push_back(expose(weather, storage, question.settings));
  }
  report.corrosion = corrosion_of(report.climate, question);
  report.treat_first = treat_first(report.storage, report.corrosion, report.climate);
  report.left_out = limits_of_the_models();
  return report;
}

}  // namespace dampward::workbench
