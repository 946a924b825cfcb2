#include "core/drying/oven_piece.h"

#include <algorithm>

#include "core/base/format.h"

namespace dampward::drying {
namespace {

using equipment::DryTarget;

DryTarget target_of(const materials::Material& material) {
  switch (material.drying) {
    case materials::Drying::surface:
      return DryTarget::surface;
    case materials::Drying::porous:
      return DryTarget::porous;
    case materials::Drying::deep:
      break;
  }
  return DryTarget::deep;
}

// The plausible material that asks most: porous before deep before surface, then the slowest.
const materials::Material* neediest(const equipment::Part& part, const MaterialTable& materials) {
  const auto rank = [](const materials::Material& row) {
    return row.drying == materials::Drying::porous ? 2 : row.drying == materials::Drying::deep ? 1 : 0;
  };
  const materials::Material* worst = nullptr;
  for (const MaterialId& id : part.materials) {
    const materials::Material* row = materials.find(id);
    if (!row) continue;
    const bool slower =
        worst && row->diffusion && worst->diffusion && rank(*row) == rank(*worst) &&
        row->diffusion->diffusivity.value.typical < worst->diffusion->diffusivity.value.typical;
    if (!worst || rank(*row) > rank(*worst) || slower) worst = row;
  }
  return worst;
}

std::optional<DryingBody> body_of(const equipment::Part& part, const materials::Material& material,
                                  const DryRules& rules) {
  if (part.shape == Shape::none || !material.diffusion || part.thickness.value.low <= Length{})
    return std::nullopt;
  if (part.shape == Shape::plate && part.open_faces < 1) return std::nullopt;
  const auto path = [&](Length thickness) { return path_length(part.shape, thickness, part.open_faces); };
  const Range<Length>& thickness = part.thickness.value;
  DryingBody body;
  body.shape = part.shape;
  body.path = {path(thickness.low), path(thickness.typical), path(thickness.high)};
  body.diffusion = *material.diffusion;
  body.isotherm = material.isotherm;
  if (part.shape == Shape::plate && part.dry_depth && *part.dry_depth < body.path.typical)
    body.layer = *part.dry_depth / body.path.typical;
  body.needed = fourier_for_residual_of_layer(part.shape, body.layer, rules.porous_residual) *
                (body.path.typical * body.path.typical);
  if (material.isotherm != materials::Isotherm::none && material.density) {
    const Mass all = part.count.value.typical * part.mass_each.value.typical;
    body.fibre = fibre_share(material.density->value.typical) * all;
  }
  return body;
}

std::string why_unknown(const equipment::Part& part, const materials::Material* material) {
  if (!material) return format("nobody knows what \"{}\" is made of", part.name);
  if (!material->diffusion) return format("no figure is known for how fast water leaves {}", material->name);
  return format("\"{}\" has no shape and thickness to reckon with", part.name);
}

OvenPart oven_part(const equipment::Part& part, const equipment::Kind& kind, const MaterialTable& materials,
                   const DryRules& rules) {
  const materials::Material* row = neediest(part, materials);
  OvenPart answer;
  answer.id = part.id;
  answer.name = part.name;
  answer.traps_damp = part.traps_damp;
  answer.in_heavy_lump =
      std::find(kind.heavy_lump.begin(), kind.heavy_lump.end(), part.id) != kind.heavy_lump.end();
  answer.target = part.dry_target.value_or(row ? target_of(*row) : DryTarget::deep);
  answer.asked =
      part.dry_target.has_value() || part.dry_depth.has_value() || answer.target != DryTarget::deep;
  if (answer.target == DryTarget::surface) return answer;
  if (row) answer.body = body_of(part, *row, rules);
  if (!answer.body) answer.unknown = why_unknown(part, row);
  return answer;
}

}  // namespace

Range<Duration> OvenPiece::time_constant(AirMotion motion) const {
  return drying::time_constant(capacity, box, unit_coefficient(flow_length, motion));
}

const OvenPart* OvenPiece::weakest() const {
  const OvenPart* answer = nullptr;
  for (const OvenPart& part : parts) {
    if (part.limit && (!answer || part.limit->allowed() < answer->limit->allowed())) answer = &part;
  }
  return answer;
}

PartsOut usually_out(const equipment::Kind& kind, equipment::ValveChoice valves) {
  PartsOut out;
  for (const equipment::Part& part : kind.parts) {
    const bool valve_out = part.valve && valves == equipment::ValveChoice::come_out;
    if (part.treatment == equipment::Treatment::remove || part.shield || valve_out) out.insert(part.id);
  }
  return out;
}

double fibre_share(Density density) {
  constexpr Density packed = 1000 * kilogram_per_cubic_metre, copper = 8900 * kilogram_per_cubic_metre;
  return std::clamp((1 / density - 1 / copper) / (1 / packed - 1 / copper), 0.0, 1.0);
}

OvenPiece oven_piece(const equipment::Kind& kind, const PartsOut& out, const MaterialTable& materials,
                     const DryRules& rules) {
  OvenPiece piece;
  piece.kind = kind.id;
  piece.name = kind.name;
  piece.capacity = heat_capacity(kind, out, materials);
  piece.box = equipment::outer_area(kind);
  piece.flow_length = flow_length(kind);
  piece.opened = kind.usual_way == equipment::CoatingWay::spray_stripped;
  piece.wet_surface = kind.usual_way == equipment::CoatingWay::spray_stripped
                          ? kind.spray_area_stripped.value
                          : kind.spray_area_assembled.value;
  if (piece.wet_surface.typical <= Area{}) piece.wet_surface = piece.box;  // not stated: the box itself
  piece.heavy_still = heavy_lump_time_constant(kind, out, materials, AirMotion::still);
  piece.heavy_capacity = heavy_lump_capacity(kind, out, materials);
  piece.heavy_moving = heavy_lump_time_constant(kind, out, materials, AirMotion::moving);
  for (const equipment::Part& part : kind.parts) {
    if (out.contains(part.id)) continue;
    OvenPart entry = oven_part(part, kind, materials, rules);
    std::variant<PartLimit, Refusal> limit = resolve_limit(part, materials);
    if (auto* known = std::get_if<PartLimit>(&limit)) {
      entry.limit = std::move(*known);
    } else {
      piece.refusals.push_back(std::get<Refusal>(std::move(limit)));
    }
    piece.parts.push_back(std::move(entry));
  }
  if (piece.parts.empty()) {
    piece.refusals.push_back(
        {{}, format("nothing of \"{}\" stays for the oven", kind.name), "say which parts stay in it"});
  }
  return piece;
}

void send_along(OvenPiece& piece, std::string name, PartLimit limit) {
  OvenPart extra;
  extra.id = limit.part;
  extra.name = std::move(name);
  extra.limit = std::move(limit);
  piece.parts.push_back(std::move(extra));
}

}  // namespace dampward::drying
