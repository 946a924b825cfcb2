#include "workbench/detail/ladder_candidates.h"

#include <algorithm>

#include "workbench/detail/ladder_moves.h"

namespace dampward::workbench {
namespace {

void hours_and_hands(const shop::Shop& shop, moves::Candidates& all) {
  moves::more_lamps(shop, all);
  moves::hotter_settings(shop, all);
  moves::longer_shifts(shop, "", all);
  moves::longer_power(shop, all);
  moves::second_of_each(shop, all);
}

void less_vapour(const Workshop& workshop, moves::Candidates& all) {
  moves::thin_less(workshop, all);
  moves::smaller_nozzles(workshop.shop, all);
  moves::more_air(workshop.shop.spray, all);
  moves::other_lacquers(workshop, all);
}

void ways_to_coat(const Workshop& workshop, moves::Candidates& all) {
  const auto& guns = workshop.shop.guns;
  const bool brush = std::any_of(guns.begin(), guns.end(),
                                 [](const shop::Gun& gun) { return gun.kind == shop::GunKind::brush; });
  if (!brush) {
    all.push_back(
        {"brush",
         {{"guns.more_brush", "{ kind = \"brush\", efficiency = \"85..90..95 %\", rate = \"0.02 L/min\" }"}},
         "a flat brush",
         shop::Cost::brush});
  }
  moves::more_hands(workshop.shop, "brush", all);
  moves::more_hands(workshop.shop, "spray", all);
  moves::other_lacquers(workshop, all);
}

}  // namespace

std::vector<Candidate> ladder_candidates(const Refusal& refusal, const Workshop& workshop) {
  const shop::Shop& shop = workshop.shop;
  moves::Candidates all;
  switch (refusal.rule) {
    case Rule::isolation:           // only a licensed hand opens it
    case Rule::contradicting_gaps:  // no shop keeps both
    case Rule::stopped:
      break;
    case Rule::limit_unknown:
    case Rule::room_above_limit:
      moves::measure_part(refusal, workshop, all);
      break;
    case Rule::heat_near_solvent:
      moves::move_heat(shop.spray, all);
      break;
    case Rule::way_out:
      all.push_back({"way out",
                     {{"spray.ways_out", "2"}},
                     "two clear ways out, doors that open outward",
                     shop::Cost::way_out});
      break;
    case Rule::watcher:
      all.push_back({"moving",
                     {{"spray.kind", "\"room\""}},
                     "work in a room instead of a small closed space",
                     shop::Cost::moving});
      moves::more_hands(shop, "mark", all);
      break;
    case Rule::solvents_unknown:
    case Rule::isocyanate:
      moves::other_lacquers(workshop, all);
      break;
    case Rule::coating_method:
      ways_to_coat(workshop, all);
      break;
    case Rule::cleaner:
      moves::add_cleaners(workshop, refusal.what, all);
      break;
    case Rule::vapour_share:
    case Rule::vapour_over_time:
    case Rule::respirator:
      less_vapour(workshop, all);
      break;
    case Rule::warm_window:
      moves::drier_air(shop.spray, all);
      moves::other_lacquers(workshop, all);
      break;
    case Rule::longest_gap:
      hours_and_hands(shop, all);
      moves::drier_air(shop.spray, all);
      moves::other_lacquers(workshop, all);
      break;
    case Rule::lifting:
      moves::lifting_aid(shop, all);
      moves::more_hands(shop, "oven", all);
      break;
    case Rule::skill:
      moves::more_hands(shop, refusal.what, all);
      break;
    case Rule::shift:
      moves::longer_shifts(shop, refusal.what, all);
      moves::more_hands(shop, refusal.what, all);
      break;
    case Rule::watch:
      moves::more_lamps(shop, all);
      moves::hotter_settings(shop, all);
      moves::longer_shifts(shop, "oven", all);
      moves::longer_power(shop, all);
      moves::more_hands(shop, "oven", all);
      break;
    case Rule::station:
      moves::more_stations(shop, refusal.what, all);
      break;
    case Rule::power:
      moves::stronger_supply(shop, all);
      break;
    case Rule::horizon:
      hours_and_hands(shop, all);
      break;
  }
  return all;
}

}  // namespace dampward::workbench
