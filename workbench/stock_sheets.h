#pragma once

#include <vector>

#include "core/papers/stock_sheet.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// One for the store, its foot left empty; none where the plan needs nothing of it.
std::vector<papers::StockSheet> stock_sheets(const Plan& plan);

}  // namespace dampward::workbench
