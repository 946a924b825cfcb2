#include "core/line/detail/model.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <set>
#include <string_view>
#include <tuple>

#include "core/line/detail/oven_limits.h"

namespace dampward::line::detail {
namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

template <class Item>
std::vector<const Item*> by_id(const std::vector<Item>& items) {
  std::vector<const Item*> sorted;
  for (const Item& item : items) sorted.push_back(&item);
  std::sort(sorted.begin(), sorted.end(), [](const Item* a, const Item* b) { return a->id < b->id; });
  return sorted;
}

// The number of an item in a list in the order of ids; -1: it is not there.
template <class Item>
int number_of(const std::vector<const Item*>& sorted, std::string_view id) {
  const auto found =
      std::lower_bound(sorted.begin(), sorted.end(), id,
                       [](const Item* item, std::string_view wanted) { return item->id < wanted; });
  return found == sorted.end() || (*found)->id != id ? -1 : static_cast<int>(found - sorted.begin());
}

bool has(const std::vector<std::string>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

std::int64_t stacked(const std::vector<OpDemand>& demands, const OpDemand& demand) {
  std::int64_t amount = 0;
  for (const OpDemand& other : demands) {
    if (other.capacity == demand.capacity && other.tail >= demand.tail) amount += other.amount;
  }
  return amount;
}

Model::Model(const Problem& given) : problem(given) {
  units = by_id(given.units);
  people = by_id(given.people);
  stations = by_id(given.stations);
  ovens = by_id(given.ovens);
  capacities = by_id(given.capacities);
  unit_ops.resize(units.size());
  kept.assign(given.operations.size(), 0);
  read_operations();
  read_loads();
  read_fixed();
  read_gaps();
  rank_units();
}

int Model::operation(std::string_view id) const {
  const auto found = std::lower_bound(ops.begin(), ops.end(), id, [](const Op& op, std::string_view wanted) {
    return op.as_given->id < wanted;
  });
  return static_cast<int>(found - ops.begin());
}

void Model::read_operations() {
  std::set<std::string> skill_names;
  for (const Operation& op : problem.operations) {
    if (!op.skill.empty()) skill_names.insert(op.skill);
  }
  skills.assign(skill_names.begin(), skill_names.end());

  // A rare skill is not spent on common work: who can do least else comes first.
  std::vector<int> helpful(people.size());
  std::iota(helpful.begin(), helpful.end(), 0);
  std::stable_sort(helpful.begin(), helpful.end(),
                   [&](int a, int b) { return people[at(a)]->skills.size() < people[at(b)]->skills.size(); });

  for (const Operation* given : by_id(problem.operations)) {
    Op op;
    op.as_given = given;
    op.length = given->length;
    if (!given->unit.empty()) {
      op.unit = number_of(units, given->unit);
      unit_ops[at(op.unit)].push_back(static_cast<int>(ops.size()));
    }
    if (!given->skill.empty() && given->attendance != Attendance::unattended) {
      op.skill =
          static_cast<int>(std::lower_bound(skills.begin(), skills.end(), given->skill) - skills.begin());
      for (int p : helpful) {
        if (has(people[at(p)]->skills, given->skill)) op.skilled.push_back(p);
      }
    }
    op.needs_station = !given->stations.empty() || !given->station_skill.empty();
    for (std::size_t s = 0; s < stations.size() && op.needs_station; ++s) {
      const bool serves = given->stations.empty() ? has(stations[s]->serves, given->station_skill)
                                                  : has(given->stations, stations[s]->id);
      if (serves) op.stations.push_back(static_cast<int>(s));
    }
    for (const Demand& demand : given->demands) {
      if (demand.amount > 0)
        op.demands.push_back({number_of(capacities, demand.capacity), demand.amount, demand.tail});
    }
    ops.push_back(std::move(op));
  }
}

void Model::join(const Arc& arc) {
  if (ops[at(arc.from)].fixed && ops[at(arc.to)].fixed) return;
  ops[at(arc.from)].after.push_back(arc);
  ops[at(arc.to)].before.push_back(arc);
}

void Model::read_loads() {
  for (const Load* load : by_id(problem.loads)) {
    const int number = static_cast<int>(loads.size());
    LoadOps mine{load, {}, operation(load->bake), {}, {}};
    for (std::size_t o = 0; o < ovens.size(); ++o) {
      if (has(load->ovens, ovens[o]->id) && takes(*ovens[o], *load))
        mine.ovens.push_back(static_cast<int>(o));
    }
    const auto mark = [&](int op, Role role) {
      ops[at(op)].load = number;
      ops[at(op)].role = role;
    };
    mark(mine.bake, Role::bake);
    for (const Member& member : load->members) {
      mine.loadings.push_back(operation(member.loading));
      mine.unloadings.push_back(operation(member.unloading));
      mark(mine.loadings.back(), Role::loading);
      mark(mine.unloadings.back(), Role::unloading);
    }
    std::sort(mine.loadings.begin(), mine.loadings.end());
    std::sort(mine.unloadings.begin(), mine.unloadings.end());
    loads.push_back(std::move(mine));
  }
}

void Model::read_fixed() {
  const auto stretch = [](Span& span, const Fixed& by) {
    span = span == Span{} ? Span{by.start, by.end}
                          : Span{std::min(span.from, by.start), std::max(span.to, by.end)};
  };
  for (const Fixed& fixed : problem.fixed) {
    Op& op = ops[at(operation(fixed.operation))];
    op.fixed = &fixed;
    op.length = fixed.end - fixed.start;
    if (op.load < 0) continue;
    LoadOps& load = loads[at(op.load)];
    stretch(load.fixed_stay, fixed);
    const int oven = number_of(ovens, fixed.station);
    if (!op.needs_station && oven >= 0) load.ovens = {oven};
  }
  for (LoadOps& load : loads) {
    const Fixed* bake = ops[at(load.bake)].fixed;
    if (!bake) continue;
    stretch(load.fixed_heat, *bake);
    for (int op : load.unloadings) {
      if (ops[at(op)].fixed) stretch(load.fixed_heat, *ops[at(op)].fixed);
    }
  }
}

void Model::read_gaps() {
  for (std::size_t g = 0; g < problem.gaps.size(); ++g) {
    const Gap& gap = problem.gaps[g];
    join({operation(gap.from), operation(gap.to), gap.shortest, gap.longest.value_or(unbounded),
          static_cast<int>(g)});
  }
  for (const LoadOps& load : loads) {
    for (int op : load.loadings) join({op, load.bake, 0, unbounded, -1});
    for (int op : load.unloadings) join({load.bake, op, 0, unbounded, -1});
  }
  const auto gap_order = [&](const Arc& a, const Arc& b) {
    const auto key = [](const Arc& arc) { return std::tie(arc.from, arc.to, arc.shortest, arc.longest); };
    return key(a) != key(b) ? key(a) < key(b) : name_of(a) < name_of(b);
  };
  for (Op& op : ops) {
    std::stable_sort(op.before.begin(), op.before.end(), gap_order);
    std::stable_sort(op.after.begin(), op.after.end(), gap_order);
  }
}

// What is begun goes first: its windows are running.
void Model::rank_units() {
  const auto begun = [&](int unit) {
    return std::any_of(unit_ops[at(unit)].begin(), unit_ops[at(unit)].end(),
                       [&](int op) { return ops[at(op)].fixed != nullptr; });
  };
  std::vector<int> first(units.size());
  std::iota(first.begin(), first.end(), 0);
  std::stable_sort(first.begin(), first.end(), [&](int a, int b) {
    const Unit &x = *units[at(a)], &y = *units[at(b)];
    const bool waits_x = !begun(a), waits_y = !begun(b);
    const Minute due_x = x.due.value_or(unbounded), due_y = y.due.value_or(unbounded);
    return std::tie(waits_x, due_x, y.priority, y.weight) < std::tie(waits_y, due_y, x.priority, x.weight);
  });
  rank.resize(units.size());
  for (std::size_t i = 0; i < first.size(); ++i) rank[at(first[i])] = static_cast<int>(i);
}

void Model::put_ahead(const std::vector<std::string>& first) {
  for (std::size_t i = 0; i < units.size(); ++i) {
    const auto it = std::find(first.begin(), first.end(), units[i]->id);
    if (it != first.end())
      rank[i] = static_cast<int>(it - first.end());  // below nought, where no other rank is
  }
}

void Model::keep(const std::vector<Placement>& placements) {
  std::map<std::string_view, Minute> starts;
  for (const Placement& placement : placements) starts[placement.operation] = placement.start;
  for (std::size_t i = 0; i < ops.size(); ++i) {
    const auto stood = starts.find(ops[i].as_given->id);
    if (stood != starts.end()) kept[i] = stood->second;
  }
}

std::string Model::name_of(const Arc& arc) const {
  if (arc.gap >= 0) {
    const std::string& name = problem.gaps[static_cast<std::size_t>(arc.gap)].name;
    if (!name.empty()) return name;
  }
  return "from " + ops[at(arc.from)].as_given->id + " to " + ops[at(arc.to)].as_given->id;
}

}  // namespace dampward::line::detail
