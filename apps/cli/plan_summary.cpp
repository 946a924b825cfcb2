#include "apps/cli/plan_summary.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

#include "apps/cli/detail/summary_parts.h"
#include "apps/cli/page_text.h"
#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::cli {
namespace {

using workbench::Plan;

std::string day_and_clock(Instant instant, const WallClock& clock) {
  static constexpr const char* names[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
  const LocalTime local = clock.local(instant);
  const auto day = std::chrono::floor<std::chrono::days>(local);
  return format("{} {}", names[std::chrono::weekday(day).c_encoding()], clock_text(local));
}

std::string date_text(Instant instant, const WallClock& clock) {
  return iso_text(Date(std::chrono::floor<std::chrono::days>(clock.local(instant))));
}

bool is_late(const workbench::UnitPlan& unit) {
  return unit.due && unit.done > *unit.due;
}

// With the full stop that reasons put together from pieces may lack.
std::string sentence(std::string text) {
  if (!text.empty() && text.back() != '.') text += '.';
  return text;
}

// Columns, times and what stands behind them: in one line, cut, where the page is wide enough for nearly all of it, else folded.
std::vector<std::string> load_row(const std::string& row, const std::string& times, const std::string& behind,
                                  std::size_t width) {
  if (width >= 80) return {cut(row + " " + times + " " + behind, width)};
  std::vector<std::string> lines{row + " " + times};
  if (columns(lines.front()) > width) {
    lines = columns(row) > width ? wrapped(row, width, 3) : std::vector<std::string>{row};
    lines.push_back("   " + times);
  }
  for (std::string& line : wrapped("   " + behind, width, 3)) lines.push_back(std::move(line));
  return lines;
}

Part loads_part(const Plan& plan, const UnitText& units, std::size_t width) {
  Part part{"OVEN LOADS  (units, set point, safe hold, in, first out, weakest part)", {}, 8, false, 4};
  for (const auto& load : plan.loads) {
    part.entries.push_back(
        load_row(format(" {} {} {} {}", fitted(format("{} x{}", load.id, load.units.size()), 7),
                        fitted(load.oven.text, 9), fitted(units.setting(load.set_point), 6),
                        fitted(units.hours(load.hold), 6)),
                 day_and_clock(load.starts, plan.clock) + " " + day_and_clock(load.first_out, plan.clock),
                 load.weakest_unit.text + " " + load.weakest_name, width));
  }
  return part;
}

Part refused_part(const Plan& plan, const UnitText& units, std::size_t width) {
  Part part{"NOT SAFE TO TREAT", {}, 2, false, 1, {}, Tone::stop};
  for (const auto& refusal : plan.refused) {
    std::string text = format(" {}: {} ", refusal.unit.text, sentence(refusal.reason));
    if (refusal.ladder.empty()) {
      text += "To settle it: " + sentence(refusal.settle);
    } else {
      const auto& rung = refusal.ladder.front();
      text += format("Tried, and lets it in: {} ({} {}{}).", rung.words, fixed(rung.cost, 1), plan.cost_unit,
                     rung.estimated ? ", estimate" : "");
    }
    part.stops.insert(part.entries.size());
    part.entries.push_back(wrapped(units.sentence(text), width, 3));
  }
  return part;
}

// The hazards that kill, in a line each; the whole table goes with the JSON answer and never shrinks.
Part cautions_part(const Plan& plan, const UnitText& units, std::size_t width) {
  Part part{"CAUTIONS  (" + std::to_string(plan.cautions.size()) +
                " in all; local codes and licensed practice decide)",
            {},
            4,
            true,
            0,
            {},
            Tone::stop};
  for (const std::string& text :
       {std::string(" Prove every set dead before a cover comes off: unplug, discharge, measure."),
        " No flame, cigarette, heater or unrated motor within " + units.length(6.1 * metre) + " of lacquer.",
        std::string(" Work damp with solvent never goes into an oven: its vapour would explode."),
        std::string(" Fitted respirator, gun and set bonded, extinguisher, two clear ways out.")})
    part.entries.push_back(wrapped(text, width, 3));
  return part;
}

Part no_heat_part(const Plan& plan, const UnitText& units, std::size_t width) {
  Part part{"DRIED WITHOUT THE OVEN", {}, 1};
  for (const auto& unit : plan.units) {
    if (!unit.no_heat) continue;
    std::string text = format(" {}: {}", unit.unit.text, unit.no_heat_reason);
    if (!unit.measure.empty()) {
      text += " Measure: " + unit.measure +
              (unit.saves ? "; that would save " + units.hours(*unit.saves) + "." : ".");
    }
    part.entries.push_back(wrapped(units.sentence(text), width, 3));
  }
  return part;
}

Part late_part(const Plan& plan, std::size_t width) {
  Part part{"LATE BUT SAFE", {}, 2, false, 1};
  for (const auto& unit : plan.units) {
    if (!is_late(unit)) continue;
    part.entries.push_back(
        wrapped(format(" {}: ready {} {}, due {}", unit.unit.text, date_text(unit.done, plan.clock),
                       day_and_clock(unit.done, plan.clock),
                       date_text(*unit.due - std::chrono::seconds(1), plan.clock)),
                width, 3));
  }
  return part;
}

Part tight_part(const Plan& plan, const UnitText& units, std::size_t width) {
  Part part{"TIGHT OR IN DOUBT", {}, 3, false, 1};
  for (const auto& warning : plan.warnings) {
    if (warning.find(": stop ") != std::string::npos) part.stops.insert(part.entries.size());
    part.entries.push_back(wrapped(" " + units.sentence(sentence(warning)), width, 3));
  }
  return part;
}

Part stock_part(const Plan& plan, const UnitText& units, std::size_t width) {
  Part part{"LACQUER AND THINNER", {}, 2, true};
  for (const auto& need : plan.stock) {
    if (need.is_short) part.stops.insert(part.entries.size());
    part.entries.push_back(
        wrapped(format(" {}: {} needed, {} in stock{}", need.name, units.volume(need.needed),
                       units.volume(need.in_stock), need.is_short ? "  SHORT" : ""),
                width, 3));
  }
  return part;
}

// Who wears the same, and the most any of them would breathe without it, over the day or over fifteen minutes.
struct Wearers {
  std::string respirator;
  std::vector<std::string> names;
  double most = 0;
  bool known = true;
};

// By class, the strongest first.
std::vector<Wearers> by_respirator(const Plan& plan) {
  std::map<double, Wearers, std::greater<>> groups;
  for (const auto& person : plan.people) {
    if (!person.respirator_factor) continue;
    Wearers& group = groups[*person.respirator_factor];
    group.respirator = person.respirator;
    group.names.push_back(person.person.text);
    group.known = group.known && person.exposure_index && person.stel_index;
    group.most = std::max({group.most, person.exposure_index.value_or(0), person.stel_index.value_or(0)});
  }
  std::vector<Wearers> all;
  for (auto& [factor, group] : groups) all.push_back(std::move(group));
  return all;
}

Part air_part(const Plan& plan, const UnitText& units, std::size_t width) {
  Part part{"AIR AND PEOPLE", {}, 3, false, 3};
  if (plan.units.empty()) return part;
  const auto& room = plan.room;
  std::string fire = " " + room.place + ": ";
  if (room.worst_share) {
    fire += format("vapour up to {} % of the lower flammable limit ({} % allowed).",
                   fixed(std::ceil(*room.worst_share * 1000) / 10, 1), fixed(room.limit_share * 100, 0));
  } else {
    fire += "nothing in the lacquer burns.";
  }
  part.entries.push_back(wrapped(fire, width, 3));
  part.entries.push_back(wrapped(
      format(" Fresh air: {}; fire needs {}, people {}.", units.flow(room.fan), units.flow(room.fan_fire),
             room.fan_people ? units.flow(*room.fan_people) : "more than any figure"),
      width, 3));
  for (const Wearers& group : by_respirator(plan)) {
    part.entries.push_back(wrapped(format(" {}, {} times the limit: {}.", listed(group.names),
                                          group.known ? "up to " + fixed(std::ceil(group.most * 10) / 10, 1)
                                                      : std::string("nobody knows how many"),
                                          group.respirator),
                                   width, 3));
  }
  return part;
}

// A unit's steps that moved: the first of them stands for those that move along.
struct MovedUnit {
  const workbench::MovedStep* first = nullptr;
  std::size_t steps = 0;
  bool late = false;
};

// Late ones first, then in order of time.
std::vector<MovedUnit> moved_units(const Plan& plan) {
  std::vector<MovedUnit> units;
  for (const workbench::MovedStep& step : plan.moved) {
    auto unit = std::find_if(units.begin(), units.end(),
                             [&](const MovedUnit& u) { return u.first->unit == step.unit; });
    if (unit == units.end()) {
      const auto planned = std::find_if(plan.units.begin(), plan.units.end(),
                                        [&](const workbench::UnitPlan& u) { return u.unit == step.unit; });
      units.push_back({&step, 0, planned != plan.units.end() && is_late(*planned)});
      unit = std::prev(units.end());
    }
    ++unit->steps;
  }
  std::stable_sort(units.begin(), units.end(),
                   [](const MovedUnit& a, const MovedUnit& b) { return a.late > b.late; });
  return units;
}

std::string moved_words(const MovedUnit& unit, const Plan& plan) {
  const workbench::MovedStep& step = *unit.first;
  const std::string steps = unit.steps == 1 ? "" : format(" ({} steps)", unit.steps);
  return format(" {}{}: from {} instead of {}{}. {}", step.unit.text, unit.late ? ", late" : "",
                day_and_clock(step.now, plan.clock), day_and_clock(step.was, plan.clock), steps, step.why);
}

// What the log moved: units thrown back first, then a line for each unit that moved.
Part log_part(const Plan& plan, const UnitText& units, std::size_t width) {
  if (!plan.at) return {};
  const std::vector<MovedUnit> moved = moved_units(plan);
  Part part{format("PLANNED ON FROM {} {}  ({} units moved, {} thrown back)", date_text(*plan.at, plan.clock),
                   clock_text(plan.clock.local(*plan.at)), moved.size(), plan.rework.size()),
            {},
            3,
            false,
            1};
  for (const auto& rework : plan.rework) {
    const auto& way = rework.ways[rework.chosen];
    part.entries.push_back(
        wrapped(units.sentence(format(" {}: {}. It adds {} h, {} min of hands.", rework.unit.text, way.words,
                                      fixed(way.added.in(hour), 1), fixed(way.crew.in(minute), 0))),
                width, 3));
  }
  for (const MovedUnit& unit : moved) part.entries.push_back(wrapped(moved_words(unit, plan), width, 3));
  if (part.entries.empty()) part.entries.push_back({" Nothing moved."});
  return part;
}

std::vector<std::string> head(const Plan& plan, const UnitText& units, std::size_t width) {
  const auto late = std::count_if(plan.units.begin(), plan.units.end(), is_late);
  const auto cold =
      std::count_if(plan.units.begin(), plan.units.end(), [](const auto& u) { return u.no_heat; });
  std::vector<std::string> lines = wrapped("Treatment plan for " + plan.shop, width, 2);
  for (const auto& line :
       wrapped(format("{} {}: {} queued, {} treated ({} loads, {} cold), {} refused, {} late",
                      date_text(plan.from, plan.clock), clock_text(plan.clock.local(plan.from)), plan.queued,
                      plan.units.size(), plan.loads.size(), cold, plan.refused.size(), late),
               width, 2)) {
    lines.push_back(line);
  }
  for (const auto& line :
       wrapped(format("air {}, {} %, dew point {}: {}", units.temperature(plan.air.temperature),
                      fixed(plan.air.humidity.percent(), 0), units.temperature(plan.air.dew_point),
                      plan.air.because),
               width, 2)) {
    lines.push_back(line);
  }

  return lines;
}

}  // namespace

std::vector<Line> plan_summary(const Plan& plan, const UnitText& units, std::size_t width) {
  return page_of(
      head(plan, units, width),
      {loads_part(plan, units, width), log_part(plan, units, width), refused_part(plan, units, width),
       no_heat_part(plan, units, width), late_part(plan, width), tight_part(plan, units, width),
       stock_part(plan, units, width), air_part(plan, units, width), cautions_part(plan, units, width)},
      "Every part, person, time and caution: the same command with --json.", width);
}

}  // namespace dampward::cli
