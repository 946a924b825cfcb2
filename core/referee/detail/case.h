#pragma once

#include <optional>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/referee/answer.h"
#include "core/referee/detail/spans.h"
#include "core/referee/problem.h"

namespace dampward::referee {

// An operation with its place in the answer.
struct Work {
  const Operation* what = nullptr;
  const Placement* at = nullptr;
  bool fixed = false;
  Span when() const { return {at->start, at->end}; }
};

// A load of which something is in the answer, with what follows from the placements alone.
struct LoadWork {
  const Load* load = nullptr;
  const Oven* oven = nullptr;      // as its stay says; null: no stay, or in an oven nobody knows
  Span stay;                       // the oven is its alone
  std::optional<Span> heat;        // the oven is hot; none: the bake is not in the answer
  std::optional<Span> fixed_stay;  // what its fixed operations make of the stay and the heat by themselves
  std::optional<Span> fixed_heat;
  bool fixed_bake = false;
};

// The oven that what is fixed of a load is in.
struct FixedOven {
  bool any_fixed = false;
  const std::string* id = nullptr;  // null: nothing tells
  bool disagree = false;            // two of them tell different ovens
};

// Problem and answer with every name looked up once. Keeps references to both. A second placement of an operation and
// whatever has an unknown name are left out: other rules than `twice` and `unknown` do not see them.
class Case {
 public:
  Case(const PlanProblem& problem, const PlanAnswer& answer);

  const PlanProblem& problem;
  const PlanAnswer& answer;

  const Operation* operation(std::string_view id) const { return find(operations_, id); }
  const Unit* unit(std::string_view id) const { return find(units_, id); }
  const Person* person(std::string_view id) const { return find(people_, id); }
  const Station* station(std::string_view id) const { return find(stations_, id); }
  const Oven* oven(std::string_view id) const { return find(ovens_, id); }
  const Load* load(std::string_view id) const { return find(loads_, id); }

  // What is fixed of an operation, and where the answer puts it; null: nothing, nowhere.
  const Fixed* fixed(std::string_view operation) const { return find(fixed_, operation); }
  const Placement* placement(std::string_view operation) const { return find(placements_, operation); }
  const OvenStay* stay(std::string_view load) const { return find(stays_, load); }
  // The load that an operation is the bake, a loading or an unloading of.
  const Load* load_of(std::string_view operation) const { return find(load_of_, operation); }
  bool is_bake(std::string_view operation) const;
  FixedOven fixed_oven(const Load& load) const;

  // What is in the answer, in the order of the problem.
  const std::vector<Work>& works() const { return works_; }
  const std::vector<LoadWork>& loads() const { return load_works_; }
  std::optional<Work> work(std::string_view operation) const;

  const std::vector<const Operation*>& operations_of(std::string_view unit) const;
  // All its operations are in the answer.
  bool is_there(std::string_view unit) const;

  // A person's breaks while on shift, and everybody's shifts who has the skill; both in order and apart.
  const std::vector<Span>& breaks(const Person& person) const { return breaks_.at(&person); }
  std::vector<Span> on_shift_with(std::string_view skill) const;

 private:
  template <class T>
  using Names = std::unordered_map<std::string_view, const T*>;
  template <class T>
  static const T* find(const Names<T>& names, std::string_view id) {
    const auto found = names.find(id);
    return found == names.end() ? nullptr : found->second;
  }
  LoadWork load_work(const Load& load) const;

  Names<Operation> operations_;
  Names<Unit> units_;
  Names<Person> people_;
  Names<Station> stations_;
  Names<Oven> ovens_;
  Names<Load> loads_, load_of_;
  Names<Fixed> fixed_;
  Names<Placement> placements_;
  Names<OvenStay> stays_;
  std::vector<Work> works_;
  std::vector<LoadWork> load_works_;
  std::unordered_map<std::string_view, std::vector<const Operation*>> by_unit_;
  std::unordered_map<const Person*, std::vector<Span>> breaks_;
};

}  // namespace dampward::referee
