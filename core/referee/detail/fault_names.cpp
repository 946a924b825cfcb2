#include "core/referee/detail/fault_rules.h"

namespace dampward::referee {
namespace {

template <class List>
Index::Places places_of(const List& list) {
  Index::Places places;
  for (std::size_t i = 0; i < list.size(); ++i) places.emplace(list[i].id, i);
  return places;
}

template <class List>
void once_each(const char* name, const List& list, const Index::Places& places, Faults& found) {
  for (std::size_t i = 0; i < list.size(); ++i) {
    const std::size_t first = places.at(list[i].id);
    if (first != i)
      found.push_back({at(name, i, "id"), format("\"{}\", as {} is", list[i].id, at(name, first)),
                       "an id used once among its kind"});
  }
}

struct Names {
  const Index& index;
  Faults& found;

  void known(const Index::Places& places, const char* sort, const std::string& id, const std::string& path) {
    if (places.count(id) == 0)
      found.push_back({path, format("\"{}\"", id), format("the id of a known {}", sort)});
  }

  void units() {
    const auto& units = index.problem.units;
    for (std::size_t i = 0; i < units.size(); ++i) {
      for (std::size_t j = 0; j < units[i].after_due.size(); ++j) {
        const std::string& id = units[i].after_due[j];
        const Operation* operation = index.operation(id);
        if (!operation || operation->unit != units[i].id)
          found.push_back(
              {at("units", i, at("after_due", j)), format("\"{}\"", id), "an operation of this unit"});
      }
    }
  }

  void operations() {
    const auto& operations = index.problem.operations;
    for (std::size_t i = 0; i < operations.size(); ++i) {
      const Operation& each = operations[i];
      if (each.unit) known(index.units, "unit", *each.unit, at("operations", i, "unit"));
      for (std::size_t j = 0; j < each.stations.size(); ++j)
        known(index.stations, "station", each.stations[j], at("operations", i, at("stations", j)));
      for (std::size_t j = 0; j < each.demands.size(); ++j)
        known(index.capacities, "capacity", each.demands[j].capacity,
              at("operations", i, at("demands", j, "capacity")));
    }
  }

  void gaps() {
    const auto& gaps = index.problem.gaps;
    for (std::size_t i = 0; i < gaps.size(); ++i) {
      known(index.operations, "operation", gaps[i].from, at("gaps", i, "from"));
      known(index.operations, "operation", gaps[i].to, at("gaps", i, "to"));
    }
  }

  void loads() {
    const auto& loads = index.problem.loads;
    for (std::size_t i = 0; i < loads.size(); ++i) {
      for (std::size_t j = 0; j < loads[i].ovens.size(); ++j)
        known(index.ovens, "oven", loads[i].ovens[j], at("loads", i, at("ovens", j)));
      known(index.operations, "operation", loads[i].bake, at("loads", i, "bake"));
      for (std::size_t j = 0; j < loads[i].members.size(); ++j) {
        known(index.operations, "operation", loads[i].members[j].loading,
              at("loads", i, at("members", j, "loading")));
        known(index.operations, "operation", loads[i].members[j].unloading,
              at("loads", i, at("members", j, "unloading")));
      }
    }
  }

  void fixed() {
    const auto& fixed = index.problem.fixed;
    for (std::size_t i = 0; i < fixed.size(); ++i) {
      known(index.operations, "operation", fixed[i].operation, at("fixed", i, "operation"));
      for (std::size_t j = 0; j < fixed[i].people.size(); ++j)
        known(index.people, "person", fixed[i].people[j], at("fixed", i, at("people", j)));
      const auto& place = fixed[i].station;
      if (place && index.stations.count(*place) == 0 && index.ovens.count(*place) == 0)
        found.push_back(
            {at("fixed", i, "station"), format("\"{}\"", *place), "the id of a known station or oven"});
    }
  }
};

}  // namespace

Index::Index(const PlanProblem& asked)
    : problem(asked),
      units(places_of(asked.units)),
      operations(places_of(asked.operations)),
      loads(places_of(asked.loads)),
      people(places_of(asked.people)),
      stations(places_of(asked.stations)),
      ovens(places_of(asked.ovens)),
      capacities(places_of(asked.capacities)) {}

void fault_names(const Index& index, Faults& found) {
  const PlanProblem& problem = index.problem;
  once_each("units", problem.units, index.units, found);
  once_each("operations", problem.operations, index.operations, found);
  once_each("loads", problem.loads, index.loads, found);
  once_each("people", problem.people, index.people, found);
  once_each("stations", problem.stations, index.stations, found);
  once_each("ovens", problem.ovens, index.ovens, found);
  once_each("capacities", problem.capacities, index.capacities, found);
  Names names{index, found};
  names.units();
  names.operations();
  names.gaps();
  names.loads();
  names.fixed();
}

}  // namespace dampward::referee
