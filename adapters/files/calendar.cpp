#include <algorithm>
#include <vector>

#include "adapters/files/timetable_sheets.h"
#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {
namespace {

using workbench::Plan;
using workbench::UnitPlan;
using workbench::UnitStep;

constexpr std::size_t longest_line = 75;  // octets, RFC 5545 sect. 3.1

// Long lines go on after a line break and one blank; never within a letter.
void add_line(std::string& calendar, const std::string& line) {
  std::size_t from = 0;
  while (line.size() - from > longest_line - (from > 0 ? 1 : 0)) {
    std::size_t to = from + longest_line - (from > 0 ? 1 : 0);
    while ((static_cast<unsigned char>(line[to]) & 0xC0U) == 0x80U) --to;
    calendar += (from > 0 ? " " : "") + line.substr(from, to - from) + "\r\n";
    from = to;
  }
  calendar += (from > 0 ? " " : "") + line.substr(from) + "\r\n";
}

// RFC 5545 sect. 3.3.11. Control characters other than a line's end have no place in a text.
std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '\n')
      out += "\\n";
    else if (c == ',' || c == ';' || c == '\\')
      (out += '\\') += c;
    else if (static_cast<unsigned char>(c) >= 0x20 && c != 0x7F)
      out += c;
  }
  return out;
}

// "20270201T103000Z".
std::string utc(Instant time) {
  std::string text = iso_text(time, WallClock(std::chrono::seconds(0)));
  text.resize(19);
  std::erase_if(text, [](char c) { return c == '-' || c == ':'; });
  return text + "Z";
}

std::string description(const UnitPlan& unit, const UnitStep& step) {
  std::vector<std::string> people;
  for (const PersonId& person : step.people) people.push_back(person.text);
  std::string text = format("{} ({}). {}", unit.kind_name, step.attendance, step.reason);
  if (!people.empty()) text += "\nBy " + listed(people) + ".";
  if (!unit.load.empty()) text += "\nLoad " + unit.load + ".";
  return text + "\nIt plans and permits nothing: local codes and a licensed person decide.";
}

void add_event(std::string& calendar, const UnitPlan& unit, const UnitStep& step, const Plan& plan) {
  add_line(calendar, "BEGIN:VEVENT");
  add_line(calendar, "UID:" + escaped(unit.unit.text + "." + step.id) + "@dampward");
  add_line(calendar, "DTSTAMP:" + utc(plan.from));
  add_line(calendar, "DTSTART:" + utc(step.starts));
  add_line(calendar, "DTEND:" + utc(step.ends));
  add_line(calendar, "SUMMARY:" + escaped(unit.unit.text + ": " + step.title));
  if (!step.station.empty()) add_line(calendar, "LOCATION:" + escaped(step.station));
  add_line(calendar, "CATEGORIES:" + escaped(step.attendance));
  add_line(calendar, "DESCRIPTION:" + escaped(description(unit, step)));
  add_line(calendar, "END:VEVENT");
}

bool has_a_hand_in(const UnitStep& step, const std::optional<PersonId>& person) {
  return !person || std::find(step.people.begin(), step.people.end(), *person) != step.people.end();
}

}  // namespace

std::string calendar_text(const Plan& plan, const std::optional<PersonId>& person) {
  std::string calendar;
  add_line(calendar, "BEGIN:VCALENDAR");
  add_line(calendar, "VERSION:2.0");
  add_line(calendar, "PRODID:-//Dampward//treatment plan//EN");
  add_line(calendar, "CALSCALE:GREGORIAN");
  add_line(calendar, "X-WR-CALNAME:" + escaped(person ? plan.shop + ": " + person->text : plan.shop));
  for (const UnitPlan& unit : plan.units) {
    for (const UnitStep& step : unit.steps) {
      if (has_a_hand_in(step, person)) add_event(calendar, unit, step, plan);
    }
  }
  add_line(calendar, "END:VCALENDAR");
  return calendar;
}

}  // namespace dampward::files
