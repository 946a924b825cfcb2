#include "core/line/planner.h"

#include <algorithm>
#include <set>

#include "core/line/detail/better_order.h"
#include "core/line/detail/one_plan.h"

namespace dampward::line {
namespace {

using detail::Manner, detail::OnePlan, detail::one_plan;

// A problem of a handful of units whose plan leaves one out is planned again: so many times at most, and within each block
// in so many more orders. Estimates: most that have a plan at all show it within the first three.
constexpr std::size_t few_operations = 100;
constexpr int most_extra_plans = 24;
constexpr int shuffled_orders = 40;

// Whether another order might have found it a place: not where nobody has the skill, or gaps contradict each other.
bool may_fit_elsewhere(const Unplaced& unplaced) {
  const Obstacle it = unplaced.obstacle;
  return it == Obstacle::gap || it == Obstacle::solvent || it == Obstacle::horizon || it == Obstacle::watch;
}

bool some_may_fit(const Answer& answer) {
  return std::any_of(answer.unplaced.begin(), answer.unplaced.end(), may_fit_elsewhere);
}

// Units that found no place go ahead of all others and everything is planned anew; the plan that leaves fewest out stands
// (after Joslin and Clements, "Squeaky wheel" optimization, 1999, from memory).
Answer with_unplaced_ahead(const Problem& problem, const PlanOptions& options, Answer best) {
  std::vector<std::string> ahead;
  std::vector<Unplaced> left_out = best.unplaced;
  std::set<std::vector<std::string>> tried;
  for (int plans = 0; plans < most_extra_plans; ++plans) {
    for (const Unplaced& unplaced : left_out) {
      if (unplaced.unit.empty() || !may_fit_elsewhere(unplaced)) continue;
      std::erase(ahead, unplaced.unit);
      ahead.insert(ahead.begin(), unplaced.unit);
    }
    if (ahead.empty() || !tried.insert(ahead).second) break;
    const OnePlan again = one_plan(problem, options, {ahead, shuffled_orders, false});
    if (again.stopped) break;
    if (again.answer.unplaced.size() < best.unplaced.size()) best = again.answer;
    if (!some_may_fit(again.answer)) break;
    left_out = again.answer.unplaced;
  }
  return best;
}

Answer first_plan(const Problem& problem, const PlanOptions& options) {
  std::vector<std::string> ahead;
  if (options.earlier != nullptr) ahead = detail::order_of(problem, options.earlier->order);
  OnePlan first = one_plan(problem, options, {ahead, 0, false});
  if (first.stopped || problem.operations.size() > few_operations) return first.answer;
  Answer best = with_unplaced_ahead(problem, options, std::move(first.answer));
  if (!some_may_fit(best)) return best;
  // What fits only if something waits on purpose.
  const OnePlan waiting = one_plan(problem, options, {{}, 0, true});
  const bool better = !waiting.stopped && waiting.answer.unplaced.size() < best.unplaced.size();
  return better ? waiting.answer : best;
}

}  // namespace

Result<Answer> plan(const Problem& problem, const PlanOptions& options) {
  Problems found = faults(problem);
  if (!found.empty()) return found;
  Answer best = first_plan(problem, options);
  best.order = detail::order_of(
      problem, options.earlier != nullptr ? options.earlier->order : std::vector<std::string>{});
  return options.effort > 0 ? detail::better_order(problem, options, std::move(best)) : best;
}

}  // namespace dampward::line
