#include "adapters/files/detail/shop_readers.h"
#include "adapters/files/table_reader.h"
#include "core/base/format.h"

namespace dampward::files::detail {

void read_power(const ShopDocument& document, shop::Shop& shop, Proof& proof) {
  const TomlNode* node = document.single("power", proof);
  if (node == nullptr) return;
  TableReader table(*node, "[power]", proof);
  const auto gives = table.needed_size<Power>("gives");
  if (!table.has("always_on")) {
    table.missing("always_on",
                  "what fans, lights and benches take all day, such as \"600 W\"; \"0 W\" if nothing does");
  }
  const auto always_on = table.quantity<Power>("always_on");
  if (gives && always_on) {
    shop.site.power = shop::PowerSupply{*gives, *always_on};
    if (shop.site.power->left() <= Power{}) {
      table.fault("always_on", "which leaves nothing for an oven", "less than the supply gives");
    }
  }
  for (const shop::Gun& gun : shop.guns) {
    if (!gun.power || gun.draws) continue;
    table.fault("gives", format("while nobody says what the {} takes of it", gun.name),
                format("draws = \"1.1 kW\", off the plate of its compressor, in [guns.{}]", gun.id.text));
  }
  table.finish();
}

}  // namespace dampward::files::detail
