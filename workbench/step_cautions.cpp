#include "workbench/step_cautions.h"

#include <algorithm>
#include <set>

namespace dampward::workbench {
namespace {

// A plan never works with isocyanates and knows no airless gun.
bool never(const Caution& caution) {
  return caution.id.text == "H31" || caution.id.text == "H36";
}

// Rows of the table that hold only for some: what is in a unit's parts, and what a gun does that a brush does not.
bool concerns(const Caution& caution, const UnitPlan& unit) {
  static const std::set<std::string> of_parts = {"H03", "H04", "H05", "H06", "H07", "H08",
                                                 "H09", "H10", "H11", "H12", "H13"};
  static const std::set<std::string> of_guns = {"H34", "H35", "H39"};
  if (of_parts.count(caution.id.text) > 0)
    return std::find(unit.hazards.begin(), unit.hazards.end(), caution.id) != unit.hazards.end();
  if (of_guns.count(caution.id.text) > 0) return unit.way == "spray_stripped";
  return !never(caution);
}

}  // namespace

std::vector<std::string> hazards_at(const UnitPlan& unit, const UnitStep& step, const Plan& plan) {
  std::vector<std::string> ids;
  for (const Caution& caution : plan.cautions) {
    const bool here = caution.step == step.hazard_step || caution.step == step.hazard_step_too;
    if (here && concerns(caution, unit)) ids.push_back(caution.id.text);
  }
  return ids;
}

std::vector<std::string> hazards_of(const std::string& step, const Plan& plan) {
  std::vector<std::string> ids;
  for (const Caution& caution : plan.cautions) {
    if (caution.step == step && !never(caution)) ids.push_back(caution.id.text);
  }
  return ids;
}

}  // namespace dampward::workbench
