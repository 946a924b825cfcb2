#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/referee/answer.h"
#include "core/referee/problem.h"

namespace dampward::referee_json {

// A timetable problem as docs/formats/timetable.md describes it, or all its faults: JSON that cannot be read, keys unknown,
// missing or twice, wrong types, figures out of range, and what no timetable could mend. Problems name the file by `shown`.
Result<referee::PlanProblem> read_problem(std::string_view text, const std::string& shown);

// An answer to one. Whether its names and figures fit the problem is the referee's affair.
Result<referee::PlanAnswer> read_answer(std::string_view text, const std::string& shown);

}  // namespace dampward::referee_json
