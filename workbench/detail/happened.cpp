#include "workbench/detail/happened.h"

#include <algorithm>
#include <set>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/line/calendar.h"
#include "workbench/detail/shop_line.h"

namespace dampward::workbench {
namespace {

using route::Step;
using route::StepCode;

const Step* step_named(const UnitDraft& unit, const std::string& id) {
  const auto found = std::find_if(unit.route.steps.begin(), unit.route.steps.end(),
                                  [&](const Step& s) { return s.id == id; });
  return found == unit.route.steps.end() ? nullptr : &*found;
}

const history::StepRecord* record_of(const UnitDraft& unit, const HappenedSteps& happened, StepCode code) {
  for (const Step& step : unit.route.steps) {
    if (step.code == code && happened.has(step.id)) return happened.records.at(step.id);
  }
  return nullptr;
}

Problem in_log(const std::string& event, const std::string& found, const std::string& expected,
               const std::string& next) {
  return {{"log.jsonl"}, "event " + event + ": " + found, expected, next};
}

// Steps the route does not have, and steps that came before those they follow had ended.
void check_order(const UnitDraft& unit, const HappenedSteps& happened, Problems& problems) {
  const std::string& serial = unit.queued->serial.text;
  for (const auto& [id, record] : happened.records) {
    if (step_named(unit, id) != nullptr) continue;
    std::vector<std::string> known;
    for (const Step& step : unit.route.steps) known.push_back(step.id);
    problems.push_back(in_log(record->event, format("{} of {}, which its route does not have", id, serial),
                              "one of " + listed(known), did_you_mean(id, known)));
  }
  for (const route::StepGap& gap : unit.route.gaps) {
    if (!happened.has(gap.to) || happened.ended(gap.from)) continue;
    const auto& record = *happened.records.at(gap.to);
    problems.push_back(in_log(
        record.event, format("{} of {} began, but {} before it has not ended", gap.to, serial, gap.from),
        "the end of " + gap.from + " by then",
        format("If it was done, note it with its times: --kind step_finished --unit {} --step {}; "
               "if not, stop and do it, and withdraw this event.",
               serial, gap.from)));
  }
}

// Which load each unit went into, or is to go into.
class Regrouping {
 public:
  Regrouping(const Drafts& before, Happened& happened, const DraftingTable& table, Problems& problems)
      : before_(before), happened_(happened), table_(table), problems_(problems) {}

  void run() {
    share_bakes();
    sort_units();
    for (std::size_t i = 0; i < before_.loads.size(); ++i) keep_or_split(i);
    for (const auto& [key, units] : baked_) {
      if (!kept_.contains(key)) add(format("H{}", ++made_), *key.first, units, key_event(units));
    }
    if (!again_.empty()) draft_again();
    for (const UnitDraft& unit : before_.units) {
      if (!unit.kind->cold) continue;
      happened_.drafts.units.push_back(unit);
    }
  }

 private:
  using Key = std::pair<const shop::Oven*, Instant>;  // one bake that happened

  HappenedSteps& steps(const UnitDraft& unit) { return happened_.steps[unit.queued->serial]; }

  // A bake noted for one unit of a load holds for those that stood in the oven with it.
  void share_bakes() {
    for (const UnitDraft& unit : before_.units) {
      const auto* load = record_of(unit, steps(unit), StepCode::load);
      if (unit.kind->cold || load == nullptr || record_of(unit, steps(unit), StepCode::bake) != nullptr)
        continue;
      for (const UnitDraft& mate : before_.units) {
        if (mate.kind->cold || mate.load != unit.load) continue;
        const auto* bake = record_of(mate, steps(mate), StepCode::bake);
        if (bake == nullptr || bake->started < load->started) continue;
        if (oven_of(mate) != oven_of(unit)) continue;
        for (const Step& step : unit.route.steps) {
          if (step.code == StepCode::bake) steps(unit).records[step.id] = bake;
        }
        break;
      }
    }
  }

  const shop::Oven* oven_of(const UnitDraft& unit) {
    for (const StepCode code : {StepCode::bake, StepCode::load}) {
      const auto* record = record_of(unit, steps(unit), code);
      if (record == nullptr || record->oven.empty()) continue;
      for (const shop::Oven& oven : table_.workshop.shop.ovens) {
        if (oven.id == record->oven) return &oven;
      }
      problems_.push_back(in_log(record->event,
                                 "the oven \"" + record->oven.text + "\", which the shop does not have",
                                 "an oven of the shop's files", "Correct the event."));
    }
    return before_.loads[unit.load].oven;
  }

