#include "adapters/files/detail/part_reader.h"

#include <algorithm>
#include <cmath>

#include "adapters/files/words.h"
#include "core/base/format.h"

namespace dampward::files::detail {
namespace {

using equipment::Cut;
using equipment::CutShape;
using equipment::DryTarget;
using equipment::GivenLimit;
using equipment::Part;
using equipment::Shape;
using equipment::Treatment;

constexpr Word<Shape> shape_words[] = {
    {"none", Shape::none}, {"plate", Shape::plate}, {"cylinder", Shape::cylinder}, {"sphere", Shape::sphere}};
constexpr Word<Treatment> treatment_words[] = {{"spray", Treatment::spray},
                                               {"brush", Treatment::brush},
                                               {"bare", Treatment::bare},
                                               {"mask", Treatment::mask},
                                               {"remove", Treatment::remove}};
constexpr Word<CutShape> cut_words[] = {{"disc", CutShape::disc},
                                        {"ring", CutShape::ring},
                                        {"rectangle", CutShape::rectangle},
                                        {"strip", CutShape::strip}};
constexpr Word<DryTarget> dry_words[] = {
    {"surface", DryTarget::surface}, {"porous", DryTarget::porous}, {"deep", DryTarget::deep}};

void read_materials_of(TableReader& table, Part& part, const PartVocabulary& words) {
  if (table.has("material") && table.has("materials")) {
    table.fault("materials", "beside material",
                "one of the two: material for the one it is, materials for all it may be");
  }
  if (const auto one = table.known_text("material", words.material_ids, "material"))
    part.materials = {MaterialId(*one)};
  for (std::string& id : table.known_texts("materials", words.material_ids, "material")) {
    part.materials.emplace_back(std::move(id));
  }
}

void read_geometry(TableReader& table, Part& part, const Pedigree& pedigree) {
  part.shape = table.choice("shape", shape_words).value_or(Shape::none);
  if (const auto thickness = table.range<Length>("thickness")) {
    part.thickness = pedigree.figure(*thickness, "thickness");
  } else if (part.shape != Shape::none && !table.has("thickness")) {
    table.missing("thickness", "\"2..3..4 mm\", through which water leaves");
  }
  part.open_faces = table.whole("faces", 1, 2).value_or(0);
  if (part.shape == Shape::plate && !table.has("faces"))
    table.missing("faces", "1 or 2 faces water leaves through");
}

void read_given_limit(TableReader& table, Part& part, const PartVocabulary& words, const Pedigree& pedigree) {
  const auto limit = table.quantity<Temperature>("limit");
  const auto margin = table.quantity<TemperatureStep>("margin");
  const auto source = table.text("limit_source");
  if (!limit) {
    for (const char* key : {"margin", "limit_source"}) {
      if (table.has(key) && !table.has("limit"))
        table.fault(key, "without a limit", "limit = \"58 °C\" beside it");
    }
    return;
  }
  GivenLimit given;
  given.limit = *limit;
  given.margin = margin;
  const bool has_source = source && !source->empty();
  given.mark = pedigree.mark_of("limit").value_or(has_source ? Mark::measured : Mark::doubtful);
  given.source = has_source ? *source : pedigree.source();
  if (given.mark != Mark::measured) {
    for (const MaterialId& id : part.materials) {
      const materials::Material* material = words.materials.find(id);
      if (material == nullptr || !material->heat_limit) continue;
      const Temperature usual = material->heat_limit->limit.value.typical;
      if (given.limit > usual + 30 * kelvin) {
        table.fault("limit",
                    format("far above the {} °C at which {} usually fails", fixed(usual.celsius(), 0),
                           material->name),
                    "a lower limit, or limit_source = how it was measured", "");
      }
    }
  }
  part.limit = given;
}

// cut = { shape = "ring", size = "30 mm", width = "12 mm", count = 4, material = "card" }
void read_cut(TableReader& table, Part& part) {
  const TomlNode* node = table.table("cut");
  if (node == nullptr) return;
  TableReader reader(*node, "cut of " + table.name(), table.proof());
  Cut cut;
  if (!reader.has("shape")) reader.missing("shape", "disc, ring, rectangle or strip");
  cut.shape = reader.choice("shape", cut_words).value_or(CutShape::rectangle);
  const auto size = reader.needed_size<Length>("size");
  if (cut.shape != CutShape::disc) {
    const auto width = reader.needed_size<Length>("width");
    if (size && width && *width > *size)
      reader.fault("width", "more than its size", "the shorter side, or what a ring's hole is across");
    if (size && width && cut.shape == CutShape::ring && *width >= *size)
      reader.fault("width", "a hole as large as the ring", "a hole smaller than the ring is across");
    cut.width = width.value_or(Length{});
  }
  cut.size = size.value_or(Length{});
  const double each = part.count.value.typical;
  cut.count = reader.whole("count", 1, 999).value_or(std::max(1, static_cast<int>(std::ceil(each))));
  cut.material = reader.needed_text("material");
  cut.measured = reader.truth("measured", false);
  reader.finish();
  part.cut = std::move(cut);
}

}  // namespace

Pedigree::Pedigree(TableReader& table)
    : source_(table.text_or("source", "")), settle_(table.text_or("settle", "")) {
  const TomlNode* marks = table.table("marks");
  if (marks == nullptr) return;
  TableReader reader(*marks, "marks of " + table.name(), table.proof());
  for (const TomlNode& item : marks->items) {
    if (const auto mark = reader.choice(item.key, mark_words)) marks_.emplace_back(item.key, *mark);
  }
}

std::optional<Mark> Pedigree::mark_of(std::string_view key) const {
  const auto found =
      std::find_if(marks_.begin(), marks_.end(), [&](const auto& mark) { return mark.first == key; });
  return found == marks_.end() ? std::nullopt : std::optional(found->second);
}

Part read_part(const TomlNode& node, const std::string& kind, const PartVocabulary& words, Proof& proof) {
  TableReader table(node, format("[kinds.{}.parts.{}]", kind, node.key), proof);
  const Pedigree pedigree(table);
  Part part;
  part.id = PartId(node.key);
  part.name = table.text_or("name", node.key);
  read_materials_of(table, part, words);
  part.count = pedigree.figure(table.range<double>("count").value_or(Range<double>(1)), "count");
  part.mass_each = pedigree.figure(table.needed_range<Mass>("mass").value_or(Range<Mass>{}), "mass");
  read_geometry(table, part, pedigree);
  read_given_limit(table, part, words, pedigree);
  part.dry_target = table.choice("dry", dry_words);
  part.dry_depth = table.quantity<Length>("dry_depth");
  if (part.dry_depth && (part.shape != Shape::plate || *part.dry_depth <= Length{})) {
    table.fault("dry_depth", "not a depth above zero in a plate",
                "shape = \"plate\" with its thickness, or dry = \"deep\" for the whole part");
  }
  part.traps_damp = table.truth("damp", false);
  if (!table.has("treatment")) table.missing("treatment", "spray, brush, bare, mask or remove");
  part.treatment = table.choice("treatment", treatment_words).value_or(Treatment::bare);
  part.mask = table.texts("mask");
  read_cut(table, part);
  part.tighten = table.text_or("tighten", "");
  part.loosen = table.text_or("loosen", "");
  part.touch_up = table.text_or("touch_up", "");
  part.shield = table.truth("shield", false);
  part.valve = table.truth("valve", false);
  part.carrying = table.truth("carrying", false);
  for (std::string& id : table.known_texts("hazards", words.hazard_ids, "hazard"))
    part.hazards.emplace_back(std::move(id));
  part.note = table.text_or("note", "");
  table.finish();
  return part;
}

}  // namespace dampward::files::detail
