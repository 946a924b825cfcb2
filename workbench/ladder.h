#pragma once

#include <functional>
#include <string>

#include "core/base/result.h"
#include "core/records/records.h"
#include "workbench/plan.h"
#include "workbench/workshop.h"

namespace dampward::workbench {

// The workshop as its files would make it with changes such as "spray.fan=90 m3/min", several with "; " between. Problems: the
// files cannot hold it.
using WorkshopWith = std::function<Result<Workshop>(const std::string& change)>;

// How much trying ladders are worth. Plans are counted, not seconds, so that the same folder gives the same ladders everywhere.
struct LadderLimits {
  std::size_t alone = 96;        // plans of one unit alone, for all ladders together
  std::size_t whole = 12;        // plans of the whole queue, for all ladders together
  std::size_t tries = 16;        // changes tried for one unit
  std::size_t rungs = 3;         // shown for one unit
  std::size_t whole_queue = 40;  // a queue longer than this is never planned anew as a whole
};

// Gives each refusal the changes of the shop that would let its unit in, cheapest first by the shop's own costs. Where a change
// only brings the next barrier to light, changes against that one are put on top of it. Every rung was planned: the
// unit has a place in the changed shop alone, and then, as far as the limits go, amid the whole queue. Where none is found the
// refusal says why. `workshop` and `records` are those the
// plan was made from; it stops with options.keep_going.
void add_ladders(Plan& plan, const Workshop& workshop, const records::RecordStore& records,
                 const PlanOptions& options, const WorkshopWith& with, const LadderLimits& limits = {});

}  // namespace dampward::workbench
