#include "workbench/detail/part_words.h"

namespace dampward::workbench {
namespace {

std::string target_word(equipment::DryTarget target) {
  switch (target) {
    case equipment::DryTarget::surface:
      return "surface";
    case equipment::DryTarget::porous:
      return "porous";
    case equipment::DryTarget::deep:
      return "deep";
  }
  return "";
}

std::string limit_source(const drying::OvenPiece& piece, const PartId& part) {
  for (const auto& candidate : piece.parts) {
    if (candidate.id == part && candidate.limit) return candidate.limit->source;
  }
  return "";
}

}  // namespace

PartInOven part_in_oven(const drying::PartBake& part, const UnitId& unit, const drying::OvenPiece& piece) {
  return {unit,
          part.part,
          part.name,
          part.peak,
          part.limit,
          limit_source(piece, part.part),
          target_word(part.target),
          part.asked,
          part.dryness == drying::Dryness::dry,
          part.residual,
          part.words};
}

}  // namespace dampward::workbench
