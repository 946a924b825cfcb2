#pragma once

#include "adapters/files/json_values.h"
#include "workbench/plan.h"

namespace dampward::files::detail {

// The values of the keys `moved` and `rework` of docs/cli.md.
Json moved_json(const workbench::Plan& plan);
Json rework_json(const workbench::Plan& plan);

}  // namespace dampward::files::detail
