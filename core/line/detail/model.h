#pragma once

#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include "core/line/answer.h"

namespace dampward::line::detail {

inline constexpr Minute unbounded = std::numeric_limits<Minute>::max() / 8;

enum class Role { plain, loading, bake, unloading };

struct Arc {
  int from, to;
  Minute shortest;
  Minute longest;  // `unbounded`: none
  int gap;         // index in Problem::gaps; -1: from the load of its bake
};

struct OpDemand {
  int capacity;
  std::int64_t amount;
  Minute tail;
};

// What an operation takes of a demand's capacity for all the time that demand lasts: with it, those on the same capacity that last as
// long or longer.
std::int64_t stacked(const std::vector<OpDemand>& demands, const OpDemand& demand);

struct Op {
  const Operation* as_given = nullptr;
  Minute length = 0;
  int unit = -1;  // -1: a bake, or of no unit
  int load = -1;
  Role role = Role::plain;
  int skill = -1;
  std::vector<int> skilled;  // people who can, those with the fewest other skills first
  std::vector<int> stations;
  bool needs_station = false;
  std::vector<OpDemand> demands;
  std::vector<Arc> before, after;  // none between two fixed operations: those are not judged
  const Fixed* fixed = nullptr;    // where it stands already; `length` is then the time it takes there
};

struct LoadOps {
  const Load* as_given;
  std::vector<int> ovens;  // those it fits into; only the one it is in, where something of it is fixed
  int bake;
  std::vector<int> loadings, unloadings;  // in the order of their ids
  Span fixed_stay{}, fixed_heat{};        // what its fixed operations make by themselves
};

// The problem with names turned into numbers, everything in the order of its id, so that the order in which the problem
// was written cannot matter.
struct Model {
  explicit Model(const Problem& problem);

  const Problem& problem;
  std::vector<Op> ops;
  std::vector<LoadOps> loads;
  std::vector<const Unit*> units;
  std::vector<const Person*> people;
  std::vector<const Station*> stations;
  std::vector<const Oven*> ovens;
  std::vector<const Capacity*> capacities;
  std::vector<std::string> skills;
  std::vector<int> rank;  // of each unit: 0 goes first (begun, due minute, priority, weight, id)
  std::vector<std::vector<int>> unit_ops;
  std::vector<Minute> kept;  // by operation: where it stood in an earlier plan; nought: nowhere

  // These units go first, in this order, whatever their urgency.
  void put_ahead(const std::vector<std::string>& units);
  // Nothing shall start sooner than it does there.
  void keep(const std::vector<Placement>& placements);
  // The number of the operation with this id. Promise of the caller: there is one.
  int operation(std::string_view id) const;
  // What an arc is called in a reason.
  std::string name_of(const Arc& arc) const;

 private:
  void read_operations();
  void read_gaps();
  void read_loads();
  void read_fixed();
  void rank_units();
  void join(const Arc& arc);
};

}  // namespace dampward::line::detail
