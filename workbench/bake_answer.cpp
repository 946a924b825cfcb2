#include "workbench/bake_answer.h"

#include <algorithm>
#include <map>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/base/text.h"
#include "core/drying/oven_model.h"
#include "core/moist_air/atmosphere.h"
#include "workbench/detail/cautions.h"
#include "workbench/detail/kind_case.h"
#include "workbench/detail/part_words.h"
#include "workbench/detail/shop_air.h"
#include "workbench/workshop.h"

namespace dampward::workbench {
namespace {

// The kinds of a load, each with its count and a unit's name to speak of it.
struct Lot {
  const equipment::Kind* kind = nullptr;
  int count = 0;
  UnitId first;
  drying::OvenPiece piece;
};

Problem not_known(const std::string& option, const std::string& id, const std::vector<std::string>& known) {
  return {{"command line"},
          format("{} {}, which nobody knows", option, id),
          known.empty() ? "something the shop has" : "one of " + listed(known),
          did_you_mean(id, known)};
}

// Kinds and counts of the question, in the order asked for.
Result<std::vector<Lot>> lots_of(const Workshop& workshop, const records::RecordStore* records,
                                 const BakeQuestion& question) {
  std::vector<Lot> lots;
  const auto add = [&](const KindId& id, int count, const UnitId& unit) {
    const auto known = std::find_if(lots.begin(), lots.end(), [&](const Lot& l) { return l.kind->id == id; });
    if (known == lots.end()) {
      lots.push_back({workshop.kinds.find(id), count, unit, {}});
    } else {
      known->count += count;
    }
  };
  if (question.units.empty()) {
    if (workshop.kinds.find(question.kind) == nullptr)
      return not_known("--kind", question.kind.text, workshop.kinds.ids());
    add(question.kind, question.count, UnitId(question.kind.text));
    return lots;
  }
  DAMPWARD_PROMISE(records != nullptr, "units are asked for only of a queue");
  const auto queue = records->queue();
  if (!queue) return queue.problems();
  Problems problems;
  for (const UnitId& unit : question.units) {
    const auto queued = std::find_if(queue->units.begin(), queue->units.end(),
                                     [&](const records::QueuedUnit& q) { return q.serial == unit; });
    if (queued != queue->units.end()) {
      add(queued->kind, 1, unit);
      continue;
    }
    std::vector<std::string> serials;
    for (const auto& q : queue->units) serials.push_back(q.serial.text);
    problems.push_back(not_known("--serials", unit.text, serials));
  }
  if (!problems.empty()) return problems;
  return lots;
}

// The piece of each kind as a plan would put it into the oven; kinds that may not be heated at all go to `left_out`.
void open_up(std::vector<Lot>& lots, const Workshop& workshop, const records::RecordStore* records,
             std::vector<Refusal>& left_out) {
  const materials::Lacquer* lacquer = workshop.lacquers.find(workshop.shop.lacquer);
  for (Lot& lot : lots) {
    drying::PartsOut out = drying::usually_out(*lot.kind, equipment::ValveChoice::stay_as_masks);
    if (records != nullptr && lacquer != nullptr) {
      const route::Means means{workshop.shop,
                               *lacquer,
                               workshop.thinners.find(lacquer->thinner),
                               workshop.cleaners.rows(),
                               workshop.materials.rows(),
                               workshop.solvents.rows(),
                               workshop.hazards};
      out.clear();
      for (const auto& part : route::worklists({*lot.kind, {}, {}}, means).removed) out.insert(part.part);
    }
    lot.piece = drying::oven_piece(*lot.kind, out, workshop.materials);
    if (const auto isolated = route::isolation(*lot.kind, workshop.hazards)) {
      left_out.push_back(
          {{Rule::isolation, "", isolated->reason, isolated->settle}, lot.first, lot.kind->id});
    } else if (!lot.piece.refusals.empty()) {
      const drying::Refusal& first = lot.piece.refusals.front();
      left_out.push_back(
          {{Rule::limit_unknown, first.part.text, first.reason, first.settle}, lot.first, lot.kind->id});
    }
  }
}

std::string part_name(const std::vector<Lot>& lots, const KindId& kind, const PartId& part) {
  for (const Lot& lot : lots) {
    if (lot.kind->id != kind) continue;
    for (const auto& each : lot.piece.parts) {
      if (each.id == part) return lots.size() == 1 ? each.name : lot.kind->name + ": " + each.name;
    }
  }
  return "";
}

// Why the load does not go into the oven as one; empty: it does.
std::string too_big(const std::vector<Lot>& lots, const shop::Oven& oven) {
  Volume all;
  for (const Lot& lot : lots) {
    if (!fits_inside(*lot.kind, oven))
      return format("{} does not fit with {} mm of air around it and half the oven free", lot.kind->name,
                    fixed(clearance.in(millimetre), 0));
    all += lot.count * equipment::outer_volume(*lot.kind);
  }
  const double share = all / drying::inside_volume(oven);
  return share <= fullest
             ? ""
             : format("The load fills {} % of it; {} % is the most, or its air does not reach all",
                      fixed(100 * share, 0), fixed(100 * fullest, 0));
}

OvenBake bake_in(const shop::Oven& oven, const std::vector<Lot>& lots, const Workshop& workshop,
                 const moist_air::HumidAir& air, const WatchedStretches& watched) {
  OvenBake told;
  told.oven = oven.id;
  told.name = oven.name;
  told.reason = too_big(lots, oven);
  if (!told.reason.empty()) {
    told.settle = "fewer units, or a larger oven";
    return told;
  }
  std::vector<drying::LoadUnits> load;
  for (const Lot& lot : lots) load.push_back({&lot.piece, lot.count});
  const drying::Wall* wall = workshop.walls.find(oven.wall);
  DAMPWARD_PROMISE(wall != nullptr, "every oven read has a known wall");
  const auto answer = drying::bake_load(oven, *wall, load, air);
  if (const auto* no = std::get_if<drying::NoBake>(&answer)) {
    told.reason = no->reason;
    told.settle = no->settle;
    return told;
  }
  const drying::BakePlan& bake = std::get<drying::BakePlan>(answer);
  told.bakes = true;
  told.set_point = bake.set;
  told.warm_up = bake.plateau + bake.warm_up;
  told.hold = bake.hold;
  told.hold_nominal = bake.hold_nominal;
  told.rule = bake.rule;
  told.weakest = part_name(lots, bake.weakest_kind, bake.weakest_part);
  told.slowest = part_name(lots, bake.slowest_kind, bake.slowest_part);
  told.excess = bake.excess.sum();
  told.dampest = bake.dampest;
  told.at_end = bake.oven_humidity;
  told.water = bake.water;
  told.energy = bake.energy;
  for (const drying::PartBake& part : bake.parts) {
    const auto lot =
        std::find_if(lots.begin(), lots.end(), [&](const Lot& l) { return l.kind->id == part.kind; });
    told.parts.push_back(part_in_oven(part, lot->first, lot->piece));
  }
  if (const auto stretch = watched.find(oven.id); stretch != watched.end()) told.watched = stretch->second;
  if (!told.in_time())
    told.warnings.push_back(
        format("It would need {} h with power and somebody within call in one stretch; the longest is {} h: "
               "split the load, or keep watch longer.",
               fixed(told.in_oven().in(hour) + 0.05, 1), fixed(told.watched->in(hour), 1)));
  if (!workshop.shop.crew.empty() && near_solvent(oven, workshop.shop.spray))
    told.warnings.push_back(
        "It counts as near the solvent work: it stays cold from mixing to the end of the purge.");
  return told;
}

Result<AskedAir> air_for(const Workshop& workshop, const records::RecordStore* records,
                         const BakeQuestion& question) {
  if (question.air) return *question.air;
  DAMPWARD_PROMISE(records != nullptr, "without records the air is asked for");
  const auto air = air_at_start(workshop, *records);
  if (!air) return air.problems();
  return AskedAir{air->temperature, air->humidity};
}

Result<std::vector<const shop::Oven*>> ovens_for(const shop::Shop& shop, const BakeQuestion& question) {
  std::vector<const shop::Oven*> ovens;
  std::vector<std::string> known;
  for (const shop::Oven& oven : shop.ovens) {
    known.push_back(oven.id.text);
    if (!question.oven || oven.id == *question.oven) ovens.push_back(&oven);
  }
  if (!ovens.empty()) return ovens;
  if (question.oven) return not_known("--oven", question.oven->text, known);
  return Problem{{"ovens.toml"}, "no oven", "one table [ovens.NAME] or more", ""};
}

// The longest watched stretches from the queue's start on; none where there is no crew or no start to ask.
WatchedStretches watched_by(const Workshop& workshop, const records::RecordStore* records) {
  if (records == nullptr || workshop.shop.crew.empty()) return {};
  const auto queue = records->queue();
  if (!queue || !queue->starts) return {};
  return watched_stretches(workshop.shop, workshop.shop.site.clock.instant(*queue->starts));
}

}  // namespace

bool BakeAnswer::any() const {
  return std::any_of(ovens.begin(), ovens.end(),
                     [](const OvenBake& oven) { return oven.bakes && oven.in_time(); });
}

Result<BakeAnswer> bake_answer(const Workshop& workshop, const records::RecordStore* records,
                               const BakeQuestion& question) {
  auto lots = lots_of(workshop, records, question);
  if (!lots) return lots.problems();
  const auto ovens = ovens_for(workshop.shop, question);
  if (!ovens) return ovens.problems();
  const auto air = air_for(workshop, records, question);
  if (!air) return air.problems();

  BakeAnswer answer;
  answer.basis = workshop.shop.site.name.empty() ? "the shipped tables" : workshop.shop.site.name;
  answer.air = *air;
  std::vector<Lot> load = std::move(lots).value();
  for (const Lot& lot : load) answer.load.push_back({lot.kind->name, lot.count});
  open_up(load, workshop, records, answer.left_out);
  answer.cautions = cautions_at({"all", "load", "bake", "unload"}, workshop.hazards);
  if (!answer.left_out.empty()) return answer;

  const moist_air::HumidAir humid_air{air->temperature, air->humidity,
                                      moist_air::standard_pressure(workshop.shop.site.altitude)};
  const WatchedStretches watched = watched_by(workshop, records);
  for (const shop::Oven* oven : *ovens)
    answer.ovens.push_back(bake_in(*oven, load, workshop, humid_air, watched));
  std::stable_sort(answer.ovens.begin(), answer.ovens.end(), [](const OvenBake& a, const OvenBake& b) {
    return a.bakes != b.bakes ? a.bakes : a.in_oven() < b.in_oven();
  });
  return answer;
}

}  // namespace dampward::workbench
