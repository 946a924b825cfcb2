#include "adapters/files/detail/shop_readers.h"
#include "adapters/files/table_reader.h"
#include "core/base/format.h"

namespace dampward::files::detail {
namespace {

using shop::Gun;
using shop::GunKind;
using shop::PlaceKind;
using shop::SprayPlace;

constexpr Word<PlaceKind> place_words[] = {{"booth", PlaceKind::booth},
                                           {"room", PlaceKind::room},
                                           {"van", PlaceKind::van},
                                           {"tent", PlaceKind::tent},
                                           {"outdoors", PlaceKind::outdoors}};
constexpr Word<bool> extraction_words[] = {{"low", true}, {"high", false}};
constexpr Word<GunKind> gun_words[] = {{"suction_gun", GunKind::suction_gun},
                                       {"gravity_gun", GunKind::gravity_gun},
                                       {"hvlp", GunKind::hvlp},
                                       {"aerosol", GunKind::aerosol},
                                       {"brush", GunKind::brush}};

// Refrigerating dryers stop near here (estimate); drier air needs desiccant wheels.
constexpr double driest = 30;

void read_place(const TomlNode& node, SprayPlace& place, Proof& proof) {
  TableReader table(node, "[spray]", proof);
  place.name = table.text_or("name", "spray place");
  if (!table.has("kind")) table.missing("kind", "booth, room, van, tent or outdoors");
  place.kind = table.choice("kind", place_words).value_or(PlaceKind::room);
  place.room = table.text_or("room", "");
  if (!table.has("size")) table.missing("size", "[\"4 m\", \"3.5 m\", \"2.6 m\"], length, width and height");
  const auto size = table.ranges<Length>("size", 3);
  if (!size.empty()) {
    place.length = size[0].low;
    place.width = size[1].low;
    place.height = size[2].low;
  }
  place.fan = table.quantity<VolumeFlow>("fan");
  place.air_changes_per_hour = table.number("air_changes", 0, 1000);
  place.mixing = table.number("mixing", 0.05, 1).value_or(place.mixing);
  place.opening_to_outside = table.truth("opening_to_outside", false);
  place.ventilated_booth = table.truth("ventilated_booth", false);
  place.low_extraction = table.choice("extraction", extraction_words).value_or(false);
  place.ways_out = table.whole("ways_out", 0, 100).value_or(1);
  place.shelter_from_dust = table.truth("shelter_dust", false);
  place.shelter_from_rain = table.truth("shelter_rain", false);
  place.makeup_air_filtered = table.truth("makeup_filtered", false);
  place.dried_to = table.quantity<RelativeHumidity>("dried_to");
  if (place.dried_to && place.dried_to->percent() < driest) {
    table.fault("dried_to", "which no dryer of a workshop keeps", format("{} % or more", driest));
  }
  for (const TomlNode* source : table.tables("heat")) {
    TableReader heat(*source, "heat of [spray]", proof);
    place.heat_sources.push_back(
        {heat.needed_text("name"), heat.text_or("room", ""), heat.quantity<Length>("distance")});
    heat.finish();
  }
  table.finish();
}

Gun read_gun(const TomlNode& node, Proof& proof) {
  TableReader table(node, format("[guns.{}]", node.key), proof);
  Gun gun;
  gun.id = GunId(node.key);
  gun.name = table.text_or("name", node.key);
  if (!table.has("kind")) table.missing("kind", "suction_gun, gravity_gun, hvlp, aerosol or brush");
  gun.kind = table.choice("kind", gun_words).value_or(GunKind::brush);
  gun.power = table.truth("power", false);
  gun.efficiency = table.needed_range<TransferEfficiency>("efficiency").value_or(Range<TransferEfficiency>{});
  if (table.has("efficiency") && gun.efficiency.low <= TransferEfficiency{} &&
      gun.efficiency.high > TransferEfficiency{}) {
    table.fault("efficiency", "whose lowest is zero", "shares above 0 %");
  }
  gun.draws = table.quantity<Power>("draws");
  gun.fluid_rate = table.needed_size<VolumeFlow>("rate").value_or(VolumeFlow{});
  table.finish();
  return gun;
}

}  // namespace

void read_spray(const ShopDocument& document, shop::Shop& shop, Proof& proof) {
  const TomlNode* node = document.single("spray", proof);
  if (node != nullptr) {
    read_place(*node, shop.spray, proof);
  } else if (document.complete) {
    proof.faults.push_back(
        {{"spray.toml"}, "no table [spray] in any file", "[spray] with kind and size", ""});
  }
  for (const TomlNode* gun : document.entries("guns", proof)) shop.guns.push_back(read_gun(*gun, proof));
  if (shop.guns.empty() && document.complete) {
    proof.faults.push_back({{"spray.toml"},
                            "no gun or brush",
                            "a table [guns.name] for each gun and brush",
                            "A brush counts: kind = \"brush\"."});
  }
}

}  // namespace dampward::files::detail
