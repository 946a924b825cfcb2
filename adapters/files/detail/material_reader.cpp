#include <algorithm>

#include "adapters/files/detail/shop_readers.h"
#include "adapters/files/table_reader.h"
#include "adapters/files/words.h"
#include "core/base/format.h"
#include "core/drying/part_limit.h"

namespace dampward::files::detail {
namespace {

using materials::HeatLimit;
using materials::Material;

// A figure the shop gives itself: one value counts as measured, a range as an estimate.
template <class T>
Figure<T> own_figure(const Range<T>& range) {
  return {range, range.exact() ? Mark::measured : Mark::estimate, "the shop's own figure", ""};
}

void read_limit(TableReader& table, Material& material) {
  const auto limit = table.range<Temperature>("limit");
  const auto source = table.text("limit_source");
  const auto margin = table.quantity<TemperatureStep>("margin");
  const auto why = table.text("why");
  if (limit) {
    const Mark mark = source && !source->empty() ? Mark::measured : Mark::doubtful;
    const std::string known_why = material.heat_limit ? material.heat_limit->why : "";
    material.heat_limit =
        HeatLimit{{*limit, mark, source.value_or("the shop's own figure, without a source"), ""},
                  drying::default_margin(mark),
                  known_why};
  } else if (source) {
    table.fault("limit_source", "without a limit", "limit = \"58 °C\" beside it");
  }
  if (margin && material.heat_limit) material.heat_limit->margin = *margin;
  if (margin && !material.heat_limit && !table.has("limit")) {
    table.fault("margin", "without a limit", "limit = \"58 °C\" beside it");
  }
  if (why && material.heat_limit) material.heat_limit->why = *why;
}

Material read_material(const TomlNode& node, const materials::MaterialTable& known, Proof& proof) {
  TableReader table(node, format("[materials.{}]", node.key), proof);
  Material material;
  if (const auto like = table.known_text("like", known.ids(), "material")) {
    material = *known.find(*like);
    if (std::find(material.stands_for.begin(), material.stands_for.end(), material.id) ==
        material.stands_for.end()) {
      material.stands_for.push_back(material.id);
    }
  } else if (!table.has("like") && !table.has("dries")) {
    table.missing("dries", "surface, porous or deep, or like = a known material");
  }
  material.id = MaterialId(node.key);
  material.name = table.text_or("name", node.key);
  if (const auto dries = table.choice("dries", drying_words)) material.drying = *dries;
  read_limit(table, material);
  if (const auto density = table.range<Density>("density")) material.density = own_figure(*density);
  if (const auto isotherm = table.choice("isotherm", isotherm_words)) material.isotherm = *isotherm;
  if (const auto mould = table.choice("mould", mould_words)) material.mould_food = *mould;
  if (table.has("attacked_by")) material.attacked_by = table.texts("attacked_by");
  table.node("attacked_by");
  if (const auto out = table.choice("out_before_bake", out_before_bake_words))
    material.out_before_bake = *out;
  if (const auto advice = table.text("advice")) material.advice = *advice;
  table.finish();
  return material;
}

}  // namespace

void read_own_materials(const ShopDocument& document, materials::MaterialTable& table, Proof& proof) {
  for (const TomlNode* node : document.entries("materials", proof))
    table.put(read_material(*node, table, proof));
}

}  // namespace dampward::files::detail
