#pragma once

#include <optional>
#include <vector>

#include "core/drying/wall.h"
#include "core/equipment/kind.h"
#include "core/exposure/climate.h"
#include "core/hazards/hazard.h"
#include "core/materials/table.h"
#include "core/shop/shop.h"

namespace dampward::workbench {

using KindTable = materials::Table<equipment::Kind>;
using WallTable = materials::Table<drying::Wall>;

// Everything a plan rests on beside the daily records: the shop as its lead describes it, joined with the shipped tables.
struct Workshop {
  shop::Shop shop;
  materials::MaterialTable materials;  // shipped ones and the shop's own
  materials::SolventTable solvents;
  materials::LacquerTable lacquers;  // shipped families and the shop's own
  materials::LiquidTable thinners;   // every shipped liquid and the shop's own thinners
  materials::LiquidTable cleaners;   // only those the shop names
  KindTable kinds;                   // archetypes and the shop's own
  std::vector<hazards::Hazard> hazards;
  WallTable walls;                           // oven constructions
  std::optional<exposure::Climate> climate;  // of the weather file the site names; none: it names none
};

}  // namespace dampward::workbench