  void sort_units() {
    waiting_.resize(before_.loads.size());
    for (std::size_t i = 0; i < before_.units.size(); ++i) {
      const UnitDraft& unit = before_.units[i];
      if (unit.kind->cold) continue;
      if (const auto* bake = record_of(unit, steps(unit), StepCode::bake)) {
        baked_[{oven_of(unit), bake->started}].push_back(i);
      } else if (!steps(unit).rework.empty()) {
        again_.push_back(i);
      } else {
        waiting_[unit.load].push_back(i);
      }
    }
  }

  void keep_or_split(std::size_t load) {
    std::vector<std::size_t> members;
    for (std::size_t i = 0; i < before_.units.size(); ++i) {
      if (!before_.units[i].kind->cold && before_.units[i].load == load) members.push_back(i);
    }
    if (members.empty()) return;
    for (const auto& [key, units] : baked_) {
      if (units != members || key.first != before_.loads[load].oven) continue;
      kept_.insert(key);
      return keep(load, members);
    }
    const std::vector<std::size_t>& left = waiting_[load];
    if (left.empty()) return;
    const shop::Oven* oven = before_.loads[load].oven;
    for (const std::size_t unit : left) {
      if (record_of(before_.units[unit], steps(before_.units[unit]), StepCode::load))
        oven = oven_of(before_.units[unit]);
    }
    if (left == members && oven == before_.loads[load].oven) return keep(load, members);
    add(before_.loads[load].id, *oven, left, key_event(left));
  }

  void keep(std::size_t load, const std::vector<std::size_t>& members) {
    for (const std::size_t member : members) {
      UnitDraft unit = before_.units[member];
      unit.load = happened_.drafts.loads.size();
      happened_.drafts.units.push_back(std::move(unit));
    }
    happened_.drafts.loads.push_back(before_.loads[load]);
  }

  QueuedUnits queued(const std::vector<std::size_t>& units) const {
    QueuedUnits list;
    for (const std::size_t unit : units) list.push_back(before_.units[unit].queued);
    return list;
  }

  static std::vector<std::size_t> places(std::size_t count) {
    std::vector<std::size_t> list(count);
    for (std::size_t i = 0; i < count; ++i) list[i] = i;
    return list;
  }

  std::string key_event(const std::vector<std::size_t>& units) {
    for (const std::size_t unit : units) {
      for (const StepCode code : {StepCode::bake, StepCode::load}) {
        if (const auto* record = record_of(before_.units[unit], steps(before_.units[unit]), code))
          return record->event;
      }
    }
    return "";
  }

  void add(const std::string& id, const shop::Oven& oven, const std::vector<std::size_t>& units,
           const std::string& event) {
    const QueuedUnits members = queued(units);
    const auto load = load_in(id, oven, places(members.size()), cases_of(members, table_), table_.workshop,
                              table_.humid_air);
    if (load) return add_load(happened_.drafts, *load, members, table_);
    std::vector<std::string> names;
    for (const auto* member : members) names.push_back(member->serial.text);
    problems_.push_back(
        in_log(event, format("{} in the {}, which does not bake them so", listed(names), oven.name),
               "a load every part of which stays under its limit and dries",
               "Take out what is still in, correct the event if it is wrong, or note window_missed for "
               "each: they are then dried again."));
  }

  void draft_again() {
    const QueuedUnits members = queued(again_);
    for (LoadDraft load : draft_loads(cases_of(members, table_), table_.workshop, table_.humid_air)) {
      load.id = "R" + load.id.substr(1);
      add_load(happened_.drafts, load, members, table_);
    }
  }

