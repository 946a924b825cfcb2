#include "core/line/detail/block_placer.h"

#include <algorithm>
#include <cstdint>
#include <map>

#include "core/base/format.h"
#include "core/line/detail/reasons.h"

namespace dampward::line::detail {
namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

// How often starts may be moved before an order is given up, and how many orders are tried. Estimates: a bake that slips
// by a break, a shift's end or another unit's coat slips a few times a day, so 400 moves reach weeks ahead.
constexpr int most_moves = 400;
constexpr int most_orders = 6;
// After so many moves of one operation, it moves by at least a quarter of an hour.
constexpr int patient_moves = 60;
constexpr Minute stride = 15;

// From 0 to 3, the same on every machine: the last two bits of the splitmix64 mix (Steele, Lea and Flood 2014).
int shuffled(int turn, int op) {
  std::uint64_t z =
      (static_cast<std::uint64_t>(turn) << 32U) + static_cast<std::uint64_t>(op) + 0x9e3779b97f4a7c15U;
  z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
  z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
  return static_cast<int>((z ^ (z >> 31U)) & 3U);
}

}  // namespace

std::optional<Unplaced> BlockPlacer::place(const std::vector<int>& ops) {
  keeps_ = true;
  auto failure = try_ovens(ops);
  const bool held = std::any_of(ops.begin(), ops.end(), [&](int op) { return model_.kept[at(op)] > 0; });
  if (failure && held && !stopped_) {
    keeps_ = false;
    failure = try_ovens(ops);
  }
  if (!failure) return std::nullopt;
  return told(*failure);
}

void BlockPlacer::take_out(const std::vector<int>& ops) {
  for (auto it = ops.rbegin(); it != ops.rend(); ++it) {
    if (floor_.placed(*it)) floor_.take_out(*it);
  }
}

const Arc* BlockPlacer::too_late_for_fixed(const Op& op, const Spot& spot) const {
  for (const Arc& arc : op.after) {
    if (model_.ops[at(arc.to)].fixed && spot.end + arc.shortest > floor_.spot(arc.to).start) return &arc;
  }
  return nullptr;
}

Minute BlockPlacer::end_of(const std::vector<int>& ops) const {
  Minute end = 0;
  for (int op : ops) end = std::max(end, floor_.spot(op).end);
  return end;
}

// Every choice of ovens for the block's loads; there is mostly one load, with one or two ovens.
std::optional<BlockPlacer::Failure> BlockPlacer::try_ovens(const std::vector<int>& ops) {
  std::vector<int> loads;
  for (int op : ops) {
    if (model_.ops[at(op)].role == Role::bake) loads.push_back(model_.ops[at(op)].load);
  }
  std::vector<std::size_t> choice(loads.size(), 0);
  std::optional<Failure> first_failure;
  std::optional<std::pair<Minute, std::vector<std::size_t>>> best;
  std::vector<Spot> best_spots;
  for (bool more = true; more && !stopped_;) {
    for (std::size_t i = 0; i < loads.size(); ++i) {
      floor_.choose_oven(loads[i], model_.loads[at(loads[i])].ovens[choice[i]]);
    }
    const auto failure = try_orders(ops);
    if (!failure) {
      const Minute end = end_of(ops);
      if (!best || end < best->first) {
        best.emplace(end, choice);
        best_spots.clear();
        for (int op : ops) best_spots.push_back(floor_.spot(op));
      }
      if (loads.empty()) return std::nullopt;
      take_out(ops);
    } else if (!first_failure) {
      first_failure = failure;
    }
    more = false;
    for (std::size_t i = 0; i < loads.size() && !more; ++i) {
      more = ++choice[i] < model_.loads[at(loads[i])].ovens.size();
      if (!more) choice[i] = 0;
    }
  }
  if (!best) return first_failure ? first_failure : Failure{ops.front(), std::nullopt, true, {}};
  for (std::size_t i = 0; i < loads.size(); ++i) {
    floor_.choose_oven(loads[i], model_.loads[at(loads[i])].ovens[best->second[i]]);
  }
  for (std::size_t i = 0; i < ops.size(); ++i) floor_.place(ops[i], best_spots[i]);
  return std::nullopt;
}

