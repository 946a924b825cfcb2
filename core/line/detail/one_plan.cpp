#include "core/line/detail/one_plan.h"

#include <algorithm>
#include <map>
#include <queue>
#include <tuple>

#include "core/base/format.h"
#include "core/line/detail/block_placer.h"
#include "core/line/detail/blocks.h"
#include "core/line/detail/cycles.h"
#include "core/line/detail/every_start.h"
#include "core/line/detail/floor.h"
#include "core/line/detail/model.h"

namespace dampward::line::detail {
namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

// Serial list scheduling: the most urgent block that waits for nobody is placed at its earliest, and never moved again.
class Planner {
 public:
  Planner(const Problem& problem, const PlanOptions& options, const Manner& manner)
      : model_(problem),
        options_(options),
        every_start_(manner.every_start),
        floor_(model_),
        placer_(model_, floor_, options_.keep_going) {
    model_.put_ahead(manner.ahead);
    if (options.earlier != nullptr) model_.keep(options.earlier->placements);
    placer_.try_more_orders(manner.more_orders);
  }

  Answer plan() {
    wanted_.assign(model_.ops.size(), 1);
    drop_rings();
    // A unit that is dropped takes its operations out of blocks not yet placed, so those are built anew.
    while (!place_together() && place_blocks()) {
    }
    return answer();
  }

  bool stopped() const { return placer_.stopped(); }

 private:
  // A unit that cannot be whole is not begun: all its operations leave the plan, and with them what waits for them.
  void drop(int unit, const Unplaced& why) {
    const auto [it, fresh] = unplaced_.emplace(unit, why);
    if (!fresh) return;
    it->second.unit = model_.units[at(unit)]->id;
    for (int op : model_.unit_ops[at(unit)]) remove(op);
    for (std::size_t load = 0; load < model_.loads.size(); ++load)
      keep_what_is_inside(static_cast<int>(load), unit);
  }

  // A unit that is in the oven and will not come out keeps it; whatever was to use that oven later is placed anew.
  void keep_what_is_inside(int number, int unit) {
    const LoadOps& load = model_.loads[at(number)];
    const auto of_unit = [&](int op) { return model_.ops[at(op)].unit == unit; };
    const auto fixed = [&](int op) { return of_unit(op) && model_.ops[at(op)].fixed; };
    if (std::none_of(load.loadings.begin(), load.loadings.end(), fixed) ||
        std::any_of(load.unloadings.begin(), load.unloadings.end(), fixed))
      return;
    for (std::size_t op = 0; op < model_.ops.size(); ++op) {
      if (floor_.placed(static_cast<int>(op)) && !model_.ops[op].fixed) floor_.take_out(static_cast<int>(op));
    }
    floor_.keep_to_horizon(number);
  }

  void drop_operation(int op, const Unplaced& why) {
    const Op& it = model_.ops[at(op)];
    if (it.unit >= 0) {
      drop(it.unit, why);
    } else if (it.load >= 0) {
      const LoadOps& load = model_.loads[at(it.load)];
      for (int loading : load.loadings) drop_operation(loading, why);
      for (int unloading : load.unloadings) drop_operation(unloading, why);
    } else if (wanted_[at(op)]) {
      loose_.push_back(why);
      remove(op);
    }
  }

  void remove(int op) {
    const int load = model_.ops[at(op)].load;
    if (!wanted_[at(op)]) return;
    if (model_.ops[at(op)].fixed) {
      if (load >= 0) drop_empty_load(load);
      return;
    }
    wanted_[at(op)] = 0;
    if (floor_.placed(op)) floor_.take_out(op);
    for (const Arc& arc : model_.ops[at(op)].after) {
      const Op& next = model_.ops[at(arc.to)];
      if (!wanted_[at(arc.to)] || next.role == Role::bake || next.fixed) continue;
      const std::string& id = model_.ops[at(op)].as_given->id;
      drop_operation(arc.to, {"", next.as_given->id, Obstacle::gap, model_.name_of(arc),
                              format("{} waits for {}, which has no place", next.as_given->id, id)});
    }
    if (load >= 0) drop_empty_load(load);
  }

  // A bake for nobody is not baked.
  void drop_empty_load(int number) {
    const LoadOps& load = model_.loads[at(number)];
    const auto waits = [&](int op) { return !unplaced_.contains(model_.ops[at(op)].unit); };
    if (!wanted_[at(load.bake)] || model_.ops[at(load.bake)].fixed ||
        std::any_of(load.loadings.begin(), load.loadings.end(), waits))
      return;
    wanted_[at(load.bake)] = 0;
    if (floor_.placed(load.bake)) floor_.take_out(load.bake);
  }

  void drop_rings() {
    for (;;) {
      const std::vector<Link> ring = impossible_ring(model_, wanted_);
      if (ring.empty()) return;
      std::string names;
      for (const Link& link : ring) {
        if (!names.empty()) names += ", ";
        names += format("{} ({} {} min)", model_.name_of(link.arc), link.backwards ? "at most" : "at least",
                        link.backwards ? link.arc.longest : link.arc.shortest);
      }
      const Link& first = *std::find_if(
          ring.begin(), ring.end(), [&](const Link& link) { return !model_.ops[at(link.arc.from)].fixed; });
      const int op = first.arc.from;
      drop_operation(op, {"", model_.ops[at(op)].as_given->id, Obstacle::cycle, model_.name_of(first.arc),
                          format("these gaps cannot be kept together: {}", names)});
    }
  }

