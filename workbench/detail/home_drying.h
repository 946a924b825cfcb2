#pragma once

#include <optional>

#include "core/drying/oven_piece.h"
#include "core/moist_air/humid_air.h"
#include "core/route/worklists.h"
#include "workbench/detail/home_heat.h"
#include "workbench/rule.h"

namespace dampward::workbench {

// One set at home, with all that is known of it.
struct HomeSet {
  const equipment::Kind& kind;
  const LeafletQuestion& question;
  Workshop workshop;
  const materials::Lacquer& lacquer;
  route::Worklists lists;
  drying::OvenPiece piece;
  Pressure pressure = moist_air::sea_level_pressure;

  moist_air::HumidAir air() const { return {question.air, question.humidity, pressure}; }
};

// Box, heat and hours of the set, and how warm it then may be. A barrier where no safe box and heat are to be had.
std::optional<Barrier> dry_at_home(HomeDrying& drying, HomeWarmth& now, const HomeSet& set);

}  // namespace dampward::workbench
