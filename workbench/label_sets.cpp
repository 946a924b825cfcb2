#include "workbench/label_sets.h"

#include <algorithm>
#include <cmath>

#include "workbench/step_keys.h"

namespace dampward::workbench {
namespace {

void add_lots(const UnitPlan& unit, const Plan& plan, papers::LabelSet::Unit& label) {
  for (const MixedPot& pot : plan.mixing) {
    if (std::find(pot.units.begin(), pot.units.end(), unit.unit) == pot.units.end()) continue;
    if (pot.missing > Volume{}) label.lot_unknown = true;
    for (const PotShare& share : pot.lots) {
      const auto need = std::find_if(plan.stock.begin(), plan.stock.end(),
                                     [&](const StockNeed& n) { return n.item == share.item; });
      const std::string item = need == plan.stock.end() ? share.item : need->name;
      const bool known = std::any_of(
          label.lots.begin(), label.lots.end(),
          [&](const papers::LabelSet::Lot& lot) { return lot.item == item && lot.lot == share.lot.text; });
      if (!known) label.lots.push_back({item, share.lot.text});
    }
  }
}

papers::LabelSet::Unit label_of(const UnitPlan& unit, const Plan& plan) {
  papers::LabelSet::Unit label;
  label.serial = unit.unit.text;
  label.kind = unit.kind_name;
  label.lacquer = plan.lacquer_name;
  label.sprayed = unit.way == "spray_stripped";
  label.coats = unit.coats;
  add_lots(unit, plan, label);
  label.lacquered = label.goes_back = unit.done;
  for (const UnitStep& step : unit.steps) {
    const std::string code = key_of(unit, step).code;
    if (code == "coat") label.lacquered = step.ends;
    if (code == "reassemble") {
      label.goes_back = step.starts;
      label.back_where = plan.name_of(step.station);
    }
  }
  for (const route::ListedPart& part : unit.lists.removed)
    label.bags.push_back({part.name, std::max(1, static_cast<int>(std::ceil(part.count)))});
  label.bags.push_back({});  // screws and covers
  return label;
}

}  // namespace

papers::LabelSet label_set(const Plan& plan) {
  papers::LabelSet set;
  set.shop = plan.shop;
  set.clock = plan.clock;
  for (const UnitPlan& unit : plan.units) set.units.push_back(label_of(unit, plan));
  return set;
}

}  // namespace dampward::workbench
