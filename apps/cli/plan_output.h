#pragma once

#include <optional>
#include <string>
#include <vector>

#include "adapters/files/out_folder.h"
#include "workbench/plan.h"

namespace dampward::cli {

// The files of a plan: a calendar of everything and one for each person who has a hand in it, and the whole as CSV. The same
// plan gives the same files.
std::vector<files::OutFile> output_of(const workbench::Plan& plan);

// Of which plan they are; the id is the same for the same timetable.
files::OutStamp stamp_of(const workbench::Plan& plan, const std::string& timetable);

}  // namespace dampward::cli
