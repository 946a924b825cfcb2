#include "workbench/safety_sheets.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "core/line/calendar.h"

namespace dampward::workbench {
namespace {

using papers::SafetySheet;

// The stretches of open solvent of the timetable, those whose vapour meets put together.
std::vector<SafetySheet::Stretch> stretches_of(const Plan& plan) {
  std::map<std::string, line::Minute> clears;
  for (const line::Operation& operation : plan.problem.operations) {
    if (operation.solvent) clears[operation.id] = operation.clears;
  }
  std::vector<SafetySheet::Stretch> all;
  for (const line::Placement& placement : plan.answer.placements) {
    const auto found = clears.find(placement.operation);
    if (found == clears.end()) continue;
    const Instant clear = line::instant_of(placement.end + found->second, plan.from);
    all.push_back({line::instant_of(placement.start, plan.from), line::instant_of(placement.end, plan.from),
                   clear, clear});
  }
  std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.fan_on < b.fan_on; });
  std::vector<SafetySheet::Stretch> merged;
  for (const SafetySheet::Stretch& one : all) {
    if (merged.empty() || one.fan_on > merged.back().clear) {
      merged.push_back(one);
      continue;
    }
    merged.back().last = std::max(merged.back().last, one.last);
    merged.back().clear = std::max(merged.back().clear, one.clear);
    merged.back().fan_off = merged.back().clear;
  }
  return merged;
}

// On the worst day the curve itself may say that air clears later than the purge does.
void wait_for_the_curve(SafetySheet& sheet) {
  for (std::size_t i = 0; i < sheet.stretches.size(); ++i) {
    SafetySheet::Stretch& stretch = sheet.stretches[i];
    const bool followed = i + 1 < sheet.stretches.size();
    for (const SafetySheet::Point& point : sheet.curve) {
      if (point.at < stretch.fan_on || (followed && point.at >= sheet.stretches[i + 1].fan_on)) continue;
      if (sheet.people && point.share > *sheet.people) stretch.clear = std::max(stretch.clear, point.at);
      stretch.fan_off = std::max({stretch.fan_off, stretch.clear, point.at});
    }
  }
}

std::size_t worst_of(const SafetySheet& sheet, const std::optional<Instant>& worst_at) {
  for (std::size_t i = 0; worst_at && i < sheet.stretches.size(); ++i) {
    if (*worst_at >= sheet.stretches[i].fan_on && *worst_at <= sheet.stretches[i].fan_off) return i;
  }
  return 0;
}

SafetySheet::Mask mask_of(const PersonAir& air) {
  if (air.supplied_air) return SafetySheet::Mask::supplied;
  if (air.respirator_factor)
    return *air.respirator_factor >= 50 ? SafetySheet::Mask::full : SafetySheet::Mask::half;
  if (!air.day) return SafetySheet::Mask::none;
  const bool known = air.exposure_index && air.stel_index;
  return known && *air.exposure_index <= 1 && *air.stel_index <= 1 ? SafetySheet::Mask::none
                                                                   : SafetySheet::Mask::not_enough;
}

std::vector<SafetySheet::Person> crew_of(const Plan& plan) {
  std::vector<SafetySheet::Person> crew;
  for (const PersonAir& air : plan.people) {
    crew.push_back({air.name.empty() ? plan.name_of(air.person.text) : air.name, air.day, air.exposure_index,
                    air.stel_index, air.stel_at, air.peak, air.highest_use, mask_of(air),
                    air.respirator_factor.value_or(1)});
  }
  return crew;
}

// What lacquer work asks of everybody at the place. A plan never works with isocyanates (H31) and knows no airless gun (H36).
std::vector<SafetySheet::Group> cautions_of(const Plan& plan) {
  constexpr std::array when = {"all", "mix", "coat", "flash", "airing", "store", "waste"};
  const std::set<std::string> never = {"H31", "H36"};
  std::vector<SafetySheet::Group> groups;
  for (const char* step : when) {
    SafetySheet::Group group{step, {}};
    for (const Caution& caution : plan.cautions) {
      if (caution.step == step && !never.contains(caution.id.text)) group.hazards.push_back(caution.id.text);
    }
    if (!group.hazards.empty()) groups.push_back(std::move(group));
  }
  return groups;
}

}  // namespace

std::vector<SafetySheet> safety_sheets(const Plan& plan) {
  SafetySheet sheet;
  sheet.stretches = stretches_of(plan);
  if (plan.units.empty() || sheet.stretches.empty()) return {};
  const RoomAir& room = plan.room;
  sheet.place = room.place;
  sheet.shop = plan.shop;
  if (room.lower_limit) sheet.allowed = room.limit_share;
  sheet.peak = room.worst_share;
  sheet.near = room.near_share;
  sheet.people = room.people_share;
  for (const RoomAir::Point& point : room.curve) sheet.curve.push_back({point.at, point.share});
  wait_for_the_curve(sheet);
  sheet.worst = worst_of(sheet, room.worst_at);
  sheet.purge = room.purge;
  sheet.fan = room.fan;
  sheet.fan_fire = room.fan_fire;
  sheet.fan_people = room.fan_people;
  sheet.crew = crew_of(plan);
  sheet.length = room.length;
  sheet.width = room.width;
  sheet.ways_out = room.ways_out;
  sheet.hot = room.hot;
  sheet.cautions = cautions_of(plan);
  sheet.clock = plan.clock;
  return {sheet};
}

}  // namespace dampward::workbench
