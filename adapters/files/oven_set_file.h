#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/solver/batches.h"

namespace dampward::files {

// Told by the ending of a file's name, .dzn in either case.
bool names_oven_set(std::string_view file_name);

// An instance of the oven scheduling problem (Lackner et al. 2023) as MiniZinc data. Names and counts as its authors give them;
// jobs, machines and attributes count from 1 there, from 0 here. The last row of the set-up tables, of a state that is no
// attribute, goes unused: every machine names its initial attribute. Problems name the line: a file cut short, a value that is
// missing or of another form, a list of another length than the counts say, a negative size, a job larger than every machine it
// may go to, one that no interval can hold, and the other faults of the problem.
Result<solver::BatchProblem> read_oven_set(std::string_view text, const std::string& file);

}  // namespace dampward::files
