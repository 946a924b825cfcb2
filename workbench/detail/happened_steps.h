#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/history/history.h"
#include "workbench/detail/unit_draft.h"
#include "workbench/rework.h"

namespace dampward::workbench {

// What happened to one unit, as far as it still counts.
struct HappenedSteps {
  std::map<std::string, const history::StepRecord*> records;  // by step; what a setback undid is not there
  std::vector<Rework> rework;                                 // one a setback, in order of time

  bool has(const std::string& step) const { return records.contains(step); }
  bool ended(const std::string& step) const { return has(step) && records.at(step)->finished.has_value(); }
};

// Reads one unit's part of the history against its route, with a costed way on for each setback.
// `cold_coat` says why the unit may not be coated at room temperature; empty: it may.
HappenedSteps happened_steps(const UnitDraft& unit, const history::History& history, const LoadDraft* load,
                             const std::string& cold_coat);

// Puts the steps of the chosen ways into the route, in front of what is still to do, and takes out the gaps a setback overran.
void put_rework(route::Route& route, const HappenedSteps& happened);

}  // namespace dampward::workbench
