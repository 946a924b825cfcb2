#pragma once

#include <string>

#include "core/quantity/figure.h"
#include "core/quantity/quantity.h"

namespace dampward::drying {

// How an oven's walls are built: one row of data/ovens/walls.csv.
struct Wall {
  std::string id;  // bare_steel, insulated_25mm, insulated_50mm, brick, wood_lined
  std::string name;
  Figure<HeatTransferCoefficient> loss;  // from the air inside to the room, per area of inner wall
};

}  // namespace dampward::drying
