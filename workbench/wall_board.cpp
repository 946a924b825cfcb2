#include "workbench/wall_board.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/line/calendar.h"
#include "workbench/step_keys.h"

namespace dampward::workbench {
namespace {

using papers::WallBoard;

// Steps at one place with less between them stand as one bar.
constexpr std::chrono::minutes joined_within(30);

WallBoard::Place place_of(const std::string& code) {
  using Place = WallBoard::Place;
  static const std::map<std::string, Place> places = {
      {"load", Place::oven},           {"bake", Place::oven},      {"unload", Place::oven},
      {"cabinet_in", Place::box},      {"cabinet", Place::box},    {"cabinet_out", Place::box},
      {"coat", Place::lacquer},        {"flash", Place::lacquer},  {"film_dry", Place::airing},
      {"airing", Place::airing},       {"let_dry", Place::airing}, {"solvent_free", Place::airing},
      {"stripped_free", Place::airing}};
  const auto found = places.find(code);
  return found == places.end() ? Place::bench : found->second;
}

Instant after(Instant start, Duration time) {
  return start + std::chrono::seconds(static_cast<long>(std::lround(time.in(second))));
}

WallBoard::Unit unit_of(const UnitPlan& plan, const Plan& whole) {
  WallBoard::Unit unit;
  unit.unit = plan.unit.text;
  unit.kind = plan.kind_name;
  std::vector<const UnitStep*> steps;
  for (const UnitStep& step : plan.steps) steps.push_back(&step);
  std::stable_sort(steps.begin(), steps.end(),
                   [](const UnitStep* a, const UnitStep* b) { return a->starts < b->starts; });
  for (const UnitStep* step : steps) {
    const papers::StepKey key = key_of(plan, *step);
    const WallBoard::Place place = place_of(key.code);
    unit.steps.push_back({key, step->starts});
    if (key.code == "coat") unit.coats.push_back(step->starts);
    WallBoard::Bar* last = unit.bars.empty() ? nullptr : &unit.bars.back();
    if (last != nullptr && last->place == place && step->starts - last->to < joined_within)
      last->to = std::max(last->to, step->ends);
    else
      unit.bars.push_back(
          {place, step->starts, step->ends, place == WallBoard::Place::oven ? plan.load : std::string()});
  }
  for (const Window& window : whole.windows) {
    if (window.unit != plan.unit) continue;
    unit.opens = std::chrono::ceil<std::chrono::minutes>(after(window.leaves_oven, window.opens_after));
    unit.shuts = std::chrono::floor<std::chrono::minutes>(after(window.leaves_oven, window.closes_after));
  }
  unit.done = plan.done;
  if (plan.due)
    unit.due =
        Date(std::chrono::floor<std::chrono::days>(whole.clock.local(*plan.due - std::chrono::seconds(1))));
  unit.late = std::any_of(whole.answer.late.begin(), whole.answer.late.end(),
                          [&](const line::Lateness& late) { return late.unit == plan.unit.text; });
  return unit;
}

WallBoard::Refused refused_of(const Refusal& refusal) {
  WallBoard::Refused told;
  told.unit = refusal.unit.text;
  told.kind = refusal.kind.text;
  std::replace(told.kind.begin(), told.kind.end(), '_', ' ');
  told.reason = refusal.reason;
  told.opens_with = refusal.ladder.empty() ? refusal.settle : refusal.ladder.front().words;
  if (!refusal.ladder.empty() && !refusal.settle.empty()) told.opens_with += "; " + refusal.settle;
  return told;
}

// The dates on which somebody has a hand in it, from the first shift to the last, and no shorter than the work.
std::vector<WallBoard::Day> days_of(const Plan& plan) {
  const auto date = [&](Instant time) {
    return std::chrono::floor<std::chrono::days>(plan.clock.local(time));
  };
  std::map<std::chrono::local_days, WallBoard::Day> days;
  const auto widen = [](WallBoard::Day& day, Instant from, Instant to) {
    day.from = std::min(day.from, from);
    day.to = std::max(day.to, to);
  };
  for (const UnitPlan& unit : plan.units) {
    for (const UnitStep& step : unit.steps) {
      if (step.people.empty()) continue;
      const auto [day, added] = days.try_emplace(date(step.starts), WallBoard::Day{step.starts, step.ends});
      widen(day->second, step.starts, step.ends);
    }
  }
  for (const line::Person& person : plan.problem.people) {
    for (const line::Span& shift : person.shifts) {
      const Instant from = line::instant_of(shift.from, plan.from);
      const auto day = days.find(date(from));
      if (day != days.end()) widen(day->second, from, line::instant_of(shift.to, plan.from));
    }
  }
  std::vector<WallBoard::Day> all;
  for (const auto& [name, day] : days) {
    // A night shift that runs into the next day leaves no night between them.
    if (!all.empty() && day.from <= all.back().to)
      all.back().to = std::max(all.back().to, day.to);
    else
      all.push_back(day);
  }
  if (all.empty()) all.push_back({plan.from, plan.from + std::chrono::hours(8)});
  return all;
}

}  // namespace

std::optional<WallBoard> wall_board(const Plan& plan) {
  if (plan.units.empty() && plan.refused.empty()) return std::nullopt;
  WallBoard board;
  board.shop = plan.shop;
  board.air = plan.air.temperature;
  board.dew_point = plan.air.dew_point;
  board.humidity = plan.air.humidity;
  for (const UnitPlan& unit : plan.units) board.units.push_back(unit_of(unit, plan));
  for (const Refusal& refusal : plan.refused) board.refused.push_back(refused_of(refusal));
  for (const Load& load : plan.loads) board.loads.push_back({load.id, load.starts, load.first_out});
  board.days = days_of(plan);
  board.clock = plan.clock;
  return board;
}

}  // namespace dampward::workbench
