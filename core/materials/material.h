#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/id.h"
#include "core/quantity/figure.h"
#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::materials {

// What "dry" can mean for a body of this material.
enum class Drying {
  surface,  // takes up little: dry when its surface is free of water
  porous,   // thin open paper, cotton, webbing, cones, cloth-covered wire: dries through in a shift
  deep,     // impregnated windings, wood, laminates, mouldings: stays damp inside after any bake of a shift
};

enum class MouldFood { inert, depends, nutrient };

// Which sorption isotherm stands for the material; `none` where it takes up next to nothing or nothing is known.
enum class Isotherm { none, wood, paper, bleached_fibre };

enum class OutBeforeBake { no, yes, depends };

// A diffusivity known at one temperature; the activation energy carries it to others (Arrhenius).
struct MoistureDiffusion {
  Figure<Diffusivity> diffusivity;
  Temperature at;
  Figure<MolarEnergy> activation_energy;
};

// The hottest a material may become, and how far below it a bake stays.
struct HeatLimit {
  Figure<Temperature> limit;  // low: the lowest figure for any common grade
  TemperatureStep margin;     // advised distance below the low figure
  std::string why;            // what happens above it
};

// One row of the materials table. Missing optionals are unknown, never zero and never safe.
struct Material {
  MaterialId id;
  std::string name;
  Drying drying = Drying::deep;
  std::optional<HeatLimit> heat_limit;
  std::optional<Figure<Density>> density;
  std::optional<Figure<SpecificHeat>> specific_heat;
  std::optional<Figure<ThermalConductivity>> conductivity;
  std::optional<Figure<double>> emissivity;  // 0 to 1, long wave
  std::optional<MoistureDiffusion> diffusion;
  Isotherm isotherm = Isotherm::none;
  MouldFood mould_food = MouldFood::depends;
  std::vector<std::string> attacked_by;  // solvent families
  OutBeforeBake out_before_bake = OutBeforeBake::depends;
  std::vector<MaterialId> stands_for;  // a kind of part: the plainer materials its figures come from
  std::string advice;
};

// True for the material's own id and for those it stands for: what attacks `acrylic` attacks an acrylic window.
bool counts_as(const Material& material, std::string_view id);

}  // namespace dampward::materials
