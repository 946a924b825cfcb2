#include "workbench/mix_answer.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/base/text.h"
#include "core/materials/composition.h"
#include "core/moist_air/atmosphere.h"
#include "workbench/detail/cautions.h"
#include "workbench/detail/coat_case.h"
#include "workbench/detail/one_kind.h"
#include "workbench/workshop.h"

namespace dampward::workbench {
namespace {

using materials::Method;

Range<Volume> sum(const Range<Volume>& a, const Range<Volume>& b) {
  return {a.low + b.low, a.typical + b.typical, a.high + b.high};
}

template <class Q>
Range<Q> times(double count, const Range<Q>& one) {
  return {count * one.low, count * one.typical, count * one.high};
}

// The lacquer in use with the ratio, coats and film that were asked for.
materials::Lacquer as_asked(materials::Lacquer lacquer, const MixQuestion& question) {
  if (question.thinner_parts)
    lacquer.thinner_parts_for_spray = lacquer.thinner_parts_for_brush = *question.thinner_parts;
  if (question.film) lacquer.film_wanted.value = *question.film;
  for (materials::CoatRule& rule : lacquer.coats) rule.coats = question.coats.value_or(rule.coats);
  return lacquer;
}

// Adds a stretch of work; those of the same kind and way stand together.
void add_work(MixAnswer& answer, const std::string& what, Method method, const Range<Area>& area,
              const coating::Consumption& use) {
  auto work = std::find_if(answer.works.begin(), answer.works.end(),
                           [&](const MixWork& w) { return w.what == what && w.method == method; });
  if (work == answer.works.end()) {
    answer.works.push_back({what, 0, method, {}, {}, {}, {}});
    work = std::prev(answer.works.end());
  }
  ++work->count;
  work->area = times(work->count, area);
  work->ready = sum(work->ready, use.ready);
  work->lacquer = sum(work->lacquer, use.lacquer);
  work->thinner = sum(work->thinner, use.thinner);
}

// The ends of the range a gun likes, as seconds of the cup at hand.
std::string drain_words(const coating::FlowCup& cup) {
  const auto fastest = coating::drain_time(cup, coating::spray_viscosity.low);
  const auto slowest = coating::drain_time(cup, coating::spray_viscosity.high);
  if (!fastest || !slowest) return format("A {} cup does not reach what a gun wants.", cup.name);
  return format("In a {} cup a gun wants {} to {} s (estimate).", cup.name, fixed(fastest->in(second), 0),
                fixed(slowest->in(second), 0));
}

void add_way(MixAnswer& answer, Method method, const coating::Consumption& use,
             const materials::Lacquer& lacquer, const Range<Density>& thinner, coating::Measured measured) {
  const auto same = [&](const MixWay& way) { return way.method == method; };
  if (std::any_of(answer.ways.begin(), answer.ways.end(), same)) return;
  MixWay way;
  way.method = method;
  way.film = use;
  way.views = coating::thinning_views(lacquer, thinner, coating::thinner_parts(lacquer, method));
  way.trade_non_volatile = coating::non_volatile(lacquer.solids_by_mass.value, lacquer.density.value, thinner,
                                                 coating::trade_thinner_parts);
  if (measured.cup == nullptr) measured.cup = coating::find_cup("ford_4");
  way.gate = coating::judge_mix(use, method, measured);
  if (method != Method::brush) way.gate.words.push_back(drain_words(*measured.cup));
  answer.ways.push_back(way);
}

void add_warnings(MixAnswer& answer, const materials::Lacquer& lacquer) {
  for (const MixWay& way : answer.ways) {
    if (way.views.disagree &&
        std::find(answer.warnings.begin(), answer.warnings.end(), way.views.view) == answer.warnings.end())
      answer.warnings.push_back(way.views.view);
    if (way.gate.viscosity == coating::MixGate::Viscosity::too_thin ||
        way.gate.viscosity == coating::MixGate::Viscosity::too_thick ||
        way.gate.film == coating::MixGate::Film::too_thin)
      answer.warnings.push_back("The mix in hand does not pass: see cup and film.");
  }
  if (lacquer.isocyanate)
    answer.warnings.push_back(lacquer.name +
                              " sets isocyanate free: sprayed only with supplied air, everybody else out.");
  if (lacquer.rags_self_heat)
    answer.warnings.push_back(
        "Its rags heat by themselves and can catch fire: under water in a closed metal can, out of the "
        "house.");
  if (lacquer.composition.empty())
    answer.warnings.push_back("Nobody knows which solvents are in " + lacquer.name +
                              ": write its composition down from the safety sheet of the can.");
  if (!answer.thinner_known)
    answer.warnings.push_back("The thinner is in no table: use only the grade named on the can.");
}

// Share that lands: as asked, of the shop's own gun of that sort, or a brush's.
Result<Range<TransferEfficiency>> efficiency_of(const MixQuestion& question, const shop::Shop& shop) {
  if (question.efficiency) return *question.efficiency;
  for (const shop::Gun& gun : shop.guns) {
    if (method_of(gun) == question.method) return gun.efficiency;
  }
  if (question.method == Method::brush) return coating::brush_efficiency;
  return Problem{{"command line"},
                 "no --efficiency, and no gun of that sort in a shop folder",
                 "the share of the solids that lands on the work, such as \"5..10..15 %\"",
                 "Weigh gun and part once. 5 to 15 % land on a small open chassis, 30 % on a flat panel "
                 "(estimates)."};
}

Problem not_for_method(const materials::Lacquer& lacquer) {
  return {{"command line"},
          lacquer.name + " by that method",
          "a method the lacquer has coats for",
          "Take another --method or --lacquer."};
}

// Surfaces to be coated the same way.
struct Surfaces {
  std::string what;
  Range<Area> area;  // of one
  int count = 1;
};

Result<MixAnswer> for_surfaces(MixAnswer answer, const Surfaces& surfaces, const MixQuestion& question,
                               const Workshop& workshop, const materials::Lacquer& lacquer,
                               const Range<Density>& thinner) {
  const auto efficiency = efficiency_of(question, workshop.shop);
  if (!efficiency) return efficiency.problems();
  const auto solvent = materials::volatile_density(lacquer.composition, workshop.solvents.rows());
  const auto use = coating::consumption(surfaces.area, lacquer, solvent, {question.method, *efficiency});
  if (!use || use->coats < 1) return not_for_method(lacquer);
  for (int i = 0; i < surfaces.count; ++i)
    add_work(answer, surfaces.what, question.method, surfaces.area, *use);
  add_way(answer, question.method, *use, lacquer, thinner, question.measured);
  return answer;
}

// A gun coats the stripped unit, a brush the assembled one.
const Range<Area>& coated_area(const equipment::Kind& kind, bool sprayed) {
  return (sprayed ? kind.spray_area_stripped : kind.spray_area_assembled).value;
}

Problem no_such_kind(const KindId& kind, const Workshop& workshop) {
  const auto known = workshop.kinds.ids();
  return {{"command line"},
          "--kind " + kind.text + ", which nobody knows",
          "one of " + listed(known),
          did_you_mean(kind.text, known)};
}

// The units a plan treats, by kind and way; one unit stands for all of a kind where `count` is above 1.
Result<MixAnswer> for_plan(MixAnswer answer, const Workshop& workshop, const records::RecordStore& records,
                           int count, const materials::Lacquer& lacquer, const Range<Density>& thinner,
                           const coating::Measured& measured) {
  const auto plan = make_plan(workshop, records, {});
  if (!plan) return plan.problems();
  const auto paint =
      paint_shop(workshop, {plan->air.warmest, moist_air::standard_pressure(workshop.shop.site.altitude)});
  if (!paint) return paint.problems();
  for (const UnitPlan& unit : plan->units) {
    const equipment::Kind& kind = *workshop.kinds.find(unit.kind);
    const bool spray = unit.way == "spray_stripped";
    const auto coat = coat_case(
        kind, spray ? equipment::CoatingWay::spray_stripped : equipment::CoatingWay::brush_assembled, *paint,
        workshop.shop);
    DAMPWARD_PROMISE(coat.has_value(), "a unit with a place in the plan has its coats");
    const Range<Area>& area = coated_area(kind, spray);
    for (int i = 0; i < count; ++i) add_work(answer, unit.kind_name, coat->method, area, coat->consumption);
    add_way(answer, coat->method, coat->consumption, lacquer, thinner, measured);
  }
  answer.left_out = plan->refused;
  return answer;
}

}  // namespace

Result<MixAnswer> mix_answer(const Workshop& as_is, const records::RecordStore* records,
                             const MixQuestion& question) {
  const materials::Lacquer* in_use = as_is.lacquers.find(as_is.shop.lacquer);
  if (in_use == nullptr) {
    const auto known = as_is.lacquers.ids();
    return Problem{{"command line"},
                   as_is.shop.lacquer.empty() ? "no --lacquer" : "the lacquer " + as_is.shop.lacquer.text,
                   "one of " + listed(known),
                   did_you_mean(as_is.shop.lacquer.text, known)};
  }
  Workshop workshop = as_is;
  workshop.lacquers.put(as_asked(*in_use, question));
  const materials::Lacquer& lacquer = *workshop.lacquers.find(as_is.shop.lacquer);
  const materials::Liquid* thinner = workshop.thinners.find(lacquer.thinner);
  const auto density = density_of_thinner(thinner, workshop.solvents.rows());

  MixAnswer answer;
  answer.basis = workshop.shop.site.name.empty() ? "the shipped tables" : workshop.shop.site.name;
  answer.lacquer = lacquer.name;
  answer.thinner_known = thinner != nullptr;
  answer.thinner = thinner != nullptr ? thinner->name : lacquer.thinner;
  answer.pot_life = lacquer.pot_life;

  const auto* of_kind = std::get_if<UnitsOfKind>(&question.work);
  const equipment::Kind* kind = of_kind == nullptr ? nullptr : workshop.kinds.find(of_kind->kind);
  if (of_kind != nullptr && kind == nullptr) return no_such_kind(of_kind->kind, workshop);
  auto filled = [&]() -> Result<MixAnswer> {
    if (const auto* some = std::get_if<SomeArea>(&question.work))
      return for_surfaces(answer, {"the area", some->area}, question, workshop, lacquer, density);
    if (records != nullptr && kind == nullptr)
      return for_plan(answer, workshop, *records, 1, lacquer, density, question.measured);
    DAMPWARD_PROMISE(kind != nullptr, "a whole queue is asked for only with a shop's records");
    if (records == nullptr) {
      const Range<Area>& area = coated_area(*kind, question.method != Method::brush);
      return for_surfaces(answer, {kind->name, area, of_kind->count}, question, workshop, lacquer, density);
    }
    return for_plan(answer, workshop, OneKind(*records, kind->id, 1), of_kind->count, lacquer, density,
                    question.measured);
  }();
  if (!filled) return filled.problems();
  answer = std::move(filled).value();
  for (const MixWork& work : answer.works) {
    answer.ready = sum(answer.ready, work.ready);
    answer.lacquer_litres = sum(answer.lacquer_litres, work.lacquer);
    answer.thinner_litres = sum(answer.thinner_litres, work.thinner);
  }
  add_warnings(answer, lacquer);
  answer.cautions = cautions_at({"all", "mix", "store", "waste"}, workshop.hazards);
  return answer;
}

}  // namespace dampward::workbench