// An operation that finds no place in one order comes sooner in the next; then come shuffled orders, where asked for.
std::optional<BlockPlacer::Failure> BlockPlacer::try_orders(const std::vector<int>& ops) {
  std::optional<Failure> first_failure;
  // Beside the solvent no unit meets the gun before the last is out and the oven cold.
  std::vector<char> out_first(model_.loads.size(), 0);
  for (int op : ops) {
    const int load = model_.ops[at(op)].load;
    if (load >= 0) out_first[at(load)] = floor_.stands_near_solvent(floor_.oven_of(load));
  }
  const int last = most_orders + shuffled_orders_;
  for (int turn = 1; turn <= last && !stopped_; ++turn) {
    const std::vector<int> order = order_within(model_, ops, pull_, out_first);
    const auto failure = try_order(order);
    if (!failure) {
      load_late(order);
      break;
    }
    if (!first_failure) first_failure = failure;
    if (failure->hopeless || turn == last || ops.size() == 1) {
      for (int op : ops) pull_[at(op)] = 0;
      return first_failure;
    }
    if (turn < most_orders) {
      pull_[at(failure->op)] = turn;
    } else {
      for (int op : ops) pull_[at(op)] = shuffled(turn, op);
    }
  }
  for (int op : ops) pull_[at(op)] = 0;
  return stopped_ ? first_failure.value_or(Failure{ops.front(), std::nullopt, true, {}})
                  : std::optional<Failure>{};
}

std::optional<BlockPlacer::Failure> BlockPlacer::try_order(const std::vector<int>& order) {
  if (floor_from_.empty()) floor_from_.assign(model_.ops.size(), 0);
  std::map<int, std::size_t> place_in_order;
  for (std::size_t i = 0; i < order.size(); ++i)
    place_in_order[order[i]] = i, floor_from_[at(order[i])] = keeps_ ? model_.kept[at(order[i])] : 0;
  std::map<int, int> moves_of;
  std::map<int, Failure> missed;  // by operation: the longest gap it missed, and
  std::map<int, int> misses;      // how often
  int moves = 0;

  for (std::size_t i = 0; i < order.size();) {
    if (keep_going_ && floor_.work() % 64 == 0 && !keep_going_()) {
      stopped_ = true;
      take_out(order);
      return Failure{order[i], std::nullopt, true, {}};
    }
    const Op& op = model_.ops[at(order[i])];
    Minute from = floor_from_[at(order[i])];
    Minute to = unbounded;
    const Arc* tight = nullptr;
    for (const Arc& arc : op.before) {
      if (!floor_.placed(arc.from)) continue;
      const Minute end = floor_.spot(arc.from).end;
      from = std::max(from, end + arc.shortest);
      if (arc.longest < unbounded && end + arc.longest < to) to = end + arc.longest, tight = &arc;
    }
    for (const Arc& arc : op.after) {
      if (model_.ops[at(arc.to)].fixed && arc.longest < unbounded)
        from = std::max(from, floor_.spot(arc.to).start - arc.longest - op.length);
    }
    const Search search = floor_.find(order[i], from);
    if (const Arc* missed_fixed = search.spot ? too_late_for_fixed(op, *search.spot) : nullptr) {
      take_out(order);
      return Failure{order[i], *missed_fixed, false, {}};
    }
    if (search.spot && search.spot->start <= to) {
      floor_.place(order[i], *search.spot);
      ++i;
      continue;
    }

    int mover = search.move;
    Minute until = search.to;
    if (search.spot) {
      mover = tight->from;
      missed[order[i]] = {order[i], *tight, false, floor_.hot_oven_against(order[i], from, to)};
      ++misses[order[i]];
      until = floor_.spot(mover).start + (search.spot->start - to);
    }
    const bool can_move =
        mover >= 0 && mover != order[i] && place_in_order.contains(mover) && until < unbounded;
    if (!can_move || ++moves > most_moves) {
      take_out(order);
      if (missed.empty()) {
        const bool by_heat = search.against.obstacle == Obstacle::solvent;
        return Failure{order[i], std::nullopt, true, by_heat ? search.against.by : ""};
      }
      // The one that missed its gap most often is in the way; among equals the last in order, the least urgent.
      int worst = -1;
      for (int candidate : order) {
        if (misses.contains(candidate) && (worst < 0 || misses[candidate] >= misses[worst]))
          worst = candidate;
      }
      return missed[worst];
    }
    if (++moves_of[mover] > patient_moves) until = std::max(until, floor_.spot(mover).start + stride);
    floor_from_[at(mover)] = std::max(until, floor_.spot(mover).start + 1);
    const std::size_t back = place_in_order[mover];
    while (i > back) {
      --i;
      if (floor_.placed(order[i])) floor_.take_out(order[i]);
    }
  }
  return std::nullopt;
}

