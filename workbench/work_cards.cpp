#include "workbench/work_cards.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/text.h"
#include "workbench/step_cautions.h"
#include "workbench/step_keys.h"

namespace dampward::workbench {
namespace {

// Whole minutes of a plan's clock.
Instant early(Instant time) {
  return std::chrono::floor<std::chrono::minutes>(time);
}
Instant late(Instant time) {
  return std::chrono::ceil<std::chrono::minutes>(time);
}
Instant after(Instant start, Duration time) {
  return start + std::chrono::seconds(static_cast<long>(std::lround(time.in(second))));
}

std::vector<papers::WorkCard::Item> items_of(const std::vector<route::ListedPart>& list) {
  std::vector<papers::WorkCard::Item> items;
  for (const route::ListedPart& part : list)
    items.push_back({part.name, part.what, std::max(1, static_cast<int>(std::ceil(part.count)))});
  return items;
}

std::vector<papers::WorkCard::Line> lines_of(const UnitPlan& unit, const Plan& plan) {
  std::vector<papers::WorkCard::Line> lines;
  std::set<std::string> told;
  for (const UnitStep& step : unit.steps) {
    papers::WorkCard::Line line{
        step.id, key_of(unit, step),         step.starts, step.ends, !step.people.empty(),
        {},      plan.name_of(step.station), {}};
    for (const PersonId& person : step.people) line.people.push_back(plan.name_of(person.text));
    std::vector<std::string> hazards = hazards_at(unit, step, plan);
    if (step.hazard_step == "make_safe") {
      for (std::string& id : hazards_of("all", plan)) hazards.push_back(std::move(id));
    }
    // What a setback puts in begins anew: from here on dangers are told again.
    if (line.key.code == "strip_off" || line.key.code == "let_dry") told.clear();
    for (const std::string& id : hazards) {
      if (told.insert(id).second) line.hazards.push_back(id);
    }
    lines.push_back(std::move(line));
  }
  std::stable_sort(lines.begin(), lines.end(),
                   [](const auto& a, const auto& b) { return a.starts < b.starts; });
  return lines;
}

std::optional<papers::WorkCard::Bake> bake_of(const UnitPlan& unit, const Plan& plan) {
  const auto load =
      std::find_if(plan.loads.begin(), plan.loads.end(), [&](const Load& l) { return l.id == unit.load; });
  if (unit.load.empty() || load == plan.loads.end()) return std::nullopt;
  papers::WorkCard::Bake bake;
  bake.load = load->id;
  bake.oven = load->oven_name;
  bake.weakest = load->weakest_name + ", " + load->weakest_unit.text;
  bake.set = load->set_point;
  bake.holds_from = load->holds_from;
  bake.hold = load->hold;
  bake.hold_starts = late(after(load->starts, load->warm_up));
  if (load->step_down) bake.stepped_to = load->step_down->to;
  std::vector<std::string> damp;
  for (const PartInOven& part : load->parts) {
    if (part.unit == load->weakest_unit && part.part == load->weakest_part) {
      bake.peak = part.peak;
      bake.limit = part.limit;
    }
    if (part.unit == unit.unit && !part.dry) damp.push_back(part.name);
  }
  bake.stays_damp = damp.empty() ? "" : listed(damp);
  return bake;
}

std::optional<papers::WorkCard::Warm> warm_of(const UnitPlan& unit, const Plan& plan,
                                              const std::vector<papers::WorkCard::Line>& lines) {
  const auto window = std::find_if(plan.windows.begin(), plan.windows.end(),
                                   [&](const Window& w) { return w.unit == unit.unit; });
  if (window == plan.windows.end()) return std::nullopt;
  papers::WorkCard::Warm warm;
  warm.leaves = window->leaves_oven;
  warm.opens = late(after(window->leaves_oven, window->opens_after));
  warm.shuts = early(after(window->leaves_oven, window->closes_after));
  for (const auto& line : lines) {
    if (line.key.code == "coat") {
      warm.starts.push_back(line.starts);
      warm.ends.push_back(line.ends);
    }
    if (line.key.code == "flash") warm.flash_ends = line.ends;
  }
  if (warm.starts.empty()) return std::nullopt;
  warm.last_start = early(warm.shuts - (warm.flash_ends - warm.starts.front()));
  return warm;
}

papers::PinKind shown(equipment::PinKind kind) {
  switch (kind) {
    case equipment::PinKind::mask:
      return papers::PinKind::mask;
    case equipment::PinKind::damp:
      return papers::PinKind::damp;
    case equipment::PinKind::weak:
      return papers::PinKind::weak;
    case equipment::PinKind::brush:
      return papers::PinKind::brush;
    case equipment::PinKind::never_coat:
      break;
  }
  return papers::PinKind::bare;
}

// A pin of a mask bears the number its part has on this unit's list; what this unit does not mask has none. The others are lettered.
std::optional<papers::KindDrawing> drawing_of(const UnitPlan& unit, const Plan& plan) {
  const auto kind = std::find_if(plan.kinds.begin(), plan.kinds.end(),
                                 [&](const equipment::Kind& known) { return known.id == unit.kind; });
  if (kind == plan.kinds.end() || !kind->picture || !kind->picture->bytes) return std::nullopt;
  papers::KindDrawing drawing;
  drawing.image = kind->picture->bytes;
  char letter = 'a';
  for (const equipment::Pin& pin : kind->picture->pins) {
    const equipment::Part* part = equipment::find_part(*kind, pin.part);
    papers::KindDrawing::Pin drawn{shown(pin.kind), pin.across, pin.down, "",
                                   part == nullptr ? "" : part->name};
    const auto& mask = unit.lists.mask;
    const auto listed =
        std::find_if(mask.begin(), mask.end(), [&](const auto& m) { return m.part == pin.part; });
    if (pin.kind != equipment::PinKind::mask)
      drawn.mark = std::string(1, letter++);
    else if (listed != mask.end())
      drawn.mark = std::to_string(listed - mask.begin() + 1);
    else
      continue;
    drawing.pins.push_back(std::move(drawn));
  }
  return drawing;
}

}  // namespace

std::vector<papers::WorkCard> work_cards(const Plan& plan) {
  std::vector<papers::WorkCard> cards;
  for (const UnitPlan& unit : plan.units) {
    papers::WorkCard card;
    card.unit = unit.unit.text;
    card.kind = unit.kind_name;
    card.shop = plan.shop;
    card.stripped = unit.way == "spray_stripped";
    card.spray_hands = unit.spray_hands;
    card.brush_hands = unit.brush_hands;
    card.way_reason = unit.kind_way_reason;
    card.findings = unit.findings;
    card.lacquer = plan.lacquer_name;
    card.coats = unit.coats;
    card.wet_coat = unit.wet_coat;
    card.amount = unit.lacquer.typical;
    for (const MixedPot& pot : plan.mixing) {
      if (std::find(pot.units.begin(), pot.units.end(), unit.unit) != pot.units.end())
        card.pots.push_back(pot.id);
    }
    card.respirator = plan.room.respirator;
    card.transmits = unit.transmits;
    card.semiconductors = unit.semiconductors;
    card.removed = items_of(unit.lists.removed);
    card.mask = items_of(unit.lists.mask);
    card.tighten = items_of(unit.lists.tighten);
    card.loosen = items_of(unit.lists.loosen);
    card.touch_up = items_of(unit.lists.touch_up);
    card.brush = items_of(unit.lists.brush);
    card.bare = items_of(unit.lists.bare);
    card.drawing = drawing_of(unit, plan);
    card.lines = lines_of(unit, plan);
    card.bake = bake_of(unit, plan);
    card.warm = warm_of(unit, plan, card.lines);
    card.done = unit.done;
    card.close_from = unit.done;
    for (const UnitStep& step : unit.steps) {
      if (step.hazard_step == "airing") card.close_from = late(step.ends);
    }
    card.clock = plan.clock;
    cards.push_back(std::move(card));
  }
  return cards;
}

}  // namespace dampward::workbench
