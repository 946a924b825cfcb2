#pragma once

#include <optional>
#include <string>

#include "apps/cli/call.h"
#include "core/line/answer.h"
#include "core/line/problem.h"

namespace dampward::cli {

// A timetable as the two texts that anybody else would be given.
struct TimetableTexts {
  std::string problem, answer;
};
TimetableTexts texts_of(const line::Problem& problem, const line::Answer& answer,
                        const std::string& starts_at = "");

// Has the referee judge our own timetable. An answer: it breaks a rule, which is our mistake, and this is said instead of it.
std::optional<Answer> broken_timetable(const Call& call, const TimetableTexts& texts);

// Writes the texts where the call asks for them. An answer: one could not be written.
std::optional<Answer> unwritten(const Call& call, const TimetableTexts& texts);

}  // namespace dampward::cli
