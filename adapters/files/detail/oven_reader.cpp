#include "adapters/files/detail/shop_readers.h"
#include "adapters/files/table_reader.h"
#include "adapters/files/week_hours.h"
#include "core/base/format.h"

namespace dampward::files::detail {
namespace {

using shop::Lamps;
using shop::Oven;

constexpr Word<bool> air_words[] = {{"still", false}, {"moving", true}};

std::optional<Lamps> read_lamps(TableReader& oven) {
  const TomlNode* node = oven.table("lamps");
  if (node == nullptr) return std::nullopt;
  TableReader table(*node, "lamps of " + oven.name(), oven.proof());
  Lamps lamps;
  if (!table.has("count")) table.missing("count", "how many lamps, such as 4");
  lamps.count = table.whole("count", 1, 1000).value_or(0);
  lamps.each = table.needed_size<Power>("each").value_or(Power{});
  // Without them nobody can say how hot a lit part becomes.
  lamps.distance = table.needed_size<Length>("distance").value_or(Length{});
  lamps.beam_degrees = table.needed_quantity<Angle>("beam").value_or(Angle{}).degrees;
  lamps.radiant_share = table.number("radiant_share", 0.05, 1);
  table.finish();
  return lamps;
}

void read_inside(TableReader& table, Oven& oven) {
  if (!table.has("inside"))
    table.missing("inside", "[\"900 mm\", \"600 mm\", \"1200 mm\"], length, width and height");
  const auto inside = table.ranges<Length>("inside", 3);
  if (inside.empty()) return;
  // The smallest of each, where a range is given: a load must fit.
  oven.inside_length = inside[0].low;
  oven.inside_width = inside[1].low;
  oven.inside_height = inside[2].low;
}

void read_settings(TableReader& table, Oven& oven) {
  if (!table.has("settings"))
    table.missing("settings", "[\"40 °C\", \"120 °C\"], the coldest and hottest setting");
  const auto settings = table.ranges<Temperature>("settings", 2);
  if (settings.empty()) return;
  oven.coldest_setting = settings[0].high;
  oven.hottest_setting = settings[1].low;
}

void read_hours(TableReader& table, Oven& oven) {
  if (!table.has("powered"))
    table.missing("powered", "\"daily 06:00-22:00\", \"always\", a list of such hours, or [] for none");
  const std::vector<std::string> lines = table.texts("powered");
  if (lines.empty()) return;  // an oven that is broken or without power
  const auto hours = week_hours_from_text(lines);
  if (hours) {
    oven.powered = *hours;
  } else {
    const Problem& problem = hours.problems().front();
    table.proof().faults.push_back(
        {table.place("powered"), "powered = " + problem.found, problem.expected, problem.next});
  }
}

void check_power(TableReader& table, const Oven& oven) {
  if (!oven.heater && !oven.lamps) {
    table.proof().faults.push_back(
        {table.place(), table.name() + " with neither heater nor lamps",
         "heater = \"2.4 kW\", or lamps = { count = 4, each = \"250 W\", distance = \"450 mm\", "
         "beam = \"60 deg\" }",
         ""});
  }
  Power drawn = oven.heater.value_or(Power{});
  if (oven.lamps) drawn += oven.lamps->count * oven.lamps->each;
  if (oven.supply > Power{} && drawn > oven.supply) {
    table.warn("supply",
               format("less than the {} W that heater and lamps draw together", fixed(drawn.si(), 0)),
               "a supply that carries them", "The plan counts on the supply alone.");
  }
}

Oven read_oven(const TomlNode& node, const std::vector<std::string>& walls, Proof& proof) {
  TableReader table(node, format("[ovens.{}]", node.key), proof);
  Oven oven;
  oven.id = OvenId(node.key);
  oven.name = table.text_or("name", node.key);
  read_inside(table, oven);
  if (!table.has("wall")) table.missing("wall", "how its walls are built, such as \"bare_steel\"");
  oven.wall = table.known_text("wall", walls, "wall construction").value_or("");
  if (table.has("heater")) oven.heater = table.needed_size<Power>("heater");
  table.node("heater");
  oven.lamps = read_lamps(table);
  oven.air_moves = table.choice("air", air_words).value_or(false);
  read_settings(table, oven);
  oven.swing = table.needed_quantity<TemperatureStep>("swing").value_or(TemperatureStep{});
  oven.evenness = table.needed_quantity<TemperatureStep>("evenness").value_or(TemperatureStep{});
  oven.vent = table.needed_quantity<VolumeFlow>("vent").value_or(VolumeFlow{});
  oven.independent_cutoff = table.truth("cutoff", false);
  oven.supply = table.needed_size<Power>("supply").value_or(Power{});
  read_hours(table, oven);
  oven.room = table.text_or("room", "");
  oven.distance_to_spray = table.quantity<Length>("distance_to_spray");
  oven.control_amid_load = table.truth("control_amid_load", false);
  oven.separate_thermometer = table.truth("separate_thermometer", false);
  const bool named_power = table.has("heater") || table.has("lamps");
  if (!named_power || oven.heater || oven.lamps) check_power(table, oven);
  table.finish();
  return oven;
}

}  // namespace

void read_ovens(const ShopDocument& document, const workbench::WallTable& walls, shop::Shop& shop,
                Proof& proof) {
  for (const TomlNode* node : document.entries("ovens", proof)) {
    shop.ovens.push_back(read_oven(*node, walls.ids(), proof));
  }
  if (shop.ovens.empty() && document.complete) {
    proof.warnings.push_back({{"ovens.toml"},
                              "no oven",
                              "a table [ovens.name] for each oven",
                              "Without an oven every unit goes the way without heat."});
  }
}

}  // namespace dampward::files::detail
