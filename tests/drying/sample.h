#pragma once

#include "core/drying/bake.h"

// A small invented radio, its materials and its oven, for the tests of this room.
namespace sample {

using namespace dampward;
using dampward::drying::PartsOut;

template <class T>
Figure<T> figure(Range<T> value) {
  return {value, Mark::estimate, "", ""};
}
template <class T>
Figure<T> figure(T low, T typical, T high) {
  return figure(Range<T>(low, typical, high));
}
template <class T>
Figure<T> figure(T exact) {
  return figure(Range<T>(exact));
}

inline materials::Material material(const char* id, materials::Drying drying, Range<double> limit_c,
                                    double margin_k) {
  materials::Material row;
  row.id = MaterialId(id);
  row.name = id;
  row.drying = drying;
  row.heat_limit =
      materials::HeatLimit{{{Temperature::celsius(limit_c.low), Temperature::celsius(limit_c.typical),
                             Temperature::celsius(limit_c.high)},
                            Mark::read,
                            "test",
                            ""},
                           margin_k * kelvin,
                           "it softens"};
  row.specific_heat = figure<SpecificHeat>(SpecificHeat::si(1000));
  row.density = figure<Density>(Density::si(2000));
  return row;
}

inline materials::Material damp(materials::Material row, Range<double> diffusivity) {
  row.diffusion = materials::MoistureDiffusion{
      figure(Diffusivity::si(diffusivity.low), Diffusivity::si(diffusivity.typical),
             Diffusivity::si(diffusivity.high)),
      Temperature::celsius(71),
      figure(30 * kilojoule_per_mole, 43 * kilojoule_per_mole, 50 * kilojoule_per_mole)};
  row.isotherm = materials::Isotherm::paper;
  return row;
}

inline materials::MaterialTable table() {
  using materials::Drying;
  return materials::MaterialTable({
      material("steel", Drying::surface, 400, 100),
      material("wax_low", Drying::surface, {46, 56, 68}, 10),
      material("wax_mid", Drying::surface, {66, 75, 85}, 10),
      damp(material("webbing", Drying::porous, 90, 10), {3e-10, 1e-9, 5e-9}),
      damp(material("laminate", Drying::deep, {105, 120, 120}, 10), {1e-12, 3e-12, 1e-11}),
      material("felt", Drying::porous, 90, 10),
  });
}

inline equipment::Part part(const char* id, const char* made_of, double grams,
                            equipment::Shape shape = equipment::Shape::none, double mm = 0) {
  equipment::Part part;
  part.id = PartId(id);
  part.name = id;
  if (*made_of) part.materials = {MaterialId(made_of)};
  part.count = figure<double>(1.0);
  part.mass_each = figure<Mass>(grams * gram);
  part.shape = shape;
  part.thickness = figure<Length>(mm * millimetre);
  part.open_faces = shape == equipment::Shape::plate ? 2 : shape == equipment::Shape::none ? 0 : 1;
  return part;
}

// Steel case, webbing cord of 6 mm, laminate board of 1.6 mm.
inline equipment::Kind radio() {
  equipment::Kind kind;
  kind.id = KindId("radio");
  kind.name = "radio";
  kind.length = figure<Length>(400 * millimetre);
  kind.width = figure<Length>(300 * millimetre);
  kind.height = figure<Length>(200 * millimetre);
  kind.spray_area_stripped = kind.spray_area_assembled = figure<Area>(0.8 * square_metre);
  kind.parts = {part("case", "steel", 4000), part("core", "steel", 1500),
                part("cord", "webbing", 100, equipment::Shape::cylinder, 6),
                part("board", "laminate", 200, equipment::Shape::plate, 1.6)};
  kind.heavy_lump = {PartId("core")};
  return kind;
}

inline equipment::Kind with_part(equipment::Kind kind, equipment::Part part) {
  kind.parts.push_back(std::move(part));
  return kind;
}

inline drying::OvenPiece piece(const equipment::Kind& kind, const PartsOut& out = {}) {
  return drying::oven_piece(kind, out, table());
}

inline shop::Oven cabinet() {
  shop::Oven oven;
  oven.id = OvenId("cabinet");
  oven.name = "cabinet";
  oven.inside_length = 1100 * millimetre;
  oven.inside_width = 700 * millimetre;
  oven.inside_height = 1300 * millimetre;
  oven.heater = 2.4 * kilowatt;
  oven.supply = 3 * kilowatt;
  oven.air_moves = true;
  oven.coldest_setting = Temperature::celsius(35);
  oven.hottest_setting = Temperature::celsius(90);
  oven.swing = 2 * kelvin;
  oven.evenness = 3 * kelvin;
  oven.vent = 0.2 * cubic_metre_per_minute;
  return oven;
}

inline shop::Oven lamp_locker() {
  shop::Oven oven = cabinet();
  oven.heater.reset();
  oven.lamps = shop::Lamps{6, 250 * watt, 600 * millimetre, 360, 0.8};
  return oven;
}

inline drying::Wall wall() {
  return {"insulated_50mm", "insulated",
          figure(HeatTransferCoefficient::si(0.65), HeatTransferCoefficient::si(0.9),
                 HeatTransferCoefficient::si(1.6))};
}

inline moist_air::HumidAir shop_air(double celsius = 30, double percent = 80) {
  return {.temperature = Temperature::celsius(celsius), .humidity = RelativeHumidity::percent(percent)};
}

inline drying::BakeAnswer bake(const drying::OvenPiece& piece, const shop::Oven& oven = cabinet(),
                               const moist_air::HumidAir& air = shop_air(), int count = 1) {
  const drying::LoadUnits load[] = {{&piece, count}};
  return drying::bake_load(oven, wall(), load, air);
}

}  // namespace sample
