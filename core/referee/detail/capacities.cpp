#include <unordered_map>

#include "core/base/text.h"
#include "core/referee/detail/rules.h"
#include "core/referee/detail/shares.h"

namespace dampward::referee {
namespace {

using Taken = std::unordered_map<std::string_view, std::vector<Share>>;

void take(const Operation& what, Span when, bool fixed, Taken& taken) {
  for (const Demand& demand : what.demands)
    taken[demand.capacity].push_back({{when.from, when.to + demand.tail}, demand.amount, fixed, what.id});
}

// A bake takes as long as its oven is hot. Of a fixed one the heat that others add to it is theirs.
void take_heat(const Case& open, const LoadWork& work, Taken& taken) {
  const Operation& bake = *open.operation(work.load->bake);
  const Span heat = *work.heat;
  if (!work.fixed_bake) {
    take(bake, heat, false, taken);
    return;
  }
  const Minute own_end = work.fixed_heat ? work.fixed_heat->to : heat.from;
  take(bake, {heat.from, own_end}, true, taken);
  for (const Demand& demand : bake.demands) {
    taken[demand.capacity].push_back(
        {{own_end + demand.tail, heat.to + demand.tail}, demand.amount, false, bake.id});
  }
}

}  // namespace

void judge_capacities(const Case& open, Violations& found) {
  Taken taken;
  for (const Work& work : open.works()) {
    if (!open.is_bake(work.what->id)) take(*work.what, work.when(), work.fixed, taken);
  }
  for (const LoadWork& work : open.loads()) {
    if (work.heat) take_heat(open, work, taken);
  }
  for (const Capacity& capacity : open.problem.capacities) {
    for (const Excess& excess : excesses(taken[capacity.id], capacity.steps)) {
      std::vector<std::string> ids = {capacity.id};
      ids.insert(ids.end(), excess.who.begin(), excess.who.end());
      found.push_back({"capacity", ids,
                       format("From minute {} to {}, {} of \"{}\" is taken (by {}), but there is {}.",
                              excess.when.from, excess.when.to, excess.taken, capacity.id,
                              listed(std::vector<std::string>(ids.begin() + 1, ids.end())), excess.there)});
    }
  }
}

}  // namespace dampward::referee
