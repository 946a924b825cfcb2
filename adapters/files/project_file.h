#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/solver/problem.h"

// Scheduling problems of the literature as text.
namespace dampward::files {

enum class ProjectFormat {
  sch,  // ProGen/max: operations with shortest and longest gaps (Schwindt 1996)
  sm,   // PSPLIB: operations that wait for the end of others (Kolisch and Sprecher 1997)
  jobs,  // job shops: chains of operations, each on its machine and in the hands of one of so many equal operators
};

// Told by the ending of a file's name, .sch or .sm in either case; none: another ending.
std::optional<ProjectFormat> project_format(std::string_view file_name);

// One mode and renewable resources alone. Problems name the line: a file cut short, counts that contradict the first lines, a
// negative duration, a demand over its capacity, more operations than solver::most_operations (told before anything is read
// into memory), times too long to add up. Gaps that cannot all be met are no fault here: they are the solver's to name.
// `operators`, of jobs alone: how many there are, which no file says; 0: enough. There the problem has two dummies more than the file, the
// first and the last operation.
Result<solver::Problem> read_project(std::string_view text, ProjectFormat format, const std::string& file,
                                     int operators = 0);

// Of a job shop: which of the operators, from 1, has each operation of the file in hand; whoever is free and comes first.
// Promise: no more operations run at once than there are operators.
std::vector<int> operators_of(const solver::Problem& problem, const solver::Starts& starts, int operators);

}  // namespace dampward::files
