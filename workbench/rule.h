#pragma once

#include <span>
#include <string>
#include <string_view>

#include "core/line/answer.h"

namespace dampward::workbench {

// The rules that can keep a unit out of a plan. Their words are part of the JSON answer and stay.
enum class Rule {
  isolation,           // some part carries a hazard for a licensed hand
  limit_unknown,       // nobody knows how hot some part may become
  room_above_limit,    // the shop itself is hotter than some part may become
  heat_near_solvent,   // something hot within 6.1 m of solvent work
  way_out,             // the spray place has none
  watcher,             // nobody is left outside a small closed space
  solvents_unknown,    // nobody knows what the lacquer or its thinner gives off
  isocyanate,          // the lacquer sets it free
  coating_method,      // nothing to put the lacquer on with, or nobody who may
  cleaner,             // nothing here takes some soil off
  vapour_share,        // one gun alone would pass the share of the lower flammable limit
  respirator,          // the air at the gun is above the highest use of every class
  warm_window,         // no time at which every surface may be coated
  longest_gap,         // a longest gap, the warm window's for one, cannot be kept in these hours
  contradicting_gaps,  // gaps that cannot be kept together
  lifting,             // too few people to carry it, and no lifting aid
  skill,               // too few people with a skill
  shift,               // no shift is long enough
  watch,               // no stretch with power and somebody within call is long enough
  station,             // nowhere to do it
  vapour_over_time,    // it alone gives off more than the place takes
  power,               // it alone takes more than the supply gives
  horizon,             // the end of the plan comes first
  stopped,             // the planner was told to stop
};

std::span<const Rule> all_rules();
// As JSON and docs/cli.md write it: "limit_unknown".
std::string_view word(Rule rule);
// The rule in a short sentence for a person, without a full stop.
std::string_view sentence(Rule rule);
// The rule behind what stands in an operation's way; a capacity is known by its id.
Rule rule_of(line::Obstacle obstacle, std::string_view by = {});
// The capacities of a shop's timetable: vapour in mg a minute, power in watts.
inline constexpr std::string_view vapour_capacity = "vapour", power_capacity = "power";

// Why a unit, or all of a kind, is kept out.
struct Barrier {
  Rule rule = Rule::isolation;
  std::string what;  // id of what stands in the way: a part, skill, soil, oven …; empty: the place as a whole
  std::string reason;
  std::string settle;  // what would open the way
};

}  // namespace dampward::workbench
