#include "core/line/detail/better_order.h"

#include <algorithm>
#include <random>

#include "core/line/detail/model.h"
#include "core/line/detail/one_plan.h"
#include "core/line/objective.h"

namespace dampward::line::detail {
namespace {

bool begun(const Problem& problem, const std::string& unit) {
  return std::any_of(problem.fixed.begin(), problem.fixed.end(), [&](const Fixed& fixed) {
    return std::any_of(problem.operations.begin(), problem.operations.end(), [&](const Operation& operation) {
      return operation.id == fixed.operation && operation.unit == unit;
    });
  });
}

// The same numbers from every library, which std::uniform_int_distribution does not promise.
std::size_t below(std::mt19937_64& random, std::size_t count) {
  return static_cast<std::size_t>(random() % count);
}

}  // namespace

std::vector<std::string> order_of(const Problem& problem, const std::vector<std::string>& wanted) {
  const Model model(problem);
  std::vector<int> by_urgency(model.units.size());
  for (std::size_t i = 0; i < model.units.size(); ++i)
    by_urgency[static_cast<std::size_t>(model.rank[i])] = static_cast<int>(i);
  const auto rank_of = [&](const std::string& id) {
    const auto unit =
        std::find_if(model.units.begin(), model.units.end(), [&](const Unit* u) { return u->id == id; });
    return unit == model.units.end() ? -1 : model.rank[static_cast<std::size_t>(unit - model.units.begin())];
  };
  std::vector<std::string> order;
  for (const std::string& id : wanted) {
    if (rank_of(id) >= 0) order.push_back(id);
  }
  for (const int unit : by_urgency) {
    const std::string& id = model.units[static_cast<std::size_t>(unit)]->id;
    if (std::find(order.begin(), order.end(), id) != order.end()) continue;
    const int rank = rank_of(id);
    order.insert(std::find_if(order.begin(), order.end(),
                              [&](const std::string& other) { return rank_of(other) > rank; }),
                 id);
  }
  std::stable_partition(order.begin(), order.end(),
                        [&](const std::string& id) { return begun(problem, id); });
  return order;
}

Answer better_order(const Problem& problem, const PlanOptions& options, Answer best) {
  const std::size_t units = best.order.size();
  const auto fixed_ahead = static_cast<std::size_t>(std::count_if(
      best.order.begin(), best.order.end(), [&](const std::string& id) { return begun(problem, id); }));
  if (units < fixed_ahead + 2) return best;
  std::mt19937_64 random(options.seed);
  std::vector<std::string> order = best.order;
  Objective here = objective_of(problem, best), least = here;
  const auto each = static_cast<std::int64_t>(std::max<std::size_t>(1, problem.operations.size()));
  std::vector<Lateness> late = best.late;
  for (std::int64_t placed = each; placed <= options.effort; placed += each) {
    std::vector<std::string> next = order;
    std::size_t from = fixed_ahead + below(random, units - fixed_ahead);
    std::size_t to = fixed_ahead + below(random, units - fixed_ahead);
    const bool swaps = below(random, 2) == 0;
    // Every other time somebody who is late goes ahead of where they stand.
    if (!late.empty() && below(random, 2) == 0) {
      const std::string& hurried = late[below(random, late.size())].unit;
      from = static_cast<std::size_t>(std::find(order.begin(), order.end(), hurried) - order.begin());
      if (from <= fixed_ahead) continue;
      to = fixed_ahead + below(random, from - fixed_ahead);
    }
    if (from == to) continue;
    if (swaps) {
      std::swap(next[from], next[to]);
    } else {
      const std::string moved = next[from];
      next.erase(next.begin() + static_cast<std::ptrdiff_t>(from));
      next.insert(next.begin() + static_cast<std::ptrdiff_t>(to), moved);
    }
    OnePlan plan = one_plan(problem, options, {next, 0, false});
    if (plan.stopped) break;
    const Objective found = objective_of(problem, plan.answer);
    if (found > here) continue;
    order = std::move(next);
    here = found;
    late = plan.answer.late;
    if (found >= least) continue;
    least = found;
    best = std::move(plan.answer);
    best.order = order;
  }
  return best;
}

}  // namespace dampward::line::detail
