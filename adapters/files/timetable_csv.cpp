#include <algorithm>
#include <tuple>
#include <vector>

#include "adapters/files/timetable_sheets.h"

namespace dampward::files {
namespace {

using workbench::UnitPlan;
using workbench::UnitStep;

// A spreadsheet runs what begins with these; an apostrophe makes it plain text again (common practice, no source).
bool reads_as_formula(const std::string& text) {
  return !text.empty() && std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos;
}

std::string field(std::string text) {
  if (reads_as_formula(text)) text.insert(0, "'");
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string quoted = "\"";
  for (const char c : text) quoted += c == '"' ? "\"\"" : std::string(1, c);
  return quoted + "\"";
}

void add_row(std::string& csv, const std::vector<std::string>& fields) {
  for (std::size_t i = 0; i < fields.size(); ++i) csv += (i > 0 ? "," : "") + field(fields[i]);
  csv += "\r\n";
}

}  // namespace

std::string timetable_csv(const workbench::Plan& plan) {
  struct Row {
    const UnitPlan* unit;
    const UnitStep* step;
  };
  std::vector<Row> rows;
  for (const UnitPlan& unit : plan.units) {
    for (const UnitStep& step : unit.steps) rows.push_back({&unit, &step});
  }
  std::stable_sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) {
    return std::tie(a.step->starts, a.step->ends) < std::tie(b.step->starts, b.step->ends);
  });
  std::string csv;
  add_row(csv, {"starts_at", "ends_at", "unit", "kind", "step", "title", "people", "station", "attendance",
                "load"});
  for (const auto& [unit, step] : rows) {
    std::string people;
    for (const PersonId& person : step->people) people += (people.empty() ? "" : " ") + person.text;
    add_row(csv,
            {iso_text(step->starts, plan.clock), iso_text(step->ends, plan.clock), unit->unit.text,
             unit->kind_name, step->id, step->title, people, step->station, step->attendance, unit->load});
  }
  return csv;
}

}  // namespace dampward::files
