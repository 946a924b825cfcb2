#include "core/drying/lumped.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>

#include "core/drying/correlations.h"

namespace dampward::drying {
namespace {

constexpr Temperature typical_surface = Temperature::celsius(42), typical_air = Temperature::celsius(62);
constexpr Range<double> emissivity = {0.2, 0.7, 0.92};
constexpr Range<Speed> stream = {0.7 * metre_per_second, 1.5 * metre_per_second, 3 * metre_per_second};
constexpr Range<double> stirred = {1, 1.3, 1.6};
constexpr double mass_spread = 1.25, area_spread = 1.3;
constexpr Range<SpecificHeat> unknown_heat = {
    600 * joule_per_kilogram_kelvin, 1300 * joule_per_kilogram_kelvin, 2000 * joule_per_kilogram_kelvin};
constexpr Density unknown_density =
    8900 * kilogram_per_cubic_metre;  // copper: the smallest, so the slowest lump

HeatTransferCoefficient radiation(double emits) {
  return radiation_coefficient(emits, Temperature::celsius(52), Temperature::celsius(52));
}

// Combined spread of independent factors.
double combined(std::initializer_list<double> factors) {
  double sum = 0;
  for (const double factor : factors) sum += std::log(factor) * std::log(factor);
  return std::exp(std::sqrt(sum));
}

const materials::Material* first_material(const equipment::Part& part, const MaterialTable& materials) {
  return part.materials.empty() ? nullptr : materials.find(part.materials.front());
}

Mass total_mass(const equipment::Part& part) {
  return part.count.value.typical * part.mass_each.value.typical;
}

Range<HeatCapacity> part_capacity(const equipment::Part& part, const MaterialTable& materials) {
  const materials::Material* row = first_material(part, materials);
  const Range<SpecificHeat> heat = row && row->specific_heat ? row->specific_heat->value : unknown_heat;
  const Mass mass = total_mass(part);
  return {mass * heat.low, mass * heat.typical, mass * heat.high};
}

// `sum` holds the spread of specific heats only; the common spread of masses comes on top.
Range<HeatCapacity> with_mass_spread(const Range<HeatCapacity>& sum) {
  if (sum.typical <= HeatCapacity{}) return sum;
  return {sum.typical / combined({mass_spread, sum.typical / sum.low}), sum.typical,
          sum.typical * combined({mass_spread, sum.high / sum.typical})};
}

void add(Range<HeatCapacity>& sum, const Range<HeatCapacity>& part) {
  sum.low += part.low, sum.typical += part.typical, sum.high += part.high;
}

struct HeavyLump {
  Range<HeatCapacity> capacity;
  Volume volume;
};

std::optional<HeavyLump> heavy_lump(const equipment::Kind& kind, const PartsOut& out,
                                    const MaterialTable& materials) {
  Range<HeatCapacity> sum;
  Volume volume;
  for (const PartId& id : kind.heavy_lump) {
    const equipment::Part* part = equipment::find_part(kind, id);
    if (!part || out.contains(id)) continue;
    const materials::Material* row = first_material(*part, materials);
    volume += total_mass(*part) / (row && row->density ? row->density->value.typical : unknown_density);
    add(sum, part_capacity(*part, materials));
  }
  if (volume <= Volume{}) return std::nullopt;
  return HeavyLump{with_mass_spread(sum), volume};
}

}  // namespace

Length flow_length(const equipment::Kind& kind) {
  std::array sides = {kind.length.value.typical, kind.width.value.typical, kind.height.value.typical};
  std::sort(sides.begin(), sides.end());
  return sides[1];
}

Range<HeatTransferCoefficient> unit_coefficient(Length flow_length, AirMotion motion) {
  if (motion == AirMotion::still) {
    const HeatTransferCoefficient convection = natural_convection(typical_surface, typical_air, flow_length);
    return {convection + radiation(emissivity.low), convection + radiation(emissivity.typical),
            convection + radiation(emissivity.high)};
  }
  const auto at = [&](Speed speed, double factor, double emits) {
    return factor * forced_convection(typical_surface, typical_air, speed, flow_length) + radiation(emits);
  };
  return {at(stream.low, stirred.low, emissivity.low),
          at(stream.typical, stirred.typical, emissivity.typical),
          at(stream.high, stirred.high, emissivity.high)};
}

Range<HeatCapacity> heat_capacity(const equipment::Kind& kind, const PartsOut& out,
                                  const MaterialTable& materials) {
  Range<HeatCapacity> sum;
  for (const equipment::Part& part : kind.parts) {
    if (!out.contains(part.id)) add(sum, part_capacity(part, materials));
  }
  return with_mass_spread(sum);
}

Range<Duration> time_constant(const Range<HeatCapacity>& capacity, Area area,
                              const Range<HeatTransferCoefficient>& h) {
  const Duration typical = capacity.typical / (h.typical * area);
  if (typical <= Duration{}) return typical;
  return {typical / combined({capacity.typical / capacity.low, h.high / h.typical, area_spread}), typical,
          typical * combined({capacity.high / capacity.typical, h.typical / h.low, area_spread})};
}

std::optional<Range<HeatCapacity>> heavy_lump_capacity(const equipment::Kind& kind, const PartsOut& out,
                                                       const MaterialTable& materials) {
  const auto lump = heavy_lump(kind, out, materials);
  return lump ? std::optional(lump->capacity) : std::nullopt;
}

std::optional<Range<Duration>> heavy_lump_time_constant(const equipment::Kind& kind, const PartsOut& out,
                                                        const MaterialTable& materials, AirMotion motion) {
  const auto lump = heavy_lump(kind, out, materials);
  if (!lump) return std::nullopt;
  const Length side = std::cbrt(lump->volume.si()) * metre;
  return time_constant(lump->capacity, 6 * (side * side), unit_coefficient(side, motion));
}

Temperature lumped_temperature(Temperature start, Temperature air, Duration time_constant, Duration time) {
  return air + std::exp(-(time / time_constant)) * (start - air);
}

}  // namespace dampward::drying