// Units that went into the oven long before it was lit go in just before instead, where that changes nothing after.
void BlockPlacer::load_late(const std::vector<int>& order) {
  for (int number : order) {
    if (model_.ops[at(number)].role != Role::bake) continue;
    const LoadOps& load = model_.loads[at(model_.ops[at(number)].load)];
    std::vector<int> loadings;
    for (int op : load.loadings) {
      if (floor_.placed(op) && !model_.ops[at(op)].fixed) loadings.push_back(op);
    }
    std::sort(loadings.begin(), loadings.end(),
              [&](int a, int b) { return floor_.spot(a).start > floor_.spot(b).start; });
    Minute next = floor_.spot(number).start;
    for (int op : loadings) {
      const Spot old = floor_.spot(op);
      Minute latest = next;
      for (const Arc& arc : model_.ops[at(op)].after) {
        if (floor_.placed(arc.to)) latest = std::min(latest, floor_.spot(arc.to).start - arc.shortest);
      }
      for (const Arc& arc : model_.ops[at(op)].before) {
        if (floor_.placed(arc.from) && arc.longest < unbounded) {
          latest = std::min(latest, floor_.spot(arc.from).end + arc.longest + (old.end - old.start));
        }
      }
      floor_.take_out(op);
      Spot moved = old;
      const Search search = floor_.find(op, latest - (old.end - old.start));
      if (search.spot && search.spot->end <= latest && search.spot->start > old.start) moved = *search.spot;
      floor_.place(op, moved);
      next = std::min(next, moved.start);
    }
  }
}

Unplaced BlockPlacer::told(const Failure& failure) const {
  const std::string& id = model_.ops[at(failure.op)].as_given->id;
  if (stopped_) return {"", id, Obstacle::stopped, "", "planning was stopped before this had its place"};
  if (auto reason = reason_in_itself(model_, failure.op)) return *reason;
  if (!failure.hot_oven.empty() && !model_.ops[at(failure.op)].as_given->solvent) {
    return {"", id, Obstacle::solvent, failure.hot_oven,
            format("{} keeps {} hot, and solvent is in the open beside it whenever there is time for it", id,
                   failure.hot_oven)};
  }
  if (!failure.hot_oven.empty()) {
    return {"", id, Obstacle::solvent, failure.hot_oven,
            format("{} has solvent in the open, and {} is never cold long enough in time for it", id,
                   failure.hot_oven)};
  }
  if (failure.gap && model_.ops[at(failure.gap->to)].fixed) {
    const std::string& next = model_.ops[at(failure.gap->to)].as_given->id;
    return {"", id, Obstacle::gap, model_.name_of(*failure.gap),
            format("{} cannot end in time before {}, which stands fixed", id, next)};
  }
  if (failure.gap) {
    const std::string name = model_.name_of(*failure.gap);
    return {"", id, Obstacle::gap, name,
            format("the gap {} allows {} min at most, and {} never finds its people, place or room so soon",
                   name, failure.gap->longest, id)};
  }
  return {"", id, Obstacle::horizon, "",
          format("{} finds no free place within the {} days planned", id,
                 (model_.problem.horizon + 24 * 60 - 1) / (24 * 60))};
}

}  // namespace dampward::line::detail
