#include <algorithm>

#include "adapters/files/detail/shipped_tables.h"
#include "core/base/format.h"

namespace dampward::files::detail {
namespace {

using materials::CoatRule;
using materials::ExposureLimit;
using materials::Lacquer;
using materials::Liquid;
using materials::Solvent;

std::vector<std::string> with_pedigree(const std::vector<std::string>& stems) {
  std::vector<std::string> columns;
  for (const std::string& stem : stems) {
    columns.push_back(stem);
    columns.push_back(stem + "_mark");
    columns.push_back(stem + "_source");
  }
  return columns;
}

std::vector<std::string> joined_lists(std::vector<std::string> a, const std::vector<std::string>& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

std::optional<VapourShare> ppm(RowReader& row, std::string_view column) {
  const auto value = row.number(column);
  return value ? std::optional(VapourShare::ppm(*value)) : std::nullopt;
}

void add_limits(std::vector<Solvent>& solvents, Proof& proof) {
  ShippedSheet sheet(
      "coatings/solvent_limits.csv",
      {"solvent", "authority", "year", "twa_ppm", "stel_ppm", "ceiling_ppm", "mark", "source", "note"},
      proof);
  sheet.each_row([&](RowReader& row) {
    const auto solvent = std::find_if(solvents.begin(), solvents.end(),
                                      [&](const Solvent& s) { return s.id.text == row.text("solvent"); });
    if (solvent == solvents.end()) {
      row.fault("solvent", "which is not in solvents.csv", "a solvent of that table");
      return;
    }
    ExposureLimit limit;
    limit.authority = row.text("authority");
    limit.year = static_cast<int>(row.number("year").value_or(0));
    limit.eight_hours = ppm(row, "twa_ppm");
    limit.fifteen_minutes = ppm(row, "stel_ppm");
    limit.ceiling = ppm(row, "ceiling_ppm");
    limit.mark = mark_of(row, "mark");
    limit.source = row.text("source");
    solvent->limits.push_back(std::move(limit));
  });
}

std::vector<CoatRule> coat_rules_of(RowReader& row) {
  std::vector<CoatRule> rules;
  for (const auto& method : method_words) {
    const std::string coats_column = "coats_" + std::string(method.word);
    const std::string flash_column = "flash_" + std::string(method.word);
    const auto coats = row.number(coats_column);
    if (!coats) continue;
    const auto flash = row.range<Duration>(flash_column);
    if (!flash && !row.needed(flash_column, "the wait between coats")) continue;
    if (flash) rules.push_back({method.meaning, static_cast<int>(*coats), *flash});
  }
  return rules;
}

template <class T>
T single(RowReader& row, std::string_view column, T otherwise) {
  return row.quantity<T>(column).value_or(otherwise);
}

}  // namespace

std::vector<Solvent> read_solvents(Proof& proof) {
  std::vector<Solvent> all;
  ShippedSheet sheet("coatings/solvents.csv",
                     {"id",
                      "name",
                      "cas",
                      "family",
                      "molar_mass",
                      "molar_mass_mark",
                      "molar_mass_source",
                      "density_kg_m3",
                      "density_mark",
                      "density_source",
                      "lfl_low_pct",
                      "lfl_low_source",
                      "lfl_high_pct",
                      "lfl_high_source",
                      "lfl_mark",
                      "flash_c",
                      "flash_mark",
                      "flash_source",
                      "idlh_ppm",
                      "idlh_mark",
                      "idlh_source",
                      "note"},
                     proof);
  sheet.each_row([&](RowReader& row) {
    Solvent solvent;
    solvent.id = SolventId(row.text("id"));
    solvent.name = row.text("name");
    solvent.cas = row.text("cas");
    solvent.family = row.text("family");
    if (const auto m = row.number("molar_mass")) solvent.molar_mass = *m * gram_per_mole;
    if (const auto d = row.number("density_kg_m3")) solvent.density = Density::si(*d);
    if (const auto low = row.number("lfl_low_pct")) {
      const double high = row.number("lfl_high_pct").value_or(*low);
      solvent.lower_flammable_limit = Figure<VapourShare>{
          {VapourShare::percent(*low), VapourShare::percent(*low), VapourShare::percent(high)},
          mark_of(row, "lfl_mark"),
          row.text("lfl_low_source"),
          ""};
    }
    if (const auto c = row.number("flash_c")) solvent.flash_point = Temperature::celsius(*c);
    solvent.danger_to_life = ppm(row, "idlh_ppm");
    solvent.source = row.text("density_source");
    all.push_back(std::move(solvent));
  });
  add_limits(all, proof);
  return all;
}

std::vector<ShippedLiquid> read_liquids(const materials::SolventTable& solvents, Proof& proof) {
  std::vector<ShippedLiquid> all;
  ShippedSheet sheet("coatings/liquids.csv",
                     joined_lists({"id", "name", "kind", "flash_mark", "flash_source", "flash_point", "note"},
                                  with_pedigree({"composition", "density", "good_for", "attacks"})),
                     proof);
  sheet.each_row([&](RowReader& row) {
    Liquid liquid;
    liquid.id = row.text("id");
    liquid.name = row.text("name");
    liquid.composition = composition_of(row, "composition", solvents);
    liquid.density = row.quantity<Density>("density");
    liquid.flash_point = row.quantity<Temperature>("flash_point");
    liquid.good_for = row.list("good_for");
    liquid.attacks = row.list("attacks");
    liquid.mark = mark_of(row, "composition_mark");
    liquid.source = row.text("composition_source");
    liquid.note = row.text("note");
    all.push_back({std::move(liquid), row.text("kind")});
  });
  return all;
}

std::vector<Lacquer> read_lacquers(const materials::SolventTable& solvents, Proof& proof) {
  std::vector<Lacquer> all;
  ShippedSheet sheet(
      "coatings/lacquers.csv",
      joined_lists(
          {"id",
           "name",
           "use",
           "thinner",
           "coats_hand_gun",
           "coats_power_gun",
           "coats_brush",
           "flash_hand_gun",
           "flash_power_gun",
           "flash_brush",
           "coats_mark",
           "coats_source",
           "flash_mark",
           "flash_source",
           "isocyanate",
           "rags_self_heat",
           "fungicide",
           "mark",
           "source",
           "note"},
          with_pedigree({"solids", "density", "composition", "thin_spray", "thin_brush", "film", "touch_dry",
                         "recoat_earliest", "recoat_latest", "hottest_surface", "coldest_surface",
                         "dew_margin", "humidity_top", "pot_life", "airing", "constants_settle", "attacks"})),
      proof);
  sheet.each_row([&](RowReader& row) {
    Lacquer lacquer;
    lacquer.id = LacquerId(row.text("id"));
    lacquer.name = row.text("name");
    lacquer.family = row.text("id");
    if (row.needed("solids", "the share of solids")) {
      lacquer.solids_by_mass = figure_of<MassShare>(row, "solids").value_or(Figure<MassShare>{});
    }
    if (row.needed("density", "a density")) {
      lacquer.density = figure_of<Density>(row, "density").value_or(Figure<Density>{});
    }
    lacquer.composition = composition_of(row, "composition", solvents);
    lacquer.thinner = row.text("thinner");
    lacquer.thinner_parts_for_spray = row.number("thin_spray").value_or(0);
    lacquer.thinner_parts_for_brush = row.number("thin_brush").value_or(0);
    lacquer.coats = coat_rules_of(row);
    if (row.needed("film", "a dry film")) {
      lacquer.film_wanted = figure_of<Length>(row, "film").value_or(Figure<Length>{});
    }
    lacquer.touch_dry = row.range<Duration>("touch_dry");
    lacquer.recoat_earliest = row.range<Duration>("recoat_earliest");
    lacquer.recoat_latest = row.range<Duration>("recoat_latest");
    lacquer.hottest_surface = row.quantity<Temperature>("hottest_surface");
    lacquer.coldest_surface = row.quantity<Temperature>("coldest_surface");
    lacquer.dew_margin = single(row, "dew_margin", lacquer.dew_margin);
    lacquer.humidity_top = row.range<RelativeHumidity>("humidity_top");
    lacquer.pot_life = row.quantity<Duration>("pot_life");
    lacquer.airing_before_closing = single(row, "airing", lacquer.airing_before_closing);
    lacquer.constants_settle = single(row, "constants_settle", lacquer.constants_settle);
    lacquer.attacks = row.list("attacks");
    lacquer.isocyanate = row.yes("isocyanate");
    lacquer.rags_self_heat = row.yes("rags_self_heat");
    lacquer.fungicide = row.text("fungicide");
    lacquer.mark = mark_of(row, "mark");
    lacquer.source = row.text("source");
    all.push_back(std::move(lacquer));
  });
  return all;
}

}  // namespace dampward::files::detail
