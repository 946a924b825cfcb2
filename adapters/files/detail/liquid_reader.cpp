#include <algorithm>

#include "adapters/files/detail/shop_readers.h"
#include "adapters/files/table_reader.h"
#include "adapters/files/words.h"
#include "core/base/format.h"
#include "core/base/text.h"
#include "core/materials/composition.h"

namespace dampward::files::detail {
namespace {

using materials::CoatRule;
using materials::Lacquer;
using materials::Liquid;
using materials::SolventPart;

constexpr std::string_view own = "the shop's own figure";

template <class T>
Figure<T> own_figure(const Range<T>& range) {
  return {range, range.exact() ? Mark::measured : Mark::estimate, std::string(own), ""};
}

template <class T>
void replace(std::optional<T>& old, std::optional<T> given) {
  if (given) old = given;
}

// What a liquid may attack: materials and solvent families alike are known words there.
std::vector<std::string> read_attacks(TableReader& table, const materials::MaterialTable& known) {
  return table.known_texts("attacks", known.ids(), "material");
}

Liquid read_liquid(const TomlNode& node, std::string_view group, const materials::LiquidTable& known,
                   const workbench::Workshop& workshop, Proof& proof) {
  TableReader table(node, format("[{}.{}]", group, node.key), proof);
  Liquid liquid;
  if (const auto like = table.known_text("like", known.ids(), "liquid")) liquid = *known.find(*like);
  liquid.id = node.key;
  liquid.name = table.text_or("name", liquid.name.empty() ? node.key : liquid.name);
  if (table.has("composition")) {
    liquid.composition = read_composition(table, "composition", workshop.solvents);
    liquid.mark = Mark::measured;
    liquid.source = own;
    // What was derived from the other composition does not hold for this one.
    liquid.density.reset();
    liquid.flash_point.reset();
  }
  table.node("composition");
  replace(liquid.density, table.quantity<Density>("density"));
  replace(liquid.flash_point, table.quantity<Temperature>("flash_point"));
  if (table.has("attacks")) liquid.attacks = read_attacks(table, workshop.materials);
  table.node("attacks");
  if (table.has("good_for")) liquid.good_for = table.known_texts("good_for", soil_words, "soil");
  table.node("good_for");
  if (const auto note = table.text("note")) liquid.note = *note;
  table.finish();
  return liquid;
}

CoatRule* rule_of(Lacquer& lacquer, materials::Method method) {
  const auto found = std::find_if(lacquer.coats.begin(), lacquer.coats.end(),
                                  [&](const CoatRule& rule) { return rule.method == method; });
  return found == lacquer.coats.end() ? nullptr : &*found;
}

// coats = { hand_gun = 3, … } and flash = { hand_gun = "15..20 min", … }: a method needs both, of which it may inherit one.
void read_coats(TableReader& table, Lacquer& lacquer) {
  const TomlNode* coats = table.table("coats");
  const TomlNode* flash = table.table("flash");
  static const TomlNode nothing;
  TableReader coats_table(coats == nullptr ? nothing : *coats, "coats of " + table.name(), table.proof());
  TableReader flash_table(flash == nullptr ? nothing : *flash, "flash of " + table.name(), table.proof());
  for (const auto& method : method_words) {
    const auto number = coats_table.whole(method.word, 1, 20);
    const auto wait = flash_table.range<Duration>(method.word);
    if (CoatRule* rule = rule_of(lacquer, method.meaning)) {
      rule->coats = number.value_or(rule->coats);
      rule->flash = wait.value_or(rule->flash);
    } else if (number && wait) {
      lacquer.coats.push_back({method.meaning, *number, *wait});
    } else if (number && !flash_table.has(method.word)) {
      table.fault("coats", format("with {} but no wait between its coats", method.word),
                  format("flash = {{ {} = \"15..20 min\" }}", method.word));
    } else if (wait && !coats_table.has(method.word)) {
      table.fault("flash", format("with {} but no number of coats", method.word),
                  format("coats = {{ {} = 2 }}", method.word));
    }
  }
  coats_table.finish();
  flash_table.finish();
}

void read_surface_limits(TableReader& table, Lacquer& lacquer) {
  replace(lacquer.hottest_surface, table.quantity<Temperature>("hottest_surface"));
  replace(lacquer.coldest_surface, table.quantity<Temperature>("coldest_surface"));
  if (lacquer.hottest_surface && lacquer.coldest_surface &&
      *lacquer.coldest_surface >= *lacquer.hottest_surface) {
    table.fault(table.has("coldest_surface") ? "coldest_surface" : "hottest_surface",
                format("while the surface may be {} to {} °C", fixed(lacquer.coldest_surface->celsius(), 0),
                       fixed(lacquer.hottest_surface->celsius(), 0)),
                "a coldest surface below the hottest one");
  }
}

void read_recoat(TableReader& table, Lacquer& lacquer) {
  replace(lacquer.touch_dry, table.range<Duration>("touch_dry"));
  replace(lacquer.recoat_earliest, table.range<Duration>("recoat_earliest"));
  replace(lacquer.recoat_latest, table.range<Duration>("recoat_latest"));
  if (lacquer.recoat_earliest && lacquer.recoat_latest &&
      lacquer.recoat_earliest->low > lacquer.recoat_latest->high) {
    table.fault(table.has("recoat_earliest") ? "recoat_earliest" : "recoat_latest",
                "so that the earliest time for the next coat lies after the latest",
                "an earliest time before the latest");
  }
}

Lacquer read_lacquer(const TomlNode& node, const workbench::Workshop& workshop, Proof& proof) {
  TableReader table(node, format("[lacquers.{}]", node.key), proof);
  Lacquer lacquer;
  const auto like = table.known_text("like", workshop.lacquers.ids(), "lacquer");
  if (like) lacquer = *workshop.lacquers.find(*like);
  const bool from_nothing = !table.has("like");
  if (from_nothing) {
    lacquer.mark = Mark::measured;
    lacquer.source = own;
    for (const char* key : {"solids", "density", "film", "coats", "flash"}) {
      if (!table.has(key)) table.missing(key, "a figure from the label, or like = a family of lacquers");
    }
  }
  lacquer.id = LacquerId(node.key);
  lacquer.name = table.text_or("name", node.key);
  if (const auto solids = table.range<MassShare>("solids")) lacquer.solids_by_mass = own_figure(*solids);
  if (const auto density = table.range<Density>("density")) lacquer.density = own_figure(*density);
  if (table.has("composition"))
    lacquer.composition = read_composition(table, "composition", workshop.solvents);
  table.node("composition");
  lacquer.thinner = table.known_text("thinner", workshop.thinners.ids(), "thinner").value_or(lacquer.thinner);
  lacquer.thinner_parts_for_spray =
      table.number("thin_spray", 0, 5).value_or(lacquer.thinner_parts_for_spray);
  lacquer.thinner_parts_for_brush =
      table.number("thin_brush", 0, 5).value_or(lacquer.thinner_parts_for_brush);
  read_coats(table, lacquer);
  if (const auto film = table.range<Length>("film")) lacquer.film_wanted = own_figure(*film);
  read_recoat(table, lacquer);
  read_surface_limits(table, lacquer);
  lacquer.dew_margin = table.quantity<TemperatureStep>("dew_margin").value_or(lacquer.dew_margin);
  replace(lacquer.humidity_top, table.range<RelativeHumidity>("humidity_top"));
  replace(lacquer.pot_life, table.quantity<Duration>("pot_life"));
  lacquer.airing_before_closing = table.quantity<Duration>("airing").value_or(lacquer.airing_before_closing);
  lacquer.constants_settle = table.quantity<Duration>("constants_settle").value_or(lacquer.constants_settle);
  lacquer.fungicide = table.text_or("fungicide", lacquer.fungicide);
  if (table.has("attacks")) lacquer.attacks = read_attacks(table, workshop.materials);
  table.node("attacks");
  lacquer.isocyanate = table.truth("isocyanate", lacquer.isocyanate);
  lacquer.rags_self_heat = table.truth("rags_self_heat", lacquer.rags_self_heat);
  table.finish();
  return lacquer;
}

}  // namespace

std::vector<SolventPart> read_composition(TableReader& table, std::string_view key,
                                          const materials::SolventTable& solvents) {
  std::vector<SolventPart> parts;
  const TomlNode* node = table.table(key);
  if (node == nullptr) return parts;
  TableReader shares(*node, "composition of " + table.name(), table.proof());
  const std::vector<std::string> known = solvents.ids();
  bool all_known = true;
  for (const TomlNode& item : node->items) {
    if (std::find(known.begin(), known.end(), item.key) == known.end()) {
      table.proof().faults.push_back({item.key_place, format("the unknown solvent \"{}\"", item.key),
                                      "one of " + listed(known), did_you_mean(item.key, known)});
      all_known = false;
    } else if (const auto share = shares.range<MassShare>(item.key)) {
      parts.push_back({SolventId(item.key), *share});
    } else {
      all_known = false;
    }
  }
  if (!all_known) return parts;  // a sum over what could be read would only mislead
  for (const Problem& problem : materials::faults_of_composition(parts, solvents.rows(), table.name())) {
    table.proof().faults.push_back({node->place, problem.found, problem.expected, problem.next});
  }
  return parts;
}

void read_own_liquids(const ShopDocument& document, workbench::Workshop& workshop, Proof& proof) {
  const materials::LiquidTable shipped_liquids = workshop.thinners;
  for (const TomlNode* node : document.entries("thinners", proof)) {
    workshop.thinners.put(read_liquid(*node, "thinners", shipped_liquids, workshop, proof));
  }
  for (const TomlNode* node : document.entries("cleaners", proof)) {
    workshop.cleaners.put(read_liquid(*node, "cleaners", shipped_liquids, workshop, proof));
  }
  for (const TomlNode* node : document.entries("lacquers", proof)) {
    workshop.lacquers.put(read_lacquer(*node, workshop, proof));
  }
}

}  // namespace dampward::files::detail
