#include "adapters/files/detail/strict_json.h"
#include "adapters/files/timetable_json.h"
#include "core/base/civil_time.h"
#include "core/line/planner.h"

namespace dampward::files {
namespace {

using namespace line;
using detail::StrictObject;
using detail::WholeRange;

constexpr Minute ten_years = 3650 * 24 * 60;
constexpr WholeRange lasting{0, ten_years}, any_minute{-ten_years, ten_years}, count{1, 1000},
    amounts{0, 1'000'000'000'000}, weights{0, 1'000'000}, priorities{-1'000'000, 1'000'000};

template <class Item, class Read>
std::vector<Item> each(std::vector<StrictObject> objects, Read read) {
  std::vector<Item> items;
  for (StrictObject& object : objects) {
    items.push_back(read(object));
    object.done();
  }
  return items;
}

std::optional<Temperature> degrees(StrictObject& object, const char* key) {
  const auto value = object.number_or_null(key);
  return value ? std::optional(Temperature::celsius(*value)) : std::nullopt;
}

Attendance attendance_of(StrictObject& object) {
  const std::string word = object.text_or("attendance", "attended");
  if (word == "watched") return Attendance::watched;
  if (word == "unattended") return Attendance::unattended;
  if (word != "attended")
    object.fault("attendance", "\"" + word + "\"", "\"attended\", \"watched\" or \"unattended\"");
  return Attendance::attended;
}

Operation operation_of(StrictObject& object) {
  Operation op;
  op.id = object.text("id");
  op.unit = object.text_or("unit", "");
  op.length = object.whole("length_min", {1, ten_years});
  op.attendance = attendance_of(object);
  op.skill = object.text_or("skill", "");
  op.people = static_cast<int>(object.whole_or("people", 1, count));
  op.pausable = object.flag_or("pausable", false);
  op.station_skill = object.text_or("station_skill", "");
  op.stations = object.texts("stations");
  op.solvent = object.flag_or("solvent", false);
  op.clears = object.whole_or("clears_min", 0, lasting);
  op.demands = each<Demand>(object.objects_or_none("demands"), [](StrictObject& demand) {
    return Demand{demand.text("capacity"), demand.whole("amount", amounts),
                  demand.whole_or("tail_min", 0, lasting)};
  });
  return op;
}

Unit unit_of(StrictObject& object) {
  Unit unit;
  unit.id = object.text("id");
  unit.due = object.whole_or_null("due_min", any_minute);
  unit.priority = static_cast<int>(object.whole_or("priority", 0, priorities));
  unit.weight = static_cast<int>(object.whole_or("weight", 1, weights));
  unit.after_due = object.texts("after_due");
  return unit;
}

Gap gap_of(StrictObject& object) {
  return {object.text_or("name", ""), object.text("from"), object.text("to"),
          object.whole_or("shortest_min", 0, lasting), object.whole_or_null("longest_min", lasting)};
}

Member member_of(StrictObject& object) {
  Member member;
  member.loading = object.text("loading");
  member.unloading = object.text("unloading");
  member.needs = object.whole_or("needs_min", 0, lasting);
  member.volume = object.number_or("volume_l", 0) * litre;
  member.mass = object.number_or("mass_kg", 0) * kilogram;
  member.coldest = degrees(object, "coldest_c");
  member.hottest = degrees(object, "hottest_c");
  return member;
}

Load load_of(StrictObject& object) {
  Load load;
  load.id = object.text("id");
  load.ovens = object.texts("ovens");
  load.bake = object.text("bake");
  load.setting = degrees(object, "setting_c");
  load.members = each<Member>(object.objects("members"), member_of);
  return load;
}

Oven oven_of(StrictObject& object) {
  Oven oven;
  oven.id = object.text("id");
  oven.powered = object.spans("powered");
  oven.near_solvent = object.flag_or("near_solvent", true);
  oven.cools = object.whole_or("cools_min", 0, lasting);
  if (const auto litres = object.number_or_null("volume_l")) oven.volume = *litres * litre;
  if (const auto kilograms = object.number_or_null("mass_kg")) oven.mass = *kilograms * kilogram;
  return oven;
}

Capacity capacity_of(StrictObject& object) {
  Capacity capacity;
  capacity.id = object.text("id");
  for (const auto& step : object.pairs("steps", amounts)) capacity.steps.push_back({step[0], step[1]});
  return capacity;
}

Fixed fixed_of(StrictObject& object) {
  return {object.text("operation"), object.whole("start_min", any_minute),
          object.whole("end_min", any_minute), object.texts("people"), object.text_or("station", "")};
}

void head(StrictObject& root) {
  if (const std::string format = root.text("format");
      format != "dampward timetable problem" && !format.empty())
    root.fault("format", "\"" + format + "\"", "\"dampward timetable problem\"");
  root.whole("version", {1, 1});
  if (const std::string at = root.text_or("starts_at", ""); !at.empty() && !parse_instant(at))
    root.fault("starts_at", "\"" + at + "\"", "a time with its offset, such as 2027-02-01T07:00:00-04:00");
}

}  // namespace

Result<line::Problem> read_problem(std::string_view text, const std::string& file) {
  const auto json = detail::parse_json(text, file);
  if (!json) return json.problems();
  Problems problems;
  StrictObject root(*json, "", file, problems);
  head(root);
  line::Problem problem;
  problem.horizon = root.whole("horizon_min", {1, ten_years});
  problem.now = root.whole_or("now_min", 0, any_minute);
  problem.units = each<Unit>(root.objects_or_none("units"), unit_of);
  problem.operations = each<Operation>(root.objects_or_none("operations"), operation_of);
  problem.gaps = each<Gap>(root.objects_or_none("gaps"), gap_of);
  problem.loads = each<Load>(root.objects_or_none("loads"), load_of);
  problem.people = each<Person>(root.objects_or_none("people"), [](StrictObject& object) {
    return Person{object.text("id"), object.texts("skills"), object.spans("shifts"), object.spans("breaks")};
  });
  problem.stations = each<Station>(root.objects_or_none("stations"), [](StrictObject& object) {
    return Station{object.text("id"), static_cast<int>(object.whole_or("places", 1, count)),
                   object.texts("serves")};
  });
  problem.ovens = each<Oven>(root.objects_or_none("ovens"), oven_of);
  problem.capacities = each<Capacity>(root.objects_or_none("capacities"), capacity_of);
  problem.fixed = each<Fixed>(root.objects_or_none("fixed"), fixed_of);
  root.done();
  if (problems.empty()) problems = faults(problem);
  for (dampward::Problem& found : problems) found.place.file = file;
  if (!problems.empty()) return problems;
  return problem;
}

}  // namespace dampward::files
