#pragma once

#include <string>
#include <vector>

#include "core/base/format.h"
#include "core/referee/detail/case.h"
#include "core/referee/judge.h"

// The rules of docs/formats/timetable.md, one family a file. Each adds what it finds broken.

namespace dampward::referee {

using Violations = std::vector<Violation>;

void judge_names(const Case&, Violations&);       // unknown, twice
void judge_whole(const Case&, Violations&);       // whole, untold
void judge_lengths(const Case&, Violations&);     // length, outside, past
void judge_fixed(const Case&, Violations&);       // fixed
void judge_gaps(const Case&, Violations&);        // gap_short, gap_long
void judge_people(const Case&, Violations&);      // people, skill, busy
void judge_shifts(const Case&, Violations&);      // shift, break
void judge_heat(const Case&, Violations&);        // watch, power
void judge_stations(const Case&, Violations&);    // station, crowded
void judge_ovens(const Case&, Violations&);       // oven
void judge_loads(const Case&, Violations&);       // load_order, load_size, load_setting, load_time
void judge_capacities(const Case&, Violations&);  // capacity
void judge_solvent(const Case&, Violations&);     // solvent
void judge_told(const Case&, Violations&);        // late, finish

}  // namespace dampward::referee
