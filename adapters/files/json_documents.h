#pragma once

#include <string>
#include <vector>

#include "core/base/problem.h"

namespace dampward::history {
struct Event;
}

namespace dampward::line {
struct Answer;
struct Problem;
}  // namespace dampward::line

namespace dampward::workbench {
struct AirAnswer;
struct BakeAnswer;
struct WallCharts;
struct WindowAnswer;
struct ExposureReport;
struct Leaflet;
struct MixAnswer;
struct Plan;
struct PlanDifference;
struct SelfCheck;
}  // namespace dampward::workbench

namespace dampward::referee {
struct Violation;
}

namespace dampward::files {

// One JSON document each, ended by a newline. Always SI: every number's key ends in its unit, an unknown value is null
// beside a reason, times are ISO 8601 with offset. docs/cli.md names every key.
std::string start_json(const std::string& folder, const std::vector<std::string>& files);
// `suspicions` are what the files' reader finds odd but usable; `what_if` is what sets this plan apart from that of the folder
// as it stands, null where nobody asked. Promise of the caller: the referee finds no rule broken; a plan that breaks one is
// never told.
std::string plan_json(const workbench::Plan& plan, const Problems& suspicions = {},
                      const workbench::PlanDifference* what_if = nullptr);
std::string note_json(const history::Event& event, const std::string& hash);
std::string mix_json(const workbench::MixAnswer& answer);
std::string air_json(const workbench::AirAnswer& answer);
std::string leaflet_json(const workbench::Leaflet& leaflet);
std::string bake_json(const workbench::BakeAnswer& answer);
std::string window_json(const workbench::WindowAnswer& answer);
std::string charts_json(const workbench::WallCharts& charts);
std::string exposure_json(const workbench::ExposureReport& report);
std::string selfcheck_json(const workbench::SelfCheck& check);
// What came of a timetable problem, without the placements: those are in the answer's own file.
std::string solve_json(const line::Problem& problem, const line::Answer& answer);
// The files as named by the person, and what the referee found.
std::string verify_json(const std::string& problem, const std::string& answer,
                        const std::vector<referee::Violation>& violations);
// For verbs whose whole answer is whether something was at fault: `faults[]` and `warnings[]`, either may be empty.
std::string faults_json(const Problems& faults, const Problems& warnings = {});

}  // namespace dampward::files
