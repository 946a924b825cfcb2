#include "core/solver/problem.h"

#include <algorithm>
#include <cstdint>

#include "core/base/format.h"

namespace dampward::solver {
namespace {

std::int64_t reach(const Problem& problem) {
  std::vector<std::int64_t> longest(problem.operations.size());
  for (int i = 0; i < problem.size(); ++i) longest[i] = problem.operations[i].duration;
  for (const Arc& arc : problem.arcs) longest[arc.from] = std::max<std::int64_t>(longest[arc.from], arc.lag);
  std::int64_t sum = 0;
  for (const std::int64_t one : longest) sum += one;
  return sum;
}

class Faults {
 public:
  void add(std::string found, std::string expected) {
    if (problems_.size() < most)
      problems_.push_back({{"problem"}, std::move(found), std::move(expected), ""});
  }
  Problems take() { return std::move(problems_); }
  bool none() const { return problems_.empty(); }

 private:
  static constexpr std::size_t most = 20;
  Problems problems_;
};

}  // namespace

Problems faults(const Problem& problem) {
  Faults faults;
  const auto n = problem.operations.size();
  if (n == 0) faults.add("no operation", "one or more");
  if (n > most_operations) {
    faults.add(format("{} operations", n), format("at most {}", most_operations));
    return faults.take();
  }
  const int resources = static_cast<int>(problem.capacities.size());
  for (int i = 0; i < problem.size(); ++i) {
    const Operation& operation = problem.operations[i];
    if (operation.duration < 0)
      faults.add(format("operation {} has duration {}", i, operation.duration), "0 or more");
    std::vector<int> taken_of;
    for (const Demand& demand : operation.demands) {
      if (std::find(taken_of.begin(), taken_of.end(), demand.resource) != taken_of.end())
        faults.add(format("operation {} takes of resource {} twice", i, demand.resource),
                   "one demand of each");
      taken_of.push_back(demand.resource);
      if (demand.resource < 0 || demand.resource >= resources)
        faults.add(format("operation {} takes of resource {}", i, demand.resource),
                   format("a resource from 0 to {}", resources - 1));
      else if (demand.amount < 0)
        faults.add(format("operation {} takes {} of resource {}", i, demand.amount, demand.resource),
                   "0 or more");
      else if (demand.amount > problem.capacities[demand.resource])
        faults.add(format("operation {} takes {} of resource {}", i, demand.amount, demand.resource),
                   format("at most its capacity, {}", problem.capacities[demand.resource]));
    }
  }
  for (std::size_t a = 0; a < problem.arcs.size(); ++a) {
    const Arc& arc = problem.arcs[a];
    if (arc.from < 0 || arc.to < 0 || arc.from >= problem.size() || arc.to >= problem.size())
      faults.add(format("arc {} joins operations {} and {}", a, arc.from, arc.to),
                 format("operations from 0 to {}", problem.size() - 1));
    else if (arc.lag <= -latest_time || arc.lag >= latest_time)
      faults.add(format("arc {} has lag {}", a, arc.lag), format("less than {} either way", latest_time));
  }
  if (faults.none() && reach(problem) >= latest_time)
    faults.add("durations and gaps that add up to " + std::to_string(reach(problem)),
               format("less than {} in all", latest_time));
  return faults.take();
}

int horizon(const Problem& problem) {
  return static_cast<int>(reach(problem));
}

Problem mirrored(const Problem& problem) {
  Problem mirror = problem;
  for (Arc& arc : mirror.arcs) {
    const int lag = arc.lag + problem.operations[arc.to].duration - problem.operations[arc.from].duration;
    arc = {arc.to, arc.from, lag};
  }
  return mirror;
}

}  // namespace dampward::solver
