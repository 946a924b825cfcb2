#pragma once

#include <string>
#include <vector>

#include "core/line/answer.h"
#include "core/line/problem.h"

namespace dampward::line::test {

// Every rule an answer breaks, one sentence each, found minute by minute from the words of problem.h alone.
// The first word names the rule: whole, span, hands, skill, shift, break, station, gap, oven, watch, power, capacity, late.
std::vector<std::string> violations(const Problem& problem, const Answer& answer);

}  // namespace dampward::line::test
