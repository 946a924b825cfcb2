#pragma once

#include <array>
#include <optional>

#include "core/equipment/kind.h"
#include "core/materials/table.h"

namespace dampward::workbench {

// A thing to be dried, told in a few figures: mostly iron, and one part that matters.
// Promise: sizes and masses above zero, a material of the table.
struct SimpleBody {
  Mass mass;
  std::array<Length, 3> box;
  MaterialId part;
  Mass part_mass;
  equipment::Shape shape = equipment::Shape::plate;
  Range<Length> thickness;           // plate: full thickness, open on both faces; cylinder, sphere: diameter
  std::optional<Temperature> limit;  // none: the material's own; else the lower of both
  std::optional<TemperatureStep> margin;  // below that limit; none: that of a doubtful figure
};

// The body as a kind of equipment. Its iron counts as steel: most of a set's mass is (estimate).
equipment::Kind simple_kind(const SimpleBody& body, const materials::MaterialTable& materials);

}  // namespace dampward::workbench
