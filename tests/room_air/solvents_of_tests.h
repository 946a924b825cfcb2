#pragma once

#include <vector>

#include "core/materials/liquid.h"

// A few solvents with the figures of the shipped tables: lower limits of IEC 60079-20-1:2010 (low) and NFPA 497:2008 (high), read;
// limits of Ontario 2016 (read) and OSHA 2005.
inline std::vector<dampward::materials::Solvent> few_solvents() {
  using namespace dampward;
  using materials::ExposureLimit;
  using materials::Solvent;
  const auto ppm = [](double value) { return VapourShare::ppm(value); };
  const auto make = [&](const char* id, const char* family, double grams_per_mole, double density, double low,
                        double high, double ontario, double osha, double life) {
    Solvent s;
    s.id = SolventId(id);
    s.name = id;
    s.family = family;
    s.molar_mass = grams_per_mole * gram_per_mole;
    s.density = density * kilogram_per_cubic_metre;
    s.lower_flammable_limit = Figure<VapourShare>{
        {VapourShare::percent(low), VapourShare::percent(low), VapourShare::percent(high)},
        Mark::read,
        "IEC60079+NFPA497",
        ""};
    s.limits = {ExposureLimit{"Ontario OEL", 2016, ppm(ontario), {}, {}, Mark::read, "ONT2016"},
                ExposureLimit{"OSHA PEL", 2005, ppm(osha), {}, {}, Mark::read, "NPG2005"}};
    s.danger_to_life = ppm(life);
    return s;
  };
  std::vector<Solvent> table = {
      make("toluene", "aromatic hydrocarbons", 92.138, 868.5, 1.0, 1.1, 20, 200, 500),
      make("xylene", "aromatic hydrocarbons", 106.165, 870, 0.9, 0.9, 100, 100, 900),
      make("n_butyl_acetate", "esters", 116.158, 880.9, 1.2, 1.7, 150, 150, 1700),
      make("ethanol", "alcohols", 46.068, 790.3, 3.1, 3.3, 1000, 1000, 3300)};
  Solvent water;
  water.id = SolventId("water");
  water.family = "water";
  water.molar_mass = 18.015 * gram_per_mole;
  water.density = 998.2 * kilogram_per_cubic_metre;
  table.push_back(water);
  return table;
}