  const Drafts& before_;
  Happened& happened_;
  const DraftingTable& table_;
  Problems& problems_;
  std::map<Key, std::vector<std::size_t>> baked_;
  std::vector<std::vector<std::size_t>> waiting_;  // by load, not yet baked
  std::vector<std::size_t> again_;                 // thrown back before the oven
  std::set<Key> kept_;
  int made_ = 0;
};

// The step's length in the problem, for what still runs.
line::Minute length_in(const line::Problem& problem, const std::string& operation) {
  for (const line::Operation& op : problem.operations) {
    if (op.id == operation) return op.length;
  }
  return 0;
}

bool is_attended(const line::Problem& problem, const std::string& operation) {
  for (const line::Operation& op : problem.operations) {
    if (op.id == operation) return op.attendance == line::Attendance::attended;
  }
  return false;
}

}  // namespace

Result<Happened> as_happened(const Drafts& drafts, const history::History& history,
                             const DraftingTable& table) {
  Happened happened;
  Problems problems;
  std::set<UnitId> known;
  for (const UnitDraft& unit : drafts.units) {
    known.insert(unit.queued->serial);
    const LoadDraft* load = unit.kind->cold ? nullptr : &drafts.loads[unit.load];
    happened.steps[unit.queued->serial] = happened_steps(
        unit, history, load, barrier_to_cold_coat(*unit.kind, *unit.coat, table.paint, table.air));
  }
  std::set<UnitId> unknown;
  for (const history::StepRecord& record : history.steps) {
    if (!known.contains(record.unit)) unknown.insert(record.unit);
  }
  for (const history::Setback& setback : history.setbacks) {
    if (!known.contains(setback.unit)) unknown.insert(setback.unit);
  }
  for (const UnitId& unit : unknown)
    happened.doubts.push_back("The log tells of " + unit.text +
                              ", which is not in the plan: nothing of it is counted on.");
  happened.drafts.refused = drafts.refused;
  Regrouping(drafts, happened, table, problems).run();
  for (UnitDraft& unit : happened.drafts.units) {
    const HappenedSteps& steps = happened.steps[unit.queued->serial];
    put_rework(unit.route, steps);
    check_order(unit, steps, problems);
    happened.rework.insert(happened.rework.end(), steps.rework.begin(), steps.rework.end());
  }
  std::stable_sort(happened.rework.begin(), happened.rework.end(),
                   [](const Rework& a, const Rework& b) { return a.at < b.at; });
  if (!problems.empty()) return problems;
  return happened;
}

std::set<std::size_t> begun_loads(const Happened& happened) {
  std::set<std::size_t> begun;
  for (const UnitDraft& unit : happened.drafts.units) {
    const HappenedSteps& steps = happened.steps.at(unit.queued->serial);
    if (!unit.kind->cold && record_of(unit, steps, StepCode::load) != nullptr) begun.insert(unit.load);
  }
  return begun;
}

void fix_happened(line::Problem& problem, const Happened& happened, const history::History& history,
                  const shop::Shop& shop, const line::Answer& before, Instant from, line::Minute now) {
  problem.now = now;
  std::map<std::string, line::Fixed> fixed;
  const Drafts& drafts = happened.drafts;
  for (const UnitDraft& unit : drafts.units) {
    const HappenedSteps& steps = happened.steps.at(unit.queued->serial);
    for (const Step& step : unit.route.steps) {
      if (!steps.has(step.id)) continue;
      const history::StepRecord& record = *steps.records.at(step.id);
      const std::string id = operation_id(unit, step, drafts.loads);
      line::Fixed& told = fixed[id];
      const bool first = told.operation.empty();
      told.operation = id;
      const line::Minute start = line::minute_at(record.started, from);
      told.start = first ? start : std::min(told.start, start);
      const line::Minute end = record.finished ? std::max(start, line::minute_after(*record.finished, from))
                                               : std::max(now, start + length_in(problem, id));
      told.end = first ? end : std::max(told.end, end);
      const bool in_oven =
          step.code == StepCode::load || step.code == StepCode::bake || step.code == StepCode::unload;
      if (in_oven) {
        told.station = drafts.loads[unit.load].oven->id.text;
      } else {
        for (const shop::Station& station : shop.stations) {
          if (station.id.text == record.station) told.station = record.station;
        }
      }
      const bool on_crew = std::any_of(shop.crew.begin(), shop.crew.end(), [&](const shop::Person& person) {
        return person.id == record.person;
      });
      if (first && on_crew && is_attended(problem, id)) told.people.push_back(record.person.text);
    }
  }
  for (const line::Placement& placement : before.placements) {
    const auto found = fixed.find(placement.operation);
    if (found != fixed.end() && found->second.station.empty()) found->second.station = placement.station;
  }
  for (auto& [id, told] : fixed) problem.fixed.push_back(std::move(told));
  for (const history::Absence& absence : history.absences) {
    const line::Calendar gone{{line::minute_at(absence.from, from), line::minute_after(absence.until, from)}};
    for (line::Person& person : problem.people) {
      if (person.id == absence.person.text) person.shifts = line::without(person.shifts, gone);
    }
  }
  for (const history::Outage& outage : history.outages) {
    const line::Calendar dark{{line::minute_at(outage.from, from), line::minute_after(outage.until, from)}};
    for (line::Oven& oven : problem.ovens) {
      if (oven.id == outage.oven.text) oven.powered = line::without(oven.powered, dark);
    }
  }
}

}  // namespace dampward::workbench
