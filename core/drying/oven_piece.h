#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drying/diffusion.h"
#include "core/drying/lumped.h"
#include "core/drying/part_limit.h"
#include "core/equipment/kind.h"
#include "core/quantity/shares.h"

namespace dampward::drying {

// What "dry" asks of porous parts. Estimates, for the shop to change.
struct DryRules {
  double porous_residual = 0.10;  // of the removable moisture may be left
  RelativeHumidity driest_needed =
      RelativeHumidity::percent(40);  // the oven's air must get at least this dry
};

// How water leaves one part from the inside.
struct DryingBody {
  Shape shape = Shape::plate;
  Range<Length> path;  // L of the Fourier number
  materials::MoistureDiffusion diffusion;
  materials::Isotherm isotherm = materials::Isotherm::none;
  Area needed;       // ∫ D dt until the rule for porous parts is met, at typical thickness
  double layer = 1;  // share of the path, from the surface inwards, that is asked to dry; 1: all of it
  Mass fibre;        // what holds water in one unit's part; zero where no isotherm is known
};

// One part that stays in the oven.
struct OvenPart {
  PartId id;
  std::string name;
  std::optional<PartLimit> limit;  // none: among the piece's refusals
  equipment::DryTarget target = equipment::DryTarget::surface;
  bool asked = true;  // false: its inside is not waited for, only reported
  bool traps_damp = false;
  bool in_heavy_lump = false;
  std::optional<DryingBody> body;  // none: its material takes up little, or nothing is known
  std::string unknown;  // why its inside cannot be reckoned though its target asks for it; empty otherwise
};

// A kind of equipment as an oven sees it, worked out once for all its units.
struct OvenPiece {
  KindId kind;
  std::string name;
  std::vector<OvenPart> parts;
  std::vector<Refusal> refusals;  // parts nobody may heat
  Range<HeatCapacity> capacity;
  Area box;
  Length flow_length;
  bool opened = false;      // out of its case: the air reaches its heavy lump; else only its shell does
  Range<Area> wet_surface;  // that a wipe leaves damp
  std::optional<Range<Duration>> heavy_still, heavy_moving;
  std::optional<Range<HeatCapacity>> heavy_capacity;  // of its heavy lump, counted in `capacity` too

  Range<Duration> time_constant(AirMotion motion) const;
  const std::optional<Range<Duration>>& heavy_time_constant(AirMotion motion) const {
    return motion == AirMotion::still ? heavy_still : heavy_moving;
  }
  // The part that allows least; null where no part has a limit.
  const OvenPart* weakest() const;
};

// So many units of one kind in a load.
struct LoadUnits {
  const OvenPiece* piece = nullptr;
  int count = 1;
};

// Parts a usual route takes out before the oven: those to be removed, shields, and valves where the shop
// takes them out.
PartsOut usually_out(const equipment::Kind& kind, equipment::ValveChoice valves);

// What of a part's mass is fibre that holds water: all of it up to 1000 kg/m³, packed paper; in a denser part the share x
// that mixing with copper gives, 1/ρ = x/1000 + (1 − x)/8900. An estimate; weighing one dry and damp settles it.
double fibre_share(Density density);

// `out` names the parts that are not in the oven; a route may take out more or fewer than usual.
OvenPiece oven_piece(const equipment::Kind& kind, const PartsOut& out, const MaterialTable& materials,
                     const DryRules& rules = {});

// Adds a thing that goes along into the oven, such as masking tape, with its own limit.
void send_along(OvenPiece& piece, std::string name, PartLimit limit);

}  // namespace dampward::drying
