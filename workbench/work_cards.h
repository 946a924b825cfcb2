#pragma once

#include <vector>

#include "core/papers/work_card.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// A card for every unit the plan treats, in its order.
std::vector<papers::WorkCard> work_cards(const Plan& plan);

}  // namespace dampward::workbench
