#pragma once

#include "adapters/files/project_file.h"
#include "apps/cli/call.h"

namespace dampward::cli {

// solve, for the scheduling problems of the literature.
Answer solve_project(const Call& call, files::ProjectFormat format);

}  // namespace dampward::cli
