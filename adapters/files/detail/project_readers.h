#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "adapters/files/detail/number_lines.h"
#include "core/solver/problem.h"

namespace dampward::files::detail {

// Each fills the problem, or keeps its first fault and answers false.
bool read_sch(std::string_view text, solver::Problem& problem, ReadFault& fault);
bool read_sm(std::string_view text, solver::Problem& problem, ReadFault& fault);
bool read_jobs(std::string_view text, int operators, solver::Problem& problem, ReadFault& fault);

// Operations (dummies included) and resources that are to come, within what the solver takes.
bool counts_fit(int line, int operations, int resources, ReadFault& fault);

// Duration and demands of one operation from fields[first] on.
bool read_operation(const NumberLine& line, std::size_t first, int resources, solver::Problem& problem,
                    ReadFault& fault);

// Capacities from a line, then each demand held against its own; `lines` says where each operation stands.
bool read_capacities(const NumberLine& line, int resources, const std::vector<int>& lines,
                     solver::Problem& problem, ReadFault& fault);

}  // namespace dampward::files::detail
