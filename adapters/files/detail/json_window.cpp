#include "adapters/files/detail/json_window.h"

namespace dampward::files::detail {
namespace {

double minutes(Duration time) {
  return rounded(time.in(minute), 1);
}
Json minutes_or_null(const std::optional<Duration>& time) {
  return time ? Json(minutes(*time)) : Json(nullptr);
}

}  // namespace

Json damp_back_json(const std::vector<workbench::DampBackIn>& parts) {
  Json all = Json::array();
  for (const workbench::DampBackIn& part : parts) {
    all.push_back({{"part", part.part.text},
                   {"name", part.name},
                   {"back_pct", rounded(part.share * 100, 1)},
                   {"tenth_back_after_min", minutes(part.tenth_back)},
                   {"gates", part.gates},
                   {"remedy", part.words}});
  }
  return all;
}

Json window_json(const workbench::Window& window, const WallClock& clock) {
  const auto at = [&](Duration after) {
    return iso_text(window.leaves_oven + std::chrono::seconds(static_cast<long>(after.in(second))), clock);
  };
  return {{"unit", window.unit.text},
          {"leaves_oven_at", iso_text(window.leaves_oven, clock)},
          {"first_coat_at", iso_text(window.first_coat, clock)},
          {"opens_after_min", minutes(window.opens_after)},
          {"opens_at", at(window.opens_after)},
          {"opened_by", window.opened_by},
          {"closes_after_min", minutes(window.closes_after)},
          {"closes_at", at(window.closes_after)},
          {"closed_by", window.closed_by},
          {"window_min", minutes(window.closes_after - window.opens_after)},
          {"trade_opens_after_min", minutes(window.trade_opens_after)},
          {"damp_back", damp_back_json(window.damp_back)}};
}

Json remedies_json(const std::vector<workbench::WindowRemedy>& remedies) {
  Json all = Json::array();
  for (const workbench::WindowRemedy& remedy : remedies) {
    Json told = {{"way", remedy.way},
                 {"opens", remedy.opens},
                 {"words", remedy.words},
                 {"first_coat_after_min", minutes_or_null(remedy.first_coat_after)},
                 {"open_for_min", minutes_or_null(remedy.open_for)},
                 {"occupies", remedy.occupies}};
    if (!remedy.first_coat_after) told["first_coat_after_min_reason"] = remedy.words;
    if (!remedy.open_for)
      told["open_for_min_reason"] = remedy.opens ? "nothing ends it in that air" : remedy.words;
    all.push_back(told);
  }
  return all;
}

Json step_down_json(const std::optional<workbench::StepDownHold>& hold) {
  Json all = Json::array();
  if (hold) {
    all.push_back({{"to_c", rounded(hold->to.celsius(), 1)},
                   {"takes_min", minutes(hold->takes)},
                   {"at_most_min", minutes(hold->at_most)},
                   {"humidity_pct", rounded(hold->humidity.percent(), 0)}});
  }
  return all;
}

}  // namespace dampward::files::detail
