#include "adapters/files/detail/json_answers.h"
#include "adapters/files/json_documents.h"
#include "adapters/files/table_reader.h"
#include "adapters/files/words.h"
#include "core/base/format.h"
#include "workbench/air_answer.h"
#include "workbench/rule.h"

namespace dampward::files {
namespace {

using detail::put_or_why;
using Verdict = room_air::RespiratorChoice::Verdict;

constexpr Word<Verdict> verdict_words[] = {
    {"none_needed", Verdict::none_needed}, {"wear", Verdict::wear}, {"refuse", Verdict::refuse}};

constexpr const char* burns_not = "nothing in it burns";
constexpr const char* no_limit = "some solvent has no exposure limit, or the day leaves no rest";

template <class T, class Tell>
Json or_null(const std::optional<T>& value, const Tell& tell) {
  return value ? Json(tell(*value)) : Json(nullptr);
}

Json percent(double share, int digits) {
  return rounded_up(100 * share, digits);
}

// Whose limit it is and of which year, or why there is none.
std::string whose(const std::optional<room_air::RulingLimit>& limit) {
  if (!limit) return "no authority of the table gives one";
  return limit->year > 0 ? format("{} {}", limit->authority, limit->year) : limit->authority;
}

Json part_json(const workbench::VapourPart& part) {
  Json json = {{"name", part.name},
               {"at_the_gun_ppm", rounded_up(part.at_the_gun.ppm(), 1)},
               {"lower_limit_pct", rounded(part.lower_limit.percent(), 2)},
               {"assumed", part.assumed}};
  json["limit_ppm"] = or_null(part.limit, [](const auto& l) { return rounded(l.limit.ppm(), 2); });
  json["reason"] = whose(part.limit);
  return json;
}

// What holds for the air of people, each figure beside why there is none.
void put_people(Json& json, const workbench::AirAnswer& answer) {
  const char* why = answer.lower_limit ? no_limit : burns_not;
  const auto index = [](double value) { return rounded_up(value, 2); };
  json["in_the_room_ppm"] = rounded_up(answer.in_the_room.ppm(), 1);
  json["at_the_gun_ppm"] = rounded_up(answer.at_the_gun.ppm(), 1);
  put_or_why(json, "exposure_room", or_null(answer.exposure_room, index), why);
  put_or_why(json, "exposure_index", or_null(answer.exposure_index, index), why);
  json["at_it_h"] = rounded(answer.at_it.in(hour), 2);
  put_or_why(json, "exposure_day", or_null(answer.exposure_day, index), why);
  json["people_safe"] = answer.people_safe;
  json["respirator"] = {
      {"verdict", std::string(word_of(verdict_words, answer.respirator.verdict))},
      {"name",
       answer.respirator.respirator == nullptr ? "" : std::string(answer.respirator.respirator->name)},
      {"because", answer.respirator.reason}};
  put_or_why(json["respirator"], "highest_use_ppm",
             or_null(answer.highest_use, [](VapourShare share) { return rounded(share.ppm(), 0); }),
             answer.respirator.respirator == nullptr ? "none is worn against vapour"
                                                     : "some figure dangerous to life is not known");
}

}  // namespace

std::string air_json(const workbench::AirAnswer& answer) {
  Json parts = Json::array();
  for (const auto& part : answer.parts) parts.push_back(part_json(part));
  Json json = {{"verb", "air"},
               {"basis", answer.basis},
               {"place", answer.place},
               {"gun", answer.gun},
               {"liquid", answer.liquid},
               {"room_m3", rounded(answer.volume.in(cubic_metre), 2)},
               {"fan_m3_per_min", rounded(answer.fan.in(cubic_metre_per_minute), 2)},
               {"mixing", answer.mixing},
               {"temperature_c", rounded(answer.temperature.celsius(), 1)},
               {"rate_l_per_min", rounded(answer.rate.in(litre_per_minute), 4)},
               {"allowed_lfl_pct", rounded(100 * answer.limit_share, 1)}};
  const auto of_limit = [](double share) { return percent(share, 2); };
  put_or_why(json, "lower_limit_pct",
             or_null(answer.lower_limit, [](VapourShare limit) { return rounded(limit.percent(), 3); }),
             burns_not);
  put_or_why(json, "room_lfl_pct", or_null(answer.room_share, of_limit), burns_not);
  put_or_why(json, "near_lfl_pct", or_null(answer.near_share, of_limit), burns_not);
  json["fire_safe"] = answer.fire_safe;
  put_or_why(json, "most_rate_l_per_min",
             answer.lower_limit ? Json(rounded(answer.most_rate.in(litre_per_minute), 4)) : Json(nullptr),
             burns_not);
  json["fan_fire_m3_per_min"] = rounded_up(answer.fan_fire.in(cubic_metre_per_minute), 1);
  put_or_why(json, "fan_people_m3_per_min",
             or_null(answer.fan_people,
                     [](VolumeFlow flow) { return rounded_up(flow.in(cubic_metre_per_minute), 1); }),
             answer.lower_limit ? no_limit : burns_not);
  put_people(json, answer);
  put_or_why(json, "purge_min",
             or_null(answer.purge, [](Duration time) { return rounded_up(time.in(minute), 0); }),
             answer.lower_limit ? "no fresh air comes in" : burns_not);
  json["parts"] = parts;
  json["closed"] = Json::array();
  if (answer.closed)
    json["closed"].push_back({{"rule", std::string(workbench::word(answer.closed->rule))},
                              {"reason", answer.closed->reason},
                              {"settle", answer.closed->settle}});
  json["because"] = answer.because;
  json["warnings"] = answer.warnings;
  json["cautions"] = detail::cautions_json(answer.cautions);
  json["faults"] = Json::array();
  return document(json);
}

}  // namespace dampward::files