  // A handful of operations at whatever starts suit them all. False: they stand as before.
  bool place_together() {
    std::vector<int> open;
    for (std::size_t op = 0; op < model_.ops.size(); ++op) {
      if (wanted_[op] && !model_.ops[op].fixed) open.push_back(static_cast<int>(op));
    }
    if (!every_start_ || open.size() > few_enough_for_every_start) return false;
    for (int op : open) {
      if (floor_.placed(op)) floor_.take_out(op);
    }
    return EveryStart(model_, floor_, options_.keep_going).place(open);
  }

  // Places all blocks of what is wanted and not placed. True: something was dropped, so look again.
  bool place_blocks() {
    std::vector<char> open = wanted_;
    for (std::size_t i = 0; i < open.size(); ++i) open[i] = wanted_[i] && !floor_.placed(static_cast<int>(i));
    const std::vector<Block> blocks = blocks_of(model_, open);
    std::vector<std::size_t> waiting(blocks.size());
    using Key = std::tuple<int, int>;  // rank, number
    std::priority_queue<Key, std::vector<Key>, std::greater<>> ready;
    for (std::size_t b = 0; b < blocks.size(); ++b) {
      waiting[b] = blocks[b].before.size();
      if (waiting[b] == 0) ready.emplace(blocks[b].rank, static_cast<int>(b));
    }
    while (!ready.empty()) {
      const int number = std::get<1>(ready.top());
      ready.pop();
      const Block& block = blocks[at(number)];
      if (const auto why = placer_.place(block.ops)) {
        if (placer_.stopped()) {
          stop(*why);
          return false;
        }
        give_up(*why, block);
        return true;
      }
      for (int next : block.after) {
        if (--waiting[at(next)] == 0) ready.emplace(blocks[at(next)].rank, next);
      }
    }
    return false;
  }

  void give_up(const Unplaced& why, const Block& block) {
    for (int op : block.ops) {
      if (model_.ops[at(op)].as_given->id == why.operation) return drop_operation(op, why);
    }
  }

  // Told to stop: whole units stay, all others go.
  void stop(const Unplaced& why) {
    for (std::size_t u = 0; u < model_.units.size(); ++u) {
      for (int op : model_.unit_ops[u]) {
        if (wanted_[at(op)] && !floor_.placed(op)) {
          Unplaced mine = why;
          mine.operation = model_.ops[at(op)].as_given->id;
          drop(static_cast<int>(u), mine);
          break;
        }
      }
    }
    for (std::size_t op = 0; op < model_.ops.size(); ++op) {
      if (wanted_[op] && !floor_.placed(static_cast<int>(op))) drop_operation(static_cast<int>(op), why);
    }
  }

  Answer answer() const {
    Answer answer;
    std::map<std::string_view, int> number;
    for (std::size_t i = 0; i < model_.ops.size(); ++i)
      number[model_.ops[i].as_given->id] = static_cast<int>(i);
    for (const Operation& given : model_.problem.operations) {
      const int op = number.at(given.id);
      if (!floor_.placed(op)) continue;
      answer.placements.push_back(placement(op));
      const Minute end = answer.placements.back().end;
      answer.finish = answer.placements.size() == 1 ? end : std::max(answer.finish, end);
    }
    for (std::size_t l = 0; l < model_.loads.size(); ++l) {
      const int load = static_cast<int>(l);
      if (floor_.stay_of(load) == Span{}) continue;
      answer.stays.push_back(
          {model_.loads[l].as_given->id, model_.ovens[at(floor_.oven_of(load))]->id, floor_.stay_of(load)});
    }
    for (std::size_t u = 0; u < model_.units.size(); ++u) lateness(static_cast<int>(u), answer);
    std::stable_sort(answer.late.begin(), answer.late.end(),
                     [](const Lateness& a, const Lateness& b) { return a.late() > b.late(); });
    for (const auto& [unit, why] : unplaced_) answer.unplaced.push_back(why);
    answer.unplaced.insert(answer.unplaced.end(), loose_.begin(), loose_.end());
    return answer;
  }

  Placement placement(int op) const {
    const Op& it = model_.ops[at(op)];
    const Spot& spot = floor_.spot(op);
    Placement placement{it.as_given->id, spot.start, spot.end, {}, ""};
    for (int p : spot.people) placement.people.push_back(model_.people[at(p)]->id);
    if (spot.station >= 0) {
      placement.station = model_.stations[at(spot.station)]->id;
    } else if (it.fixed) {
      placement.station = it.fixed->station;
    } else if (it.load >= 0) {
      placement.station = model_.ovens[at(floor_.oven_of(it.load))]->id;
    }
    return placement;
  }

  void lateness(int number, Answer& answer) const {
    const Unit& unit = *model_.units[at(number)];
    if (!unit.due) return;
    Minute finish = -unbounded;
    for (int op : model_.unit_ops[at(number)]) {
      const auto& later = unit.after_due;
      if (!floor_.placed(op)) continue;
      if (std::find(later.begin(), later.end(), model_.ops[at(op)].as_given->id) != later.end()) continue;
      finish = std::max(finish, floor_.spot(op).end);
    }
    if (!unplaced_.contains(number) && finish > *unit.due)
      answer.late.push_back({unit.id, *unit.due, finish});
  }

  Model model_;
  const PlanOptions& options_;
  bool every_start_;
  Floor floor_;
  BlockPlacer placer_;
  std::vector<char> wanted_;
  std::map<int, Unplaced> unplaced_;  // by unit
  std::vector<Unplaced> loose_;       // operations of no unit
};

}  // namespace

OnePlan one_plan(const Problem& problem, const PlanOptions& options, const Manner& manner) {
  Planner planner(problem, options, manner);
  Answer answer = planner.plan();
  return {std::move(answer), planner.stopped()};
}

}  // namespace dampward::line::detail
