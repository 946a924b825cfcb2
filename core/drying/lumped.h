#pragma once

#include <set>

#include "core/drying/part_limit.h"
#include "core/equipment/kind.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"

namespace dampward::drying {

enum class AirMotion { still, moving };

// The length its surface heat transfer is reckoned with: the middle one of the box's three sides.
Length flow_length(const equipment::Kind& kind);

// Heat transfer between a unit of this flow length and the air and walls around it, near 52 °C with a
// difference of 20 K.
//   still   Churchill-Chu, plus radiation with emissivity 0.2, 0.7, 0.92 (bright, mixed, painted)
//   moving  Churchill-Ozoe at 0.7, 1.5, 3 m/s times 1, 1.3, 1.6 for a stirred stream, plus the same radiation
// Ranges are estimates; a thermocouple and a stopwatch settle them.
Range<HeatTransferCoefficient> unit_coefficient(Length flow_length, AirMotion motion);

// Parts that are not in the oven, by id.
using PartsOut = std::set<PartId>;

// Σ m cp over the parts in the oven. Masses are taken within a factor 1.25 together, specific heats within
// their ranges; a material without a specific heat counts as 600 … 1300 … 2000 J/(kg K), from copper-like to
// damp wood.
Range<HeatCapacity> heat_capacity(const equipment::Kind& kind, const PartsOut& out,
                                  const MaterialTable& materials);

// τ = C/(h A). The box area is taken within a factor 1.3; the ends combine the spreads of C, h and A as
// independent: ln(τ_end/τ) = √(Σ ln² of each spread).
Range<Duration> time_constant(const Range<HeatCapacity>& capacity, Area area,
                              const Range<HeatTransferCoefficient>& h);

// Σ m cp of the heavy lump in the oven, as `heat_capacity`. Without one: nothing.
std::optional<Range<HeatCapacity>> heavy_lump_capacity(const equipment::Kind& kind, const PartsOut& out,
                                                       const MaterialTable& materials);

// The part of a unit that warms and cools last: its heavy lump as one cube of its mass and mean density, all
// faces free. The record thermometer belongs on it. Without a heavy lump in the oven: nothing.
std::optional<Range<Duration>> heavy_lump_time_constant(const equipment::Kind& kind, const PartsOut& out,
                                                        const MaterialTable& materials, AirMotion motion);

// A body of one temperature after time t in air of another. Good while the Biot number h (V/A)/k is below
// 0.1.
//   T = Ta + (T0 − Ta) exp(−t/τ)
Temperature lumped_temperature(Temperature start, Temperature air, Duration time_constant, Duration time);

}  // namespace dampward::drying
