#pragma once

#include "core/base/problem.h"
#include "core/history/event.h"
#include "core/records/records.h"
#include "workbench/workshop.h"

namespace dampward::workbench {

// Names of an event that the shop and its queue do not have: unit, oven, person, author, and a step that no route knows. An old
// event may name what has left the shop since; a new one may not.
Problems unknown_names(const history::Event& event, const Workshop& workshop, const records::Queue& queue);

}  // namespace dampward::workbench
