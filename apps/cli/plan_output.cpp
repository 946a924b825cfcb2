#include "apps/cli/plan_output.h"

#include <algorithm>
#include <cctype>
#include <set>

#include "adapters/files/sha256.h"
#include "adapters/files/timetable_sheets.h"

namespace dampward::cli {
namespace {

// A person's id as part of a file's name, on any disk.
std::string file_name(const std::string& id, std::set<std::string>& taken) {
  std::string name;
  for (const char c : id) {
    const bool plain = std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '-' || c == '_';
    name += plain ? static_cast<char>(std::tolower(static_cast<unsigned char>(c))) : '_';
  }
  while (!taken.insert(name).second) name += "_";
  return name;
}

}  // namespace

std::vector<files::OutFile> output_of(const workbench::Plan& plan) {
  std::set<std::string> people;
  for (const auto& unit : plan.units) {
    for (const auto& step : unit.steps) {
      for (const PersonId& person : step.people) people.insert(person.text);
    }
  }
  std::vector<files::OutFile> all = {
      {"timetable.csv", "every step, in order of time", files::timetable_csv(plan)},
      {"calendar.ics", "every step, as a calendar", files::calendar_text(plan, std::nullopt)}};
  std::set<std::string> taken;
  for (const std::string& person : people) {
    all.push_back({"calendar_" + file_name(person, taken) + ".ics", "the day of " + person,
                   files::calendar_text(plan, PersonId(person))});
  }
  return all;
}

files::OutStamp stamp_of(const workbench::Plan& plan, const std::string& timetable) {
  return {plan.shop, iso_text(plan.from, plan.clock), files::sha256_hex(timetable).substr(0, 12)};
}

}  // namespace dampward::cli
