#include "workbench/detail/mixing_report.h"

#include <algorithm>
#include <map>

#include "core/base/format.h"
#include "core/coating/mixing.h"
#include "core/coating/pots.h"
#include "core/records/shelf.h"

namespace dampward::workbench {
namespace {

using materials::Method;

// The coats of one method: when each wants mix, and whose it is.
struct Coats {
  std::vector<coating::MixUse> uses;
  std::vector<UnitId> units;
};

Range<Volume> part_of(const Range<Volume>& whole, double share) {
  return {share * whole.low, share * whole.typical, share * whole.high};
}

std::map<Method, Coats> coats_of(const std::vector<UnitDraft>& units, const std::vector<UnitPlan>& told) {
  std::map<Method, Coats> by_method;
  for (const UnitPlan& unit : told) {
    const auto draft = std::find_if(units.begin(), units.end(),
                                    [&](const UnitDraft& d) { return d.queued->serial == unit.unit; });
    if (draft == units.end()) continue;
    const coating::Consumption& use = draft->coat->consumption;
    Coats& coats = by_method[draft->coat->method];
    for (const UnitStep& step : unit.steps) {
      if (step.id.find(".coat") == std::string::npos) continue;
      coats.uses.push_back({step.starts, step.ends, part_of(use.ready, 1.0 / std::max(1, use.coats))});
      coats.units.push_back(unit.unit);
    }
  }
  return by_method;
}

std::string use_by_words(const coating::Pot& pot, std::optional<Duration> pot_life) {
  if (!pot_life) return "it has no pot life, but solvent leaves an open pot overnight";
  const auto lives = std::chrono::duration<double>(pot.use_by - pot.mixed).count();
  return lives < pot_life->in(second)-1 ? "the day ends before its pot life does"
                                        : format("its pot life of {} h", fixed(pot_life->in(hour), 1));
}

Volume draw(records::Shelf& shelf, const std::string& item, Volume amount, Date day, MixedPot& pot) {
  const records::Drawn drawn = shelf.draw(amount, day);
  for (const records::Draw& share : drawn.draws) pot.lots.push_back({item, share.lot, share.amount});
  return drawn.missing;
}

MixedPot mixed_pot(const coating::Pot& pot, Method method, const Coats& coats, const PaintShop& paint) {
  const materials::Lacquer& lacquer = *paint.lacquer;
  MixedPot mixed;
  mixed.method = method;
  for (const std::size_t use : pot.uses) {
    const UnitId& unit = coats.units[use];
    if (std::find(mixed.units.begin(), mixed.units.end(), unit) == mixed.units.end())
      mixed.units.push_back(unit);
  }
  mixed.mix = pot.mixed;
  mixed.use_by = pot.use_by;
  mixed.use_by_because = use_by_words(pot, lacquer.pot_life);
  mixed.thinner_parts = coating::thinner_parts(lacquer, method);
  mixed.ready = pot.ready;
  mixed.lacquer = part_of(pot.ready, 1 / (1 + mixed.thinner_parts));
  mixed.thinner = part_of(pot.ready, mixed.thinner_parts / (1 + mixed.thinner_parts));
  mixed.non_volatile = coating::non_volatile(lacquer.solids_by_mass.value, lacquer.density.value,
                                             paint.thinner_density, mixed.thinner_parts);
  mixed.outlasted = pot.outlasted;
  return mixed;
}

}  // namespace

std::vector<MixedPot> mixing_report(const std::vector<UnitDraft>& units, const std::vector<UnitPlan>& told,
                                    const PaintShop& paint, const std::vector<records::StockLot>& stock,
                                    const WallClock& clock) {
  std::vector<MixedPot> mixed;
  for (const auto& [method, coats] : coats_of(units, told)) {
    for (const coating::Pot& pot : coating::pots(coats.uses, paint.lacquer->pot_life, clock)) {
      mixed.push_back(mixed_pot(pot, method, coats, paint));
    }
  }
  std::stable_sort(mixed.begin(), mixed.end(),
                   [](const MixedPot& a, const MixedPot& b) { return a.mix < b.mix; });
  records::Shelf lacquer(stock, paint.lacquer->id.text), thinner(stock, paint.lacquer->thinner);
  for (MixedPot& pot : mixed) {
    pot.id = format("M{}", &pot - mixed.data() + 1);
    const Date day(std::chrono::floor<std::chrono::days>(clock.local(pot.mix)));
    pot.missing = draw(lacquer, paint.lacquer->id.text, pot.lacquer.typical, day, pot);
    if (pot.thinner_parts > 0)
      pot.missing += draw(thinner, paint.lacquer->thinner, pot.thinner.typical, day, pot);
  }
  return mixed;
}

}  // namespace dampward::workbench
