#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/hazards/hazard.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// The rows of the hazard table for these steps, each once, in table order.
std::vector<Caution> cautions_at(const std::set<std::string>& steps,
                                 const std::vector<hazards::Hazard>& table);

}  // namespace dampward::workbench
