#include "core/referee/detail/case.h"

#include <algorithm>

namespace dampward::referee {
namespace {

// The smallest span around both.
void stretch(std::optional<Span>& around, Span span) {
  around = around ? Span{std::min(around->from, span.from), std::max(around->to, span.to)} : span;
}

template <class Names, class List, class Key>
void name_all(Names& names, const List& list, Key key) {
  for (const auto& item : list) names.emplace(key(item), &item);
}

constexpr auto by_id = [](const auto& item) -> std::string_view { return item.id; };
constexpr auto by_operation = [](const auto& item) -> std::string_view { return item.operation; };

}  // namespace

Case::Case(const PlanProblem& asked, const PlanAnswer& given) : problem(asked), answer(given) {
  name_all(operations_, problem.operations, by_id);
  name_all(units_, problem.units, by_id);
  name_all(people_, problem.people, by_id);
  name_all(stations_, problem.stations, by_id);
  name_all(ovens_, problem.ovens, by_id);
  name_all(loads_, problem.loads, by_id);
  name_all(fixed_, problem.fixed, by_operation);
  name_all(placements_, answer.placements, by_operation);
  name_all(stays_, answer.oven_stays, [](const OvenStay& stay) -> std::string_view { return stay.load; });
  for (const Load& load : problem.loads) {
    load_of_.emplace(load.bake, &load);
    for (const Member& member : load.members) {
      load_of_.emplace(member.loading, &load);
      load_of_.emplace(member.unloading, &load);
    }
  }
  for (const Operation& operation : problem.operations) {
    if (operation.unit) by_unit_[*operation.unit].push_back(&operation);
    if (const auto found = work(operation.id)) works_.push_back(*found);
  }
  for (const Person& person : problem.people)
    breaks_[&person] = common(merged(person.shifts), merged(person.breaks));
  for (const Load& load : problem.loads) {
    const LoadWork found = load_work(load);
    if (found.load) load_works_.push_back(found);
  }
}

bool Case::is_bake(std::string_view operation) const {
  const Load* load = load_of(operation);
  return load && load->bake == operation;
}

// A fixed operation that needs a station tells where that is, not the oven.
FixedOven Case::fixed_oven(const Load& load) const {
  FixedOven oven;
  const auto look = [&](const std::string& id) {
    const Fixed* part = fixed(id);
    const Operation* what = operation(id);
    if (!part || !what) return;
    oven.any_fixed = true;
    if (!part->station || what->needs_station() || !this->oven(*part->station)) return;
    if (oven.id && *oven.id != *part->station) oven.disagree = true;
    if (!oven.id) oven.id = &*part->station;
  };
  look(load.bake);
  for (const Member& member : load.members) {
    look(member.loading);
    look(member.unloading);
  }
  if (oven.any_fixed && !oven.id && load.ovens.size() == 1) oven.id = &load.ovens.front();
  return oven;
}

std::optional<Work> Case::work(std::string_view id) const {
  const Operation* what = operation(id);
  const Placement* at = placement(id);
  if (!what || !at) return {};
  return Work{what, at, fixed(id) != nullptr};
}

const std::vector<const Operation*>& Case::operations_of(std::string_view unit) const {
  static const std::vector<const Operation*> none;
  const auto found = by_unit_.find(unit);
  return found == by_unit_.end() ? none : found->second;
}

bool Case::is_there(std::string_view unit) const {
  const auto& all = operations_of(unit);
  return std::all_of(all.begin(), all.end(), [&](const Operation* each) { return placement(each->id); });
}

std::vector<Span> Case::on_shift_with(std::string_view skill) const {
  std::vector<Span> spans;
  for (const Person& person : problem.people) {
    if (std::find(person.skills.begin(), person.skills.end(), skill) == person.skills.end()) continue;
    spans.insert(spans.end(), person.shifts.begin(), person.shifts.end());
  }
  return merged(std::move(spans));
}

// The rules of the page under "Loads" and "Fixed". The load is null where nothing of it is in the answer.
LoadWork Case::load_work(const Load& load) const {
  std::optional<Span> stay, fixed_part, heat;
  bool kept = false;  // something was put in and is not taken out
  const auto bake = work(load.bake);
  if (bake) heat = bake->when();
  const auto take = [&](const std::optional<Work>& part, bool ends_heat) {
    if (!part) return;
    stretch(stay, part->when());
    if (part->fixed) stretch(fixed_part, part->when());
    if (heat && ends_heat) heat->to = std::max(heat->to, part->at->end);
  };
  take(bake, true);
  for (const Member& member : load.members) {
    const auto loading = work(member.loading), unloading = work(member.unloading);
    take(loading, false);
    take(unloading, true);
    if (loading && loading->fixed && !unloading) kept = true;
  }
  LoadWork found;
  if (!stay) return found;
  found.load = &load;
  if (const OvenStay* told = this->stay(load.id)) found.oven = oven(told->oven);
  found.stay = *stay;
  if (heat && !kept) heat->to = stay->to;
  found.heat = heat;
  found.fixed_bake = bake && bake->fixed;
  found.fixed_stay = fixed_part;
  if (heat && fixed_part && overlap(*heat, *fixed_part)) found.fixed_heat = common(*heat, *fixed_part);
  if (kept) {
    found.stay.to = std::max(found.stay.to, problem.horizon);
    // Nobody but the fixed loading keeps the oven from the last end on.
    if (found.fixed_stay && found.fixed_stay->to == stay->to) found.fixed_stay->to = found.stay.to;
  }
  return found;
}

}  // namespace dampward::referee
