#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/line/answer.h"
#include "core/line/problem.h"

// A timetable problem and its answer as JSON: docs/formats/timetable.md.
namespace dampward::files {

// `starts_at`: when minute 0 is, ISO 8601 with offset; empty: nobody says.
std::string problem_text(const line::Problem& problem, const std::string& starts_at = "");
std::string answer_text(const line::Answer& answer);

// Problems: no JSON, a wrong, missing, doubled or unknown key, or what `line::faults` finds; each names its path. `file` is
// what the person calls it.
Result<line::Problem> read_problem(std::string_view text, const std::string& file);

}  // namespace dampward::files
