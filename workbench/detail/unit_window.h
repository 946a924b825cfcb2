#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/coating/warm_window.h"
#include "core/drying/regain.h"
#include "workbench/detail/coat_case.h"
#include "workbench/detail/load_drafts.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// Where no part is known that takes damp back slowly, it still goes back into what nobody described: the last flash ends within
// this time of opening. An estimate: a 1.6 mm laminate takes back an eighth of its equilibrium water in 4 h at 30 °C.
inline constexpr Duration regain_allows = 4 * hour;
inline constexpr const char* undescribed_parts = "slow parts nobody described";
// A part of which a tenth is back sooner than this gates nothing, for nobody has a unit coated so soon: thin paper and cotton. An
// estimate of the quickest crew.
inline constexpr Duration hurry_helps = 30 * minute;
// How far regain is reckoned.
inline constexpr Duration regain_horizon = 24 * hour;

// Damp on its way back into one part that was dried.
struct PartRegain {
  PartId part;
  std::string name;
  bool gates = false;     // slow enough that hurry helps: the window ends before too much is back
  drying::Regain course;  // from leaving the oven
};

// All that decides the window of one unit.
struct WindowCase {
  std::vector<coating::Surface> surfaces;
  coating::ShopAir air;
  coating::WindowRules rules;
  coating::CoatingWork work;
  std::vector<PartRegain> regains;       // parts that were asked to dry inside
  Duration undescribed = regain_allows;  // from opening on, where none of them gates

  coating::WarmWindow window() const;
};

// Of a unit from this load, or with none of a unit as warm as the room.
WindowCase window_case(const KindCase& kind, const LoadDraft* load, const CoatCase& coat,
                       const PaintShop& paint, const RulingAir& air);

// The surfaces that decide: the heaviest lump as it leaves the hottest place, cooling as slowly as it may in the warmest air;
// and the set as a whole from the coolest place, cooling as fast as it may in the coolest.
std::vector<coating::Surface> cooling_surfaces(const drying::PieceBake& piece, Temperature hottest,
                                               Temperature coldest, const RulingAir& air);

const drying::PieceBake& piece_in(const drying::BakePlan& bake, const KindId& kind);

// How long a load may wait in the stepped-down oven: until half of what may come back into a slow part is back.
Duration longest_held(const drying::BakePlan& bake, const drying::StepDown& down,
                      const std::vector<const KindCase*>& kinds);

}  // namespace dampward::workbench
