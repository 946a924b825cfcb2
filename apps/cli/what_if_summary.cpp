#include "apps/cli/what_if_summary.h"

#include <algorithm>

#include "apps/cli/detail/summary_parts.h"
#include "apps/cli/page_text.h"
#include "core/base/format.h"

namespace dampward::cli {
namespace {

using workbench::Plan;

std::string how_it_stands(const Plan& plan) {
  const auto late = std::count_if(plan.units.begin(), plan.units.end(),
                                  [](const auto& unit) { return unit.due && unit.done > *unit.due; });
  return format("{} of {} treated in {} loads, {} refused, {} late", plan.units.size(), plan.queued,
                plan.loads.size(), plan.refused.size(), late);
}

}  // namespace

std::vector<Line> what_if_summary(const Plan& before, const Plan& after,
                                  const workbench::PlanDifference& difference, const UnitText& units,
                                  std::size_t width) {
  const std::size_t room = page_lines(width);
  std::vector<Line> lines = plain(wrapped("What if, for " + after.shop, width, 2));
  lines.front().tone = Tone::heading;
  const auto say = [&](const std::string& text) {
    for (Line& line : plain(wrapped(text, width, 3))) lines.push_back(std::move(line));
  };
  for (const auto& change : difference.changes) {
    say(format(" {} = {} instead of {}", change.path, change.after,
               change.before.value_or("nothing written")));
  }
  say(" as it is: " + how_it_stands(before));
  say(" as changed: " + how_it_stands(after));
  lines.push_back({"WHAT MOVES", Tone::heading});
  const auto last =
      plain(wrapped("No file was touched. Both plans in figures: the same command with --json.", width, 2));
  for (std::size_t i = 0; i < difference.words.size(); ++i) {
    const auto entry = plain(wrapped(" " + units.sentence(difference.words[i]), width, 3));
    const bool is_last = i + 1 == difference.words.size();
    if (lines.size() + entry.size() + last.size() + (is_last ? 0 : 1) > room) {
      lines.push_back({format("   and {} more", difference.words.size() - i)});
      break;
    }
    lines.insert(lines.end(), entry.begin(), entry.end());
  }
  lines.insert(lines.end(), last.begin(), last.end());
  return lines;
}

}  // namespace dampward::cli
