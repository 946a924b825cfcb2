#include "adapters/files/detail/shop_readers.h"
#include "adapters/files/table_reader.h"
#include "core/base/format.h"

namespace dampward::files::detail {

void read_costs(const ShopDocument& document, shop::Shop& shop, Proof& proof) {
  const TomlNode* node = document.single("costs", proof);
  if (node == nullptr) return;
  TableReader table(*node, "[costs]", proof);
  shop.costs.unit = table.text_or("unit", shop.costs.unit);
  for (const shop::CostRow& row : shop::cost_rows()) {
    if (const auto cost = table.number(row.word, 0, 1e9)) shop.costs.own[row.cost] = *cost;
  }
  // A usual figure is in the usual unit: beside figures in another one it would set the order wrong.
  if (table.has("unit") && shop.costs.unit != shop::Costs{}.unit) {
    for (const shop::CostRow& row : shop::cost_rows()) {
      if (!table.has(row.word))
        table.missing(row.word, format("what it costs in {}: {}", shop.costs.unit, row.what));
    }
  }
  table.finish();
}

}  // namespace dampward::files::detail
