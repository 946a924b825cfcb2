#pragma once

#include <string>
#include <vector>

#include "adapters/files/out_folder.h"
#include "apps/cli/printing.h"
#include "workbench/plan.h"

namespace dampward::cli {

// The files of a plan: a sheet for each oven load and each pot, a calendar of everything and one for each person who has a hand in it, and the
// whole as CSV. The same plan gives the same files, and a load that has not changed the same sheet.
std::vector<files::OutFile> output_of(const workbench::Plan& plan, const Printing& printing);

// Of which plan they are; the id is the same for the same timetable.
files::OutStamp stamp_of(const workbench::Plan& plan, const std::string& timetable);

}  // namespace dampward::cli
