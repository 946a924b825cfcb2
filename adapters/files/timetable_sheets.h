#pragma once

#include <optional>
#include <string>

#include "workbench/plan.h"

namespace dampward::files {

// The plan's steps as a calendar (iCalendar, RFC 5545): those one person has a hand in, or with none all of them. Times are UTC; an
// event's UID is unit and step, so that a later plan moves it instead of adding it; DTSTAMP is the start of the plan's work, for
// nothing here reads a clock.
std::string calendar_text(const workbench::Plan& plan, const std::optional<PersonId>& person);

// All steps as comma-separated values (RFC 4180), in order of time; on the shop's clock, with offset. A field that a spreadsheet could
// take for a formula begins with an apostrophe.
std::string timetable_csv(const workbench::Plan& plan);

}  // namespace dampward::files
