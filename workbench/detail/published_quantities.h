#pragma once

#include <span>
#include <string_view>

#include "workbench/detail/published_inputs.h"

namespace dampward::workbench {

// A quantity that published tables print, asked of the program's own model: no formula stands here, only
// calls.
struct PublishedQuantity {
  std::string_view name;     // as in data/published
  std::string_view meaning;  // for docs/validation.md
  double (*compute)(PublishedInputs& inputs);
};

std::span<const PublishedQuantity> moist_air_quantities();
std::span<const PublishedQuantity> drying_quantities();
std::span<const PublishedQuantity> coating_quantities();
std::span<const PublishedQuantity> room_air_quantities();
std::span<const PublishedQuantity> material_quantities();
std::span<const PublishedQuantity> exposure_quantities();

// The quantity of this name, or null.
const PublishedQuantity* find_quantity(std::string_view name);

}  // namespace dampward::workbench
