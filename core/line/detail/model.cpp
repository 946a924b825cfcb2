#include "core/line/detail/model.h"

#include <algorithm>
#include <numeric>
#include <set>
#include <string_view>
#include <tuple>
#include <unordered_map>

namespace dampward::line::detail {
namespace {

using Index = std::unordered_map<std::string_view, int>;

template <class Item>
std::vector<const Item*> by_id(const std::vector<Item>& items) {
  std::vector<const Item*> sorted;
  for (const Item& item : items) sorted.push_back(&item);
  std::sort(sorted.begin(), sorted.end(), [](const Item* a, const Item* b) { return a->id < b->id; });
  return sorted;
}

template <class Item>
Index index_of(const std::vector<const Item*>& sorted) {
  Index index;
  for (const Item* item : sorted) index.emplace(item->id, static_cast<int>(index.size()));
  return index;
}

bool has(const std::vector<std::string>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::vector<int> numbers(const std::vector<std::string>& ids, const Index& index) {
  std::vector<int> result;
  for (const std::string& id : ids) result.push_back(index.at(id));
  std::sort(result.begin(), result.end());
  return result;
}

}  // namespace

Model::Model(const Problem& given) : problem(given) {
  units = by_id(given.units);
  people = by_id(given.people);
  stations = by_id(given.stations);
  ovens = by_id(given.ovens);
  capacities = by_id(given.capacities);
  const auto sorted_ops = by_id(given.operations);
  const Index op_index = index_of(sorted_ops), unit_index = index_of(units),
              station_index = index_of(stations), oven_index = index_of(ovens),
              capacity_index = index_of(capacities);

  std::set<std::string> skill_names;
  for (const Operation& op : given.operations) {
    if (!op.skill.empty()) skill_names.insert(op.skill);
  }
  skills.assign(skill_names.begin(), skill_names.end());

  // A rare skill is not spent on common work: who can do least else comes first.
  std::vector<int> helpful(people.size());
  std::iota(helpful.begin(), helpful.end(), 0);
  std::stable_sort(helpful.begin(), helpful.end(), [&](int a, int b) {
    return people[static_cast<std::size_t>(a)]->skills.size() <
           people[static_cast<std::size_t>(b)]->skills.size();
  });

  unit_ops.resize(units.size());
  for (const Operation* given_op : sorted_ops) {
    Op op;
    op.as_given = given_op;
    op.length = given_op->length;
    if (!given_op->unit.empty()) {
      op.unit = unit_index.at(given_op->unit);
      unit_ops[static_cast<std::size_t>(op.unit)].push_back(static_cast<int>(ops.size()));
    }
    if (!given_op->skill.empty() && given_op->attendance != Attendance::unattended) {
      op.skill =
          static_cast<int>(std::lower_bound(skills.begin(), skills.end(), given_op->skill) - skills.begin());
      for (int p : helpful) {
        if (has(people[static_cast<std::size_t>(p)]->skills, given_op->skill)) op.skilled.push_back(p);
      }
    }
    op.needs_station = !given_op->stations.empty() || !given_op->station_skill.empty();
    op.stations = numbers(given_op->stations, station_index);
    if (given_op->stations.empty() && op.needs_station) {
      for (std::size_t s = 0; s < stations.size(); ++s) {
        if (has(stations[s]->serves, given_op->station_skill)) op.stations.push_back(static_cast<int>(s));
      }
    }
    for (const Demand& demand : given_op->demands) {
      if (demand.amount > 0)
        op.demands.push_back({capacity_index.at(demand.capacity), demand.amount, demand.tail});
    }
    ops.push_back(std::move(op));
  }

  const auto join = [&](Arc arc) {
    ops[static_cast<std::size_t>(arc.from)].after.push_back(arc);
    ops[static_cast<std::size_t>(arc.to)].before.push_back(arc);
  };
  for (std::size_t g = 0; g < given.gaps.size(); ++g) {
    const Gap& gap = given.gaps[g];
    join({op_index.at(gap.from), op_index.at(gap.to), gap.shortest, gap.longest.value_or(unbounded),
          static_cast<int>(g)});
  }
  for (const Load* load : by_id(given.loads)) {
    const int number = static_cast<int>(loads.size());
    LoadOps mine{load, numbers(load->ovens, oven_index), op_index.at(load->bake),
                 numbers(load->loadings, op_index), numbers(load->unloadings, op_index)};
    const auto mark = [&](int op, Role role) {
      ops[static_cast<std::size_t>(op)].load = number;
      ops[static_cast<std::size_t>(op)].role = role;
    };
    mark(mine.bake, Role::bake);
    for (int op : mine.loadings) {
      mark(op, Role::loading);
      join({op, mine.bake, 0, unbounded, -1});
    }
    for (int op : mine.unloadings) {
      mark(op, Role::unloading);
      join({mine.bake, op, 0, unbounded, -1});
    }
    loads.push_back(std::move(mine));
  }
  const auto gap_order = [](const Arc& a, const Arc& b) {
    return std::tie(a.from, a.to, a.shortest, a.longest) < std::tie(b.from, b.to, b.shortest, b.longest);
  };
  for (Op& op : ops) {
    std::stable_sort(op.before.begin(), op.before.end(), gap_order);
    std::stable_sort(op.after.begin(), op.after.end(), gap_order);
  }

  std::vector<int> first(units.size());
  std::iota(first.begin(), first.end(), 0);
  std::stable_sort(first.begin(), first.end(), [&](int a, int b) {
    const Unit &x = *units[static_cast<std::size_t>(a)], &y = *units[static_cast<std::size_t>(b)];
    const Minute due_x = x.due.value_or(unbounded), due_y = y.due.value_or(unbounded);
    return std::tie(due_x, y.priority, y.weight) < std::tie(due_y, x.priority, x.weight);
  });
  rank.resize(units.size());
  for (std::size_t i = 0; i < first.size(); ++i)
    rank[static_cast<std::size_t>(first[i])] = static_cast<int>(i);
}

std::string Model::name_of(const Arc& arc) const {
  if (arc.gap >= 0) {
    const std::string& name = problem.gaps[static_cast<std::size_t>(arc.gap)].name;
    if (!name.empty()) return name;
  }
  return "from " + ops[static_cast<std::size_t>(arc.from)].as_given->id + " to " +
         ops[static_cast<std::size_t>(arc.to)].as_given->id;
}

}  // namespace dampward::line::detail
