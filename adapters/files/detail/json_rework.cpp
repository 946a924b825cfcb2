#include "adapters/files/detail/json_rework.h"

namespace dampward::files::detail {

Json moved_json(const workbench::Plan& plan) {
  Json moved = Json::array();
  for (const workbench::MovedStep& step : plan.moved) {
    moved.push_back({{"unit", step.unit.text},
                     {"step", step.step},
                     {"was_at", iso_text(step.was, plan.clock)},
                     {"now_at", iso_text(step.now, plan.clock)},
                     {"why", step.why}});
  }
  return moved;
}

Json rework_json(const workbench::Plan& plan) {
  Json list = Json::array();
  for (const workbench::Rework& rework : plan.rework) {
    Json ways = Json::array();
    for (std::size_t i = 0; i < rework.ways.size(); ++i) {
      const workbench::ReworkWay& way = rework.ways[i];
      ways.push_back({{"way", way.way},
                      {"what", way.words},
                      {"added_h", rounded(way.added.in(hour), 2)},
                      {"crew_min", rounded(way.crew.in(minute), 0)},
                      {"lacquer_l", range_json(way.lacquer, litre, 3)},
                      {"thinner_l", range_json(way.thinner, litre, 3)},
                      {"safe", way.safe},
                      {"reason", way.reason},
                      {"planned", i == rework.chosen}});
    }
    list.push_back({{"unit", rework.unit.text},
                    {"event", rework.event},
                    {"cause", rework.cause},
                    {"happened_at", iso_text(rework.at, plan.clock)},
                    {"rule", rework.rule},
                    {"ways", ways}});
  }
  return list;
}

}  // namespace dampward::files::detail
