#include "apps/cli/what_if_summary.h"

#include <algorithm>

#include "apps/cli/page_text.h"
#include "core/base/format.h"

namespace dampward::cli {
namespace {

using workbench::Plan;

constexpr std::size_t page_width = 80;
constexpr std::size_t page_lines = 40;

std::string how_it_stands(const Plan& plan) {
  const auto late = std::count_if(plan.units.begin(), plan.units.end(),
                                  [](const auto& unit) { return unit.due && unit.done > *unit.due; });
  return format("{} of {} treated in {} loads, {} refused, {} late", plan.units.size(), plan.queued,
                plan.loads.size(), plan.refused.size(), late);
}

}  // namespace

std::vector<std::string> what_if_summary(const Plan& before, const Plan& after,
                                         const workbench::PlanDifference& difference, const UnitText& units) {
  std::vector<std::string> lines = wrapped("What if, for " + after.shop, page_width, 2);
  const auto say = [&](const std::string& text) {
    for (const std::string& line : wrapped(text, page_width, 3)) lines.push_back(line);
  };
  for (const auto& change : difference.changes) {
    say(format(" {} = {} instead of {}", change.path, change.after,
               change.before.value_or("nothing written")));
  }
  say(" as it is: " + how_it_stands(before));
  say(" as changed: " + how_it_stands(after));
  lines.emplace_back("WHAT MOVES");
  const std::string last = "No file was touched. Both plans in figures: the same command with --json.";
  for (std::size_t i = 0; i < difference.words.size(); ++i) {
    const auto entry = wrapped(" " + units.sentence(difference.words[i]), page_width, 3);
    const bool is_last = i + 1 == difference.words.size();
    if (lines.size() + entry.size() + 1 + (is_last ? 0 : 1) > page_lines) {
      lines.push_back(format("   and {} more", difference.words.size() - i));
      break;
    }
    lines.insert(lines.end(), entry.begin(), entry.end());
  }
  lines.push_back(last);
  return lines;
}

}  // namespace dampward::cli
