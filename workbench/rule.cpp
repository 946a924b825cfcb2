#include "workbench/rule.h"

#include <array>

#include "core/base/promise.h"

namespace dampward::workbench {
namespace {

struct Row {
  Rule rule;
  std::string_view word, sentence;
};

constexpr Row rows[] = {
    {Rule::isolation, "isolation", "a part that only a licensed hand may touch keeps the whole unit closed"},
    {Rule::limit_unknown, "limit_unknown", "no part is heated whose limit nobody knows"},
    {Rule::room_above_limit, "room_above_limit", "no part is kept where it is hotter than its limit"},
    {Rule::heat_near_solvent, "heat_near_solvent", "nothing hot within 6.1 m of solvent work"},
    {Rule::way_out, "way_out", "no solvent work without a way out"},
    {Rule::watcher, "watcher", "nobody works alone with solvent in a small closed space"},
    {Rule::solvents_unknown, "solvents_unknown", "no lacquer or thinner of unknown solvents"},
    {Rule::isocyanate, "isocyanate", "no lacquer that sets isocyanate free"},
    {Rule::coating_method, "coating_method", "somebody and something to put the lacquer on with"},
    {Rule::cleaner, "cleaner", "every soil comes off before the coat goes on"},
    {Rule::vapour_share, "vapour_share", "the air stays under its share of the lower flammable limit"},
    {Rule::respirator, "respirator", "nobody breathes air above the highest use of every respirator"},
    {Rule::warm_window, "warm_window",
     "every coat goes on below the lacquer's hottest surface and above the dew point with its margin"},
    {Rule::longest_gap, "longest_gap", "what must follow in time follows in time"},
    {Rule::contradicting_gaps, "contradicting_gaps", "waits that can all be kept"},
    {Rule::lifting, "lifting", "nobody carries more than the team for it can lift"},
    {Rule::skill, "skill", "every step by somebody with the skill"},
    {Rule::shift, "shift", "hands-on work within one shift"},
    {Rule::watch, "watch", "a hot oven has power and somebody within call all the time"},
    {Rule::station, "station", "every step at a place for it"},
    {Rule::vapour_over_time, "vapour_over_time", "no step gives off more vapour than the place takes"},
    {Rule::power, "power", "nothing takes more power than the supply gives"},
    {Rule::horizon, "horizon", "all work before the end of the plan"},
    {Rule::stopped, "stopped", "the planner was told to stop first"},
};

const Row& row_of(Rule rule) {
  for (const Row& row : rows) {
    if (row.rule == rule) return row;
  }
  broken_promise("every rule has its words");
}

}  // namespace

std::span<const Rule> all_rules() {
  static const auto rules = [] {
    std::array<Rule, std::size(rows)> all{};
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = rows[i].rule;
    return all;
  }();
  return rules;
}

std::string_view word(Rule rule) {
  return row_of(rule).word;
}

std::string_view sentence(Rule rule) {
  return row_of(rule).sentence;
}

Rule rule_of(line::Obstacle obstacle, std::string_view by) {
  switch (obstacle) {
    case line::Obstacle::gap:
      return Rule::longest_gap;
    case line::Obstacle::cycle:
      return Rule::contradicting_gaps;
    case line::Obstacle::skill:
      return Rule::skill;
    case line::Obstacle::shift:
      return Rule::shift;
    case line::Obstacle::watch:
      return Rule::watch;
    case line::Obstacle::station:
      return Rule::station;
    case line::Obstacle::capacity:
      return by == power_capacity ? Rule::power : Rule::vapour_over_time;
    case line::Obstacle::solvent:
      return Rule::heat_near_solvent;
    case line::Obstacle::horizon:
      return Rule::horizon;
    case line::Obstacle::stopped:
      return Rule::stopped;
  }
  broken_promise("every obstacle has its rule");
}

}  // namespace dampward::workbench
