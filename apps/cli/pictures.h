#pragma once

#include "core/base/problem.h"
#include "workbench/workshop.h"

namespace dampward::cli {

// Pictures of kinds that look like a drawing or photograph but cannot be drawn, each file once.
Problems undrawable(const workbench::Workshop& workshop);

}  // namespace dampward::cli
