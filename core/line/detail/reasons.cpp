#include "core/line/detail/reasons.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/line/calendar.h"
#include "core/line/detail/level.h"

namespace dampward::line::detail {
namespace {

Minute longest(const Calendar& spans) {
  Minute most = 0;
  for (const Span& span : spans) most = std::max(most, span.length());
  return most;
}

std::string duration(Minute minutes) {
  if (minutes < 120) return format("{} min", minutes);
  return minutes % 60 == 0 ? format("{} h", minutes / 60) : format("{} h {} min", minutes / 60, minutes % 60);
}

class Reasoner {
 public:
  Reasoner(const Model& model, int number)
      : model_(model), op_(model.ops[static_cast<std::size_t>(number)]), given_(*op_.as_given) {}

  std::optional<Unplaced> find() const {
    if (given_.attendance == Attendance::attended && op_.skill >= 0) {
      if (auto found = hands()) return found;
    }
    if (given_.attendance == Attendance::watched) {
      if (auto found = watch()) return found;
    }
    if (op_.needs_station && op_.stations.empty()) {
      return unplaced(Obstacle::station, given_.station_skill,
                      format("no station serves {}, which {} needs", given_.station_skill, given_.id));
    }
    for (const OpDemand& demand : op_.demands) {
      const Capacity& capacity = *model_.capacities[static_cast<std::size_t>(demand.capacity)];
      const std::int64_t amount = stacked(op_.demands, demand);
      if (Level(capacity).longest_run(amount, model_.problem.horizon) >= op_.length) continue;
      return unplaced(Obstacle::capacity, capacity.id,
                      format("{} alone takes {} of {}, and there is never so much for {}", given_.id, amount,
                             capacity.id, duration(op_.length)));
    }
    return std::nullopt;
  }

 private:
  Unplaced unplaced(Obstacle obstacle, std::string by, std::string reason) const {
    return {"", given_.id, obstacle, std::move(by), std::move(reason)};
  }

  std::optional<Unplaced> hands() const {
    const std::size_t need = static_cast<std::size_t>(given_.people);
    if (op_.skilled.size() < need) {
      return unplaced(
          Obstacle::skill, given_.skill,
          format("{} needs {} with the skill {}, and the crew has {}", given_.id,
                 need == 1 ? "somebody" : format("{} people", need), given_.skill, op_.skilled.size()));
    }
    std::vector<Minute> stretches;
    Level together(0);
    for (int p : op_.skilled) {
      const Person& person = *model_.people[static_cast<std::size_t>(p)];
      const Calendar there = given_.pausable ? person.shifts : without(person.shifts, person.breaks);
      for (const Span& span : there) together.add(span, 1);
      stretches.push_back(longest(there));
    }
    std::sort(stretches.rbegin(), stretches.rend());
    const Minute at_once = together.longest_run(given_.people, model_.problem.horizon);
    if (stretches[need - 1] >= op_.length && at_once < op_.length) {
      return unplaced(
          Obstacle::shift, given_.skill,
          format("{} takes {} people for {}, and so many with the skill {} are there together for {} "
                 "at most",
                 given_.id, need, duration(op_.length), given_.skill, duration(at_once)));
    }
    if (stretches[need - 1] >= op_.length) return std::nullopt;
    return unplaced(
        Obstacle::shift, given_.skill,
        format("{} takes {} in one go, and the longest stretch {} with the skill {} is {}", given_.id,
               duration(op_.length), given_.pausable ? "on shift of anyone" : "between breaks of anyone",
               given_.skill, duration(stretches[need - 1])));
  }

  std::optional<Unplaced> watch() const {
    Calendar watch;
    for (int p : op_.skilled) watch = joined(watch, model_.people[static_cast<std::size_t>(p)]->shifts);
    if (longest(watch) < op_.length) {
      return unplaced(
          Obstacle::watch, given_.skill,
          format("{} takes {}, and somebody with the skill {} is on shift for {} at most without a gap",
                 given_.id, duration(op_.length), given_.skill, duration(longest(watch))));
    }
    if (op_.role != Role::bake) return std::nullopt;
    const LoadOps& load = model_.loads[static_cast<std::size_t>(op_.load)];
    Minute powered = 0, both = 0;
    for (int o : load.ovens) {
      const Calendar& power = model_.ovens[static_cast<std::size_t>(o)]->powered;
      powered = std::max(powered, longest(power));
      both = std::max(both, longest(common(watch, power)));
    }
    if (both >= op_.length) return std::nullopt;
    const std::string ovens = listed(load.as_given->ovens);
    if (powered < op_.length) {
      return unplaced(Obstacle::watch, ovens,
                      format("{} takes {}, and {} has power for {} at most without a gap", given_.id,
                             duration(op_.length), ovens, duration(powered)));
    }
    return unplaced(Obstacle::watch, ovens,
                    format("{} takes {}, and {} is powered and watched at once for {} at most", given_.id,
                           duration(op_.length), ovens, duration(both)));
  }

  const Model& model_;
  const Op& op_;
  const Operation& given_;
};

}  // namespace

std::optional<Unplaced> reason_in_itself(const Model& model, int op) {
  return Reasoner(model, op).find();
}

}  // namespace dampward::line::detail
