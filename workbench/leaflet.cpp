#include "workbench/leaflet.h"

#include <algorithm>
#include <set>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/base/text.h"
#include "core/moist_air/humid_air.h"
#include "core/room_air/exposure_index.h"
#include "core/route/route.h"
#include "workbench/detail/coat_case.h"
#include "workbench/detail/home_drying.h"
#include "workbench/detail/unit_window.h"

namespace dampward::workbench {
namespace {

// Two grown people carry no more up to a table than this: twice the load constant of the NIOSH lifting equation (1994), 23 kg,
// less a margin for grips and stairs (estimate).
constexpr Mass too_heavy = 35 * kilogram;
// A living room with a window ajar, for showing what a spray does there.
constexpr double home_air_changes = 1.0;

// The rows of the hazard table a home meets, whatever the set.
const std::set<std::string> home_rows = {"H01", "H02", "H15", "H18", "H22", "H25", "H27", "H29",
                                         "H34", "H41", "H43", "H45", "H46", "H47", "H49"};

// A living room, a brush, and the gun somebody might think of.
shop::Shop home(const LacquerId& lacquer) {
  shop::Shop shop;
  shop.lacquer = lacquer;
  shop.spray.name = "living room";
  shop.spray.kind = shop::PlaceKind::room;
  shop.spray.length = 4 * metre;
  shop.spray.width = 3 * metre;
  shop.spray.height = 2.5 * metre;
  shop.spray.air_changes_per_hour = home_air_changes;
  shop.spray.opening_to_outside = true;
  shop::Gun brush, spray;
  brush.id = GunId("brush");
  brush.name = "brush";
  brush.efficiency = coating::brush_efficiency;
  brush.fluid_rate = 0.02 * litre / minute;
  spray.id = GunId("spray");
  spray.name = "spray gun";
  spray.kind = shop::GunKind::suction_gun;
  spray.efficiency = {TransferEfficiency::percent(5), TransferEfficiency::percent(10),
                      TransferEfficiency::percent(15)};
  spray.fluid_rate = 0.1 * litre / minute;
  shop.guns = {brush, spray};
  return shop;
}

// What no home should begin; none: it may.
std::optional<Barrier> not_at_home(const HomeSet& set) {
  if (const auto isolated = route::isolation(set.kind, set.workshop.hazards))
    return Barrier{Rule::isolation, "", isolated->reason, isolated->settle};
  if (!set.piece.refusals.empty()) {
    const drying::Refusal& first = set.piece.refusals.front();
    return Barrier{Rule::limit_unknown, first.part.text, first.reason, first.settle};
  }
  if (set.kind.mass.value.typical > too_heavy) {
    return Barrier{Rule::station, "",
                   format("The {} weighs some {} kg, and a home has no hoist.", set.kind.name,
                          fixed(set.kind.mass.value.typical.in(kilogram), 0)),
                   "Let a workshop do it."};
  }
  const materials::Lacquer& lacquer = set.lacquer;
  if (lacquer.isocyanate) {
    return Barrier{Rule::isocyanate, lacquer.id.text,
                   lacquer.name + " sets isocyanate free, which can give asthma for life.",
                   "Take a lacquer of another family."};
  }
  if (lacquer.composition.empty()) {
    return Barrier{Rule::solvents_unknown, lacquer.id.text,
                   "Nobody knows which solvents are in " + lacquer.name + ".",
                   "Take a lacquer whose can tells."};
  }
  if (coating::coat_rule(lacquer, materials::Method::brush) == nullptr) {
    return Barrier{Rule::coating_method, lacquer.id.text, lacquer.name + " is not meant for the brush.",
                   "Take one that is: a home never sprays."};
  }
  return std::nullopt;
}

// The owner picks the hour to coat: its air is the one that was asked about, and the box is no cooler than it.
RulingAir ruling(const HomeSet& set) {
  RulingAir air;
  air.temperature = air.warmest = air.coolest = set.question.air;
  air.dew_point = moist_air::dew_point(set.air());
  air.humidity = set.question.humidity;
  return air;
}

// Between which minutes after the box the brush may begin and must have ended.
std::optional<Barrier> window(HomeCoat& told, const CoatCase& coat, const HomeWarmth& now,
                              const HomeSet& set) {
  const RulingAir air = ruling(set);
  drying::PieceBake piece;
  piece.whole_cooling = set.piece.time_constant(drying::AirMotion::still);
  piece.heavy_cooling = set.piece.heavy_time_constant(drying::AirMotion::still).value_or(piece.whole_cooling);
  WindowCase window_of{cooling_surfaces(piece, now.hottest, now.coolest + day_spread, air),
                       {air.temperature, air.dew_point, air.humidity},
                       coating::window_rules(set.lacquer),
                       coat.work,
                       {}};
  const coating::WarmWindow window = window_of.window();
  if (!window.usable()) {
    return Barrier{Rule::warm_window, window.shut_by, coating::words(window, coat.work),
                   "Wait for a drier or cooler day: the same command with --air says whether it will do."};
  }
  told.opens = window.opens;
  told.closes = *window.closes;
  told.closes_by = window.closed;
  told.closed_by = window.closed == coating::Closes::damp_back ? "damp goes back into it"
                                                               : "it would sweat under the film";
  return std::nullopt;
}

std::optional<Barrier> coat(Leaflet& page, const HomeWarmth& now, const HomeSet& set) {
  const auto paint = paint_shop(set.workshop, {set.question.air + day_spread, set.pressure});
  DAMPWARD_PROMISE(paint.ok(), "a room of a home has a size, and the lacquer is known");
  const auto brushed = coat_case(set.kind, equipment::CoatingWay::brush_assembled, *paint, set.workshop.shop);
  DAMPWARD_PROMISE(brushed.has_value(), "a lacquer meant for the brush has its coats");
  HomeCoat& told = page.coat;
  told.lacquer = set.lacquer.name;
  told.coats = brushed->consumption.coats;
  told.needed = brushed->consumption.lacquer;
  told.thinner = brushed->consumption.thinner.high;
  told.flash = brushed->work.one_flash;
  told.touch_dry = set.lacquer.touch_dry ? set.lacquer.touch_dry->high : told.flash;
  told.before_closing = set.lacquer.airing_before_closing;
  told.before_use = set.lacquer.constants_settle;
  if (auto shut = window(told, *brushed, now, set)) return shut;

  // What a spray would do: one coat's solvent in the still room.
  const shop::SprayPlace& room = set.workshop.shop.spray;
  page.spray.room = room.length * room.width * room.height;
  page.spray.lacquer_brushed = brushed->consumption.lacquer.high;
  const auto sprayed = coat_case(set.kind, equipment::CoatingWay::spray_stripped, *paint, set.workshop.shop);
  if (!sprayed) return std::nullopt;
  page.spray.lacquer_sprayed = sprayed->consumption.lacquer.high;
  if (!paint->vapour) return std::nullopt;
  const Volume vapour = (sprayed->volatiles_of_coat / kilogram) * paint->vapour->vapour_per_kilogram;
  const VapourShare there = VapourShare::fraction(std::min(1.0, vapour / page.spray.room));
  page.spray.share_of_limit = there.fraction() / paint->vapour->lower_limit.fraction();
  const auto index = room_air::mixture_index(paint->worst_for_people, there);
  if (!index) {
    return Barrier{
        Rule::solvents_unknown, set.lacquer.id.text,
        "No authority says how much of some solvent in " + set.lacquer.name + " a person may breathe.",
        "Take a lacquer whose solvents are known."};
  }
  page.spray.times_limit = *index;
  return std::nullopt;
}

std::vector<Caution> home_cautions(const equipment::Kind& kind, const std::vector<hazards::Hazard>& table) {
  std::set<std::string> wanted = home_rows;
  for (const equipment::Part& part : kind.parts) {
    for (const HazardId& id : part.hazards) wanted.insert(id.text);
  }
  std::vector<Caution> cautions;
  for (const hazards::Hazard& row : table) {
    if (wanted.contains(row.id.text))
      cautions.push_back({row.id, row.step, row.name + ": " + row.harm, row.guard, row.stop_sign, row.effect,
                          row.source, row.defer});
  }
  return cautions;
}

Problem unknown(const char* option, const std::string& asked, const std::vector<std::string>& known) {
  return {{"command line"},
          format("--{} {}", option, asked),
          "one of " + listed(known),
          did_you_mean(asked, known)};
}

}  // namespace

Result<Leaflet> leaflet(const Workshop& shipped, const LeafletQuestion& question) {
  const equipment::Kind* kind = shipped.kinds.find(question.kind);
  const materials::Lacquer* lacquer = shipped.lacquers.find(question.lacquer);
  Problems problems;
  if (kind == nullptr) problems.push_back(unknown("kind", question.kind.text, shipped.kinds.ids()));
  if (lacquer == nullptr)
    problems.push_back(unknown("lacquer", question.lacquer.text, shipped.lacquers.ids()));
  if (!problems.empty()) return problems;

  Workshop workshop = shipped;
  workshop.shop = home(question.lacquer);
  const route::Means means{workshop.shop,
                           *lacquer,
                           workshop.thinners.find(lacquer->thinner),
                           workshop.cleaners.rows(),
                           workshop.materials.rows(),
                           workshop.solvents.rows(),
                           workshop.hazards};
  route::Worklists lists = route::worklists(route::Subject{*kind, {}, {}}, means);
  drying::PartsOut out;
  for (const auto& part : lists.removed) out.insert(part.part);
  drying::OvenPiece piece = drying::oven_piece(*kind, out, workshop.materials);
  const HomeSet set{*kind, question, std::move(workshop), *lacquer, std::move(lists), std::move(piece)};

  Leaflet page;
  page.kind = kind->name;
  page.heat = question.heat;
  page.air = question.air;
  page.humidity = question.humidity;
  page.cautions = home_cautions(*kind, shipped.hazards);
  for (const Caution& caution : page.cautions) {
    if (!home_rows.contains(caution.id.text)) page.of_this_kind.push_back(caution.id);
  }
  HomeWarmth now;
  page.refused = not_at_home(set);
  if (!page.refused) page.refused = dry_at_home(page.drying, now, set);
  if (!page.refused) page.refused = coat(page, now, set);
  if (page.refused) return page;
  page.lists = set.lists;
  page.fungicide = !lacquer->fungicide.empty();
  if (page.fungicide)
    page.warnings.push_back("The lacquer holds a poison against mould (" + lacquer->fungicide +
                            "): gloves, and no children or food near.");
  return page;
}

}  // namespace dampward::workbench
