#include "workbench/sheets.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/text.h"

namespace dampward::workbench {
namespace {

// Whole minutes of a plan's clock: never before what it stands for.
Instant after(Instant start, Duration time) {
  return start + std::chrono::minutes(static_cast<long>(std::ceil(time.in(minute)-1e-6)));
}

const PartInOven* weakest_of(const Load& load) {
  const auto part = std::find_if(load.parts.begin(), load.parts.end(), [&](const PartInOven& p) {
    return p.unit == load.weakest_unit && p.part == load.weakest_part;
  });
  return part == load.parts.end() ? nullptr : &*part;
}

std::string left_damp(const Load& load) {
  std::vector<std::string> names;
  for (const PartInOven& part : load.parts) {
    const bool known = std::find(names.begin(), names.end(), part.name) != names.end();
    if (!part.dry && !known) names.push_back(part.name);
  }
  return names.empty() ? "" : listed(names);
}

std::vector<papers::OvenSheet::Out> ways_out(const Load& load, const Plan& plan) {
  std::vector<papers::OvenSheet::Out> units;
  for (const Window& window : plan.windows) {
    if (std::find(load.units.begin(), load.units.end(), window.unit) == load.units.end()) continue;
    const auto unit = std::find_if(plan.units.begin(), plan.units.end(),
                                   [&](const UnitPlan& u) { return u.unit == window.unit; });
    units.push_back({window.unit.text, unit == plan.units.end() ? "" : unit->kind_name, window.leaves_oven});
  }
  std::stable_sort(units.begin(), units.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
  return units;
}

// What the plan's stock calls an item; its id where the stock does not list it.
std::string item_name(const Plan& plan, const std::string& item) {
  const auto need =
      std::find_if(plan.stock.begin(), plan.stock.end(), [&](const StockNeed& n) { return n.item == item; });
  return need == plan.stock.end() ? item : need->name;
}

}  // namespace

std::vector<papers::MixingSheet> mixing_sheets(const Plan& plan) {
  std::vector<papers::MixingSheet> sheets;
  for (const MixedPot& pot : plan.mixing) {
    papers::MixingSheet sheet;
    sheet.pot = pot.id;
    sheet.shop = plan.shop;
    sheet.lacquer = plan.lacquer_name;
    sheet.brushed = pot.method == materials::Method::brush;
    for (const UnitId& unit : pot.units) sheet.units.push_back(unit.text);
    sheet.ready = pot.ready;
    sheet.thinner_parts = pot.thinner_parts;
    for (const PotShare& share : pot.lots)
      sheet.takes.push_back({item_name(plan, share.item), share.lot.text, share.amount});
    sheet.missing = pot.missing;
    sheet.mix = pot.mix;
    sheet.use_by = pot.use_by;
    sheet.clock = plan.clock;
    sheets.push_back(std::move(sheet));
  }
  return sheets;
}

std::vector<papers::OvenSheet> oven_sheets(const Plan& plan) {
  std::vector<papers::OvenSheet> sheets;
  for (const Load& load : plan.loads) {
    const PartInOven* weakest = weakest_of(load);
    papers::OvenSheet sheet;
    sheet.units = ways_out(load, plan);
    if (weakest == nullptr || sheet.units.empty()) continue;
    sheet.load = load.id;
    sheet.oven = load.oven_name;
    sheet.shop = plan.shop;
    sheet.weakest = weakest->name;
    sheet.weakest_unit = load.weakest_unit.text;
    sheet.set = load.set_point;
    sheet.peak = weakest->peak;
    sheet.limit = weakest->limit;
    sheet.holds_from = load.holds_from;
    sheet.spread = load.spread;
    sheet.hold = load.hold;
    sheet.hold_nominal = load.hold_nominal;
    sheet.rule = load.rule;
    sheet.in = load.starts;
    sheet.hold_starts = after(load.starts, load.warm_up);
    sheet.hold_ends = after(load.starts, load.warm_up + load.hold);
    if (load.step_down) sheet.stepped_to = load.step_down->to;
    sheet.slowest = load.slowest;
    sheet.stays_damp = left_damp(load);
    sheet.clock = plan.clock;
    sheets.push_back(std::move(sheet));
  }
  return sheets;
}

}  // namespace dampward::workbench
