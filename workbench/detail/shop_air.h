#pragma once

#include "core/base/result.h"
#include "core/records/records.h"
#include "workbench/plan.h"

namespace dampward::workbench {

struct Workshop;

// The air a plan of this folder would count on when work starts. Problem: the queue has no start, or nothing is known of the air.
Result<RulingAir> air_at_start(const Workshop& workshop, const records::RecordStore& records);

}  // namespace dampward::workbench
