#include "workbench/detail/drafts.h"

#include <algorithm>
#include <set>

#include "core/base/format.h"
#include "workbench/detail/window_remedies.h"

namespace dampward::workbench {
namespace {

UnitDraft drafted(const records::QueuedUnit& queued, const LoadDraft* load, const DraftingTable& table) {
  return draft_unit(queued, table.cases.at(queued.kind), load, table.means, table.paint, table.air);
}

bool windowless(const UnitDraft& draft) {
  return draft.refused && draft.refused->rule == Rule::warm_window;
}

void offer_remedies(UnitDraft& draft, const LoadDraft* load, const drying::StepDownAnswer& down,
                    const DraftingTable& table) {
  draft.refused->remedies = window_remedies(
      {*draft.kind, load, *draft.coat, table.paint, table.air, table.humid_air.pressure}, down);
  draft.refused->settle = settled_by(draft.refused->remedies);
}

// A load and its units.
struct Loaded {
  LoadDraft load;
  std::vector<UnitDraft> units;
  std::size_t without_window() const {
    return static_cast<std::size_t>(std::count_if(units.begin(), units.end(), windowless));
  }
};

Loaded loaded(const LoadDraft& load, const QueuedUnits& units, const DraftingTable& table) {
  Loaded result{load, {}};
  for (std::size_t member : load.units) result.units.push_back(drafted(*units[member], &load, table));
  return result;
}

// Units leave the oven hot where all of them find a window so; else held in the stepped-down oven, where that finds more of them
// one. Those without are told what would.
Loaded loaded_for_windows(LoadDraft load, const QueuedUnits& units, const DraftingTable& table) {
  load.held.reset();
  Loaded hot = loaded(load, units, table);
  if (hot.without_window() == 0) return hot;
  const std::vector<const KindCase*> cases = cases_of(units, table);
  const drying::StepDownAnswer answer = stepped_down(load, cases, table.workshop, table.humid_air,
                                                     coating::window_rules(*table.paint.lacquer).hottest);
  Loaded best = std::move(hot);
  if (const auto* down = std::get_if<drying::StepDown>(&answer)) {
    std::vector<const KindCase*> members;
    for (std::size_t member : load.units) members.push_back(cases[member]);
    LoadDraft held = load;
    held.held = LoadDraft::Held{*down, longest_held(load.bake, *down, members)};
    Loaded waiting = loaded(held, units, table);
    if (waiting.without_window() < best.without_window()) best = std::move(waiting);
  }
  for (UnitDraft& draft : best.units) {
    if (windowless(draft)) offer_remedies(draft, &load, answer, table);
  }
  return best;
}

void add_cold(Drafts& drafts, const records::QueuedUnit& queued, const DraftingTable& table) {
  UnitDraft draft = drafted(queued, nullptr, table);
  if (windowless(draft)) offer_remedies(draft, nullptr, {}, table);
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
  Loaded all = loaded_for_windows(load, units, table);
  for (UnitDraft& draft : all.units) {
    draft.load = drafts.loads.size();
    if (draft.refused) {
      drafts.refused.push_back(*draft.refused);
    } else {
      drafts.units.push_back(std::move(draft));
    }
  }
  drafts.loads.push_back(std::move(all.load));
}

Drafts draft_all(QueuedUnits baked, const QueuedUnits& cold, const DraftingTable& table) {
  std::vector<Refusal> refused;
  for (;;) {
    Drafts drafts;
    const auto loads = draft_loads(cases_of(baked, table), table.workshop, table.humid_air);
    for (std::size_t i = 0; i < loads.size(); ++i) {
      table.progress(format("drying load {} of {}", i + 1, loads.size()));
      add_load(drafts, loads[i], baked, table);
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
