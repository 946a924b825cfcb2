#include "core/room_air/vapour.h"

#include <doctest/doctest.h>

using namespace dampward;
using namespace dampward::room_air;
using doctest::Approx;

// ChEDL's published example (read): 1 ppm of molar mass 40 at 25 °C and 1 atm. Its gas constant is two digits shorter: 1e-6.
TEST_CASE("one part in a million of molar mass 40 is 1.635 milligrams in a cubic metre") {
  CHECK(mass_in_air(VapourShare::ppm(1), 40 * gram_per_mole) / (milligram / cubic_metre) ==
        Approx(1.6349617809430446).epsilon(1e-6));
}

// NIOSH Pocket Guide 2005-149 p. 311 (read): 1 ppm toluene = 3.77 mg/m³. OSHA prints 710 mg/m³ beside 150 ppm butyl acetate.
// Tolerance: the printed figures are rounded to three digits.
TEST_CASE("toluene and butyl acetate weigh in air what the guides print") {
  CHECK(mass_in_air(VapourShare::ppm(1), 92.1 * gram_per_mole) / (milligram / cubic_metre) ==
        Approx(3.77).epsilon(2e-3));
  CHECK(mass_in_air(VapourShare::ppm(150), 116.158 * gram_per_mole) / (milligram / cubic_metre) ==
        Approx(710).epsilon(5e-3));
}

// OSHA 1910.94(c) table G-11 (from memory): cubic feet of vapour from a gallon at 70 °F. Agreement within 1.5 %: the table's densities
// and molar volume are rounded.
TEST_CASE("a gallon of solvent makes the cubic feet of vapour that the old table gives") {
  const AirState air{Temperature::fahrenheit(70), 101325 * pascal};
  const struct {
    double density, molar_mass, cubic_feet;
  } rows[] = {{792.2, 58.079, 44.0}, {804.9, 72.106, 36.0}, {899.5, 88.105, 32.8}, {880.9, 116.158, 24.8},
              {868.5, 92.138, 30.4}, {790.3, 46.068, 55.2}, {808.2, 74.122, 35.2}};
  for (const auto& row : rows) {
    CAPTURE(row.molar_mass);
    const Volume vapour = vapour_volume(1 * us_gallon, row.density * kilogram_per_cubic_metre,
                                        row.molar_mass * gram_per_mole, air);
    CHECK(vapour.in(cubic_foot) == Approx(row.cubic_feet).epsilon(1.5e-2));
  }
}

TEST_CASE("share to mass and back is the same share, at any height and warmth") {
  const AirState highland{Temperature::celsius(31), 84000 * pascal};
  const Density mass = mass_in_air(VapourShare::ppm(321), 106.165 * gram_per_mole, highland);
  CHECK(share_in_air(mass, 106.165 * gram_per_mole, highland).ppm() == Approx(321));
  CHECK(mass < mass_in_air(VapourShare::ppm(321), 106.165 * gram_per_mole));
}

// Computed: freshly wiped work closed into a lamp oven of 0.3 m³ at 71 °C is over the lower limit of 1.1 %.
TEST_CASE("twenty millilitres of toluene flash a small oven over its lower limit") {
  const AirState oven{Temperature::celsius(71), 101325 * pascal};
  const Volume vapour =
      vapour_volume(20 * millilitre, 868.5 * kilogram_per_cubic_metre, 92.138 * gram_per_mole, oven);
  CHECK(100 * (vapour / (0.3 * cubic_metre)) == Approx(1.77).epsilon(5e-3));
}
