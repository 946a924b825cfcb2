#include "workbench/detail/drafts.h"

#include <algorithm>
#include <set>

namespace dampward::workbench {
namespace {

void add_cold(Drafts& drafts, const records::QueuedUnit& queued, const DraftingTable& table) {
  UnitDraft draft =
      draft_unit(queued, table.cases.at(queued.kind), nullptr, table.means, table.paint, table.air);
  if (draft.refused) {
    drafts.refused.push_back(*draft.refused);
  } else {
    drafts.units.push_back(std::move(draft));
  }
}

// Loads one of whose units, or whose bake, has no place.
std::set<std::size_t> stuck_loads(const Drafts& drafts, const line::Answer& answer) {
  std::set<std::size_t> stuck;
  for (const UnitDraft& unit : drafts.units) {
    if (unit.kind->cold) continue;
    const bool no_place =
        std::any_of(answer.unplaced.begin(), answer.unplaced.end(), [&](const line::Unplaced& u) {
          return u.unit == unit.queued->serial.text || u.operation == drafts.loads[unit.load].id + "/bake";
        });
    if (no_place) stuck.insert(unit.load);
  }
  return stuck;
}

}  // namespace

std::vector<const KindCase*> cases_of(const QueuedUnits& units, const DraftingTable& table) {
  std::vector<const KindCase*> cases;
  for (const auto* unit : units) cases.push_back(&table.cases.at(unit->kind));
  return cases;
}

void add_load(Drafts& drafts, const LoadDraft& load, const QueuedUnits& units, const DraftingTable& table) {
  for (std::size_t member : load.units) {
    const records::QueuedUnit& queued = *units[member];
    UnitDraft draft =
        draft_unit(queued, table.cases.at(queued.kind), &load, table.means, table.paint, table.air);
    draft.load = drafts.loads.size();
    if (draft.refused) {
      drafts.refused.push_back(*draft.refused);
    } else {
      drafts.units.push_back(std::move(draft));
    }
  }
  drafts.loads.push_back(load);
}

Drafts draft_all(QueuedUnits baked, const QueuedUnits& cold, const DraftingTable& table) {
  std::vector<Refusal> refused;
  for (;;) {
    Drafts drafts;
    for (const LoadDraft& load : draft_loads(cases_of(baked, table), table.workshop, table.humid_air)) {
      add_load(drafts, load, baked, table);
    }
    if (drafts.refused.empty()) {
      for (const auto* unit : cold) add_cold(drafts, *unit, table);
      drafts.refused.insert(drafts.refused.begin(), refused.begin(), refused.end());
      return drafts;
    }
    for (const Refusal& refusal : drafts.refused) {
      std::erase_if(baked, [&](const auto* unit) { return unit->serial == refusal.unit; });
    }
    refused.insert(refused.end(), drafts.refused.begin(), drafts.refused.end());
  }
}

Halving halve_unplaced(const Drafts& drafts, const line::Answer& answer, const DraftingTable& table,
                       const std::set<std::size_t>& stay) {
  const std::set<std::size_t> stuck = stuck_loads(drafts, answer);
  Halving halving;
  halving.drafts.refused = drafts.refused;
  for (std::size_t i = 0; i < drafts.loads.size(); ++i) {
    QueuedUnits members;
    for (const UnitDraft& unit : drafts.units) {
      if (!unit.kind->cold && unit.load == i) members.push_back(unit.queued);
    }
    LoadDraft load = drafts.loads[i];
    load.units.clear();
    for (std::size_t member = 0; member < members.size(); ++member) load.units.push_back(member);
    if (stuck.contains(i) && !stay.contains(i) && members.size() > 1) {
      halving.changed = true;
      for (const LoadDraft& half : halved(load, cases_of(members, table), table.workshop, table.humid_air)) {
        add_load(halving.drafts, half, members, table);
      }
    } else {
      add_load(halving.drafts, load, members, table);
    }
  }
  for (const UnitDraft& unit : drafts.units) {
    if (unit.kind->cold) halving.drafts.units.push_back(unit);
  }
  return halving;
}

}  // namespace dampward::workbench
