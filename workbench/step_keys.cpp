#include "workbench/step_keys.h"

#include <algorithm>
#include <cctype>

namespace dampward::workbench {
namespace {

// "r1.coat2" is code "coat", turn 2.
papers::StepKey parts_of(const std::string& id) {
  const std::string told = id.substr(id.find('.') + 1);
  const auto end =
      std::find_if(told.begin(), told.end(), [](unsigned char c) { return std::isdigit(c) != 0; });
  const std::string turn(end, told.end());
  return {std::string(told.begin(), end), turn.empty() ? 0 : std::stoi(turn), 0};
}

}  // namespace

papers::StepKey key_of(const UnitPlan& unit, const UnitStep& step) {
  papers::StepKey key = parts_of(step.id);
  const auto has = [&](const char* code) {
    return std::any_of(unit.steps.begin(), unit.steps.end(),
                       [&](const UnitStep& other) { return parts_of(other.id).code == code; });
  };
  if (key.code == "coat") key.turns = unit.coats;
  if (key.code == "strip" && unit.way != "spray_stripped") key.code = "open";
  if (key.code == "cover" && has("tape")) key.code = "plug";
  return key;
}

}  // namespace dampward::workbench
