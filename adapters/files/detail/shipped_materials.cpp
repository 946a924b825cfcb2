#include "adapters/files/detail/shipped_tables.h"
#include "core/base/format.h"

namespace dampward::files::detail {
namespace {

using materials::HeatLimit;
using materials::Material;
using materials::MoistureDiffusion;

const std::vector<std::string> material_columns = {
    "id",           "name",          "dries",           "limit_c_low",     "limit_c_typical",
    "limit_c_high", "limit_mark",    "limit_source",    "limit_why",       "limit_settle",
    "margin_k",     "density_kg_m3", "density_mark",    "density_source",  "cp_low",
    "cp_typ",       "cp_high",       "cp_mark",         "cp_source",       "k_w_mk",
    "k_mark",       "k_source",      "emissivity",      "emissivity_mark", "emissivity_source",
    "isotherm",     "d_low",         "d_typ",           "d_high",          "d_at_c",
    "d_mark",       "d_source",      "ea_low",          "ea_typ",          "ea_high",
    "ea_mark",      "ea_source",     "mould",           "mould_mark",      "mould_source",
    "attacked_by",  "attacked_mark", "attacked_source", "out_before_bake", "stands_for",
    "advice"};

// Low, typical and high in three columns; a blank one takes its neighbour's value, a blank low means unknown.
std::optional<Range<double>> three_columns(RowReader& row, const char* low, const char* typical,
                                           const char* high) {
  const auto a = row.number(low), b = row.number(typical), c = row.number(high);
  if (!a) return std::nullopt;
  const double middle = b.value_or(*a);
  const Range<double> range{*a, middle, c.value_or(middle)};
  if (range.ordered()) return range;
  row.fault(low, "a range that falls", "lowest, usual and highest in this order");
  return std::nullopt;
}

template <class T, class Make>
Range<T> made(const Range<double>& numbers, Make make) {
  return {make(numbers.low), make(numbers.typical), make(numbers.high)};
}

std::optional<HeatLimit> heat_limit_of(RowReader& row) {
  const auto limit = three_columns(row, "limit_c_low", "limit_c_typical", "limit_c_high");
  if (!limit) return std::nullopt;
  const auto margin = row.number("margin_k");
  if (!margin || *margin < 0) {
    row.fault("margin_k", "beside a heat limit", "the advised margin in kelvin");
    return std::nullopt;
  }
  return HeatLimit{{made<Temperature>(*limit, [](double c) { return Temperature::celsius(c); }),
                    mark_of(row, "limit_mark"), row.text("limit_source"), row.text("limit_settle")},
                   *margin * kelvin,
                   row.text("limit_why")};
}

std::optional<MoistureDiffusion> diffusion_of(RowReader& row) {
  const auto d = three_columns(row, "d_low", "d_typ", "d_high");
  const auto ea = three_columns(row, "ea_low", "ea_typ", "ea_high");
  const auto at = row.number("d_at_c");
  if (!d && !ea) return std::nullopt;
  if (!d || !ea || !at) {
    row.fault("d_low", "without one of d_at_c, ea_low or d_low", "all three, or none of them");
    return std::nullopt;
  }
  return MoistureDiffusion{{made<Diffusivity>(*d, [](double v) { return Diffusivity::si(v); }),
                            mark_of(row, "d_mark"), row.text("d_source"), ""},
                           Temperature::celsius(*at),
                           {made<MolarEnergy>(*ea, [](double v) { return v * kilojoule_per_mole; }),
                            mark_of(row, "ea_mark"), row.text("ea_source"), ""}};
}

// A single SI number with mark and source beside it.
template <class T, class Make>
std::optional<Figure<T>> one_column(RowReader& row, const std::string& column, const std::string& stem,
                                    Make make) {
  const auto value = row.number(column);
  if (!value) return std::nullopt;
  if (*value <= 0) {
    row.fault(column, "which is not above zero", "a value above zero");
    return std::nullopt;
  }
  return Figure<T>{Range<T>(make(*value)), mark_of(row, stem + "_mark"), row.text(stem + "_source"), ""};
}

}  // namespace

std::vector<Material> read_materials(Proof& proof) {
  std::vector<Material> all;
  ShippedSheet("materials/materials.csv", material_columns, proof).each_row([&](RowReader& row) {
    Material material;
    material.id = MaterialId(row.text("id"));
    material.name = row.text("name");
    if (const auto dries = row.choice("dries", drying_words)) {
      material.drying = *dries;
    } else {
      row.needed("dries", "surface, porous or deep");
    }
    material.heat_limit = heat_limit_of(row);
    material.density =
        one_column<Density>(row, "density_kg_m3", "density", [](double v) { return Density::si(v); });
    if (const auto cp = three_columns(row, "cp_low", "cp_typ", "cp_high")) {
      material.specific_heat =
          Figure<SpecificHeat>{made<SpecificHeat>(*cp, [](double v) { return SpecificHeat::si(v); }),
                               mark_of(row, "cp_mark"), row.text("cp_source"), ""};
    }
    material.conductivity = one_column<ThermalConductivity>(
        row, "k_w_mk", "k", [](double v) { return ThermalConductivity::si(v); });
    material.emissivity = one_column<double>(row, "emissivity", "emissivity", [](double v) { return v; });
    material.diffusion = diffusion_of(row);
    material.isotherm = row.choice("isotherm", isotherm_words).value_or(materials::Isotherm::none);
    material.mould_food = row.choice("mould", mould_words).value_or(materials::MouldFood::depends);
    material.attacked_by = row.list("attacked_by");
    material.out_before_bake =
        row.choice("out_before_bake", out_before_bake_words).value_or(materials::OutBeforeBake::depends);
    for (std::string& plainer : row.list("stands_for")) material.stands_for.emplace_back(std::move(plainer));
    material.advice = row.text("advice");
    all.push_back(std::move(material));
  });
  return all;
}

}  // namespace dampward::files::detail
