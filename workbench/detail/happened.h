#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/history/history.h"
#include "core/line/problem.h"
#include "workbench/detail/drafts.h"
#include "workbench/detail/happened_steps.h"

namespace dampward::workbench {

// The plan as drafted, put right by what happened: loads as they went into ovens, rework in the routes.
struct Happened {
  Drafts drafts;
  std::map<UnitId, HappenedSteps> steps;  // of every unit of the drafts
  std::vector<Rework> rework;
  std::vector<std::string> doubts;  // what of the log the plan does not know
};

// Problems, each naming its event: a step the unit's route does not have, one that came before the step it follows had ended,
// units baked together that the oven does not bake. `drafts` are those of the plan without the log.
Result<Happened> as_happened(const Drafts& drafts, const history::History& history,
                             const DraftingTable& table);

// Loads (places in the drafts) into which some unit has gone: they stay as they are.
std::set<std::size_t> begun_loads(const Happened& happened);

// Fixes in the problem of these drafts what has begun by minute `now`, and takes out who and what is missing. `before` is the
// answer without the log: where the log names no place, the planned one stands.
void fix_happened(line::Problem& problem, const Happened& happened, const history::History& history,
                  const shop::Shop& shop, const line::Answer& before, Instant from, line::Minute now);

}  // namespace dampward::workbench
