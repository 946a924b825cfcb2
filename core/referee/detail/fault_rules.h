#pragma once

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/base/format.h"
#include "core/referee/faults.h"

// What faults.h looks for, one family a file. Each adds what it finds.

namespace dampward::referee {

// The problem's lists by name: place of the first thing of that name.
class Index {
 public:
  explicit Index(const PlanProblem& problem);
  const PlanProblem& problem;

  using Places = std::unordered_map<std::string_view, std::size_t>;
  Places units, operations, loads, people, stations, ovens, capacities;

  const Operation* operation(std::string_view id) const {
    const auto found = operations.find(id);
    return found == operations.end() ? nullptr : &problem.operations[found->second];
  }
};

using Faults = std::vector<Fault>;

void fault_names(const Index&, Faults&);   // an id twice, a name of nothing
void fault_spans(const Index&, Faults&);   // spans and steps out of order
void fault_skills(const Index&, Faults&);  // attended or watched work for which nobody need be fit
void fault_gaps(const Index&, Faults&);    // a longest below its shortest, rings of shortest gaps
void fault_loads(const Index&, Faults&);   // members, bakes, sizes, settings
void fault_fixed(const Index&, Faults&);   // fixed twice, ending before it starts, in no known oven

// "operations[3].length_min"
inline std::string at(const char* list, std::size_t i, const std::string& rest = "") {
  return format("{}[{}]{}", list, i, rest.empty() ? "" : "." + rest);
}

}  // namespace dampward::referee
