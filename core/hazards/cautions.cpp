#include "core/hazards/cautions.h"

#include <algorithm>
#include <set>

#include "core/base/text.h"

namespace dampward::hazards {
namespace {

constexpr std::string_view every_step = "all";

void judge(const Hazard& row, Problems& problems) {
  const std::string name = row.id.empty() ? "A hazard without id" : "Hazard " + row.id.text;
  if (row.id.empty())
    problems.push_back({{}, name + " (" + row.name + ").", "Every hazard has an id such as H07.", ""});
  const std::vector<std::string>& steps = known_steps();
  if (std::find(steps.begin(), steps.end(), row.step) == steps.end()) {
    problems.push_back({{},
                        name + " belongs to step \"" + row.step + "\".",
                        "A step is one of " + listed(steps) + ".",
                        did_you_mean(row.step, steps)});
  }
  if (row.guard.empty() || row.source.empty() || row.defer.empty()) {
    problems.push_back({{},
                        name + " has no guard, no source or no word on who decides in the end.",
                        "Each of the three stands in every row.",
                        ""});
  }
}

}  // namespace

const std::vector<std::string>& known_steps() {
  static const std::vector<std::string> steps = {
      "make_safe", "test",   "strip",    "clean",     "mask",
      "load",      "bake",   "unload",   "mix",       "coat",
      "flash",     "unmask", "touch_up", "airing",    "reassemble",
      "retest",    "store",  "waste",    "transport", std::string(every_step)};
  return steps;
}

Result<HazardTable> HazardTable::of(std::vector<Hazard> rows) {
  Problems problems;
  std::set<HazardId> seen;
  for (const Hazard& row : rows) {
    judge(row, problems);
    if (!row.id.empty() && !seen.insert(row.id).second) {
      problems.push_back(
          {{}, "Hazard " + row.id.text + " stands twice.", "Every hazard has an id of its own.", ""});
    }
  }
  if (!problems.empty()) return problems;
  HazardTable table;
  table.rows_ = std::move(rows);
  return table;
}

const Hazard* HazardTable::find(const HazardId& id) const {
  const auto row = std::find_if(rows_.begin(), rows_.end(), [&](const Hazard& h) { return h.id == id; });
  return row == rows_.end() ? nullptr : &*row;
}

std::vector<Hazard> HazardTable::cautions_for(std::string_view step) const {
  std::vector<Hazard> cautions;
  for (const Hazard& row : rows_) {
    if (row.step == step && step != every_step) cautions.push_back(row);
  }
  for (const Hazard& row : rows_) {
    if (row.step == every_step) cautions.push_back(row);
  }
  return cautions;
}

}  // namespace dampward::hazards
