#include "core/drying/correlations.h"

#include <doctest/doctest.h>

#include <initializer_list>

using namespace dampward;
using namespace dampward::drying;

TEST_CASE("air near the walls of an oven has the properties handbooks print") {
  // Incropera and DeWitt table A.4 (from memory): ν 1e-6 m²/s, k 1e-3 W/(m K), Pr. Tolerance 1 %: tables of
  // different makers differ so.
  struct Row {
    double kelvins, viscosity, conductivity, prandtl;
  };
  for (const Row& row : {Row{300, 15.89e-6, 26.3e-3, 0.707}, Row{350, 20.92e-6, 30.0e-3, 0.700},
                         Row{400, 26.41e-6, 33.8e-3, 0.690}}) {
    const AirLayer air = air_layer(Temperature::kelvins(row.kelvins));
    CAPTURE(row.kelvins);
    CHECK(air.viscosity.si() == doctest::Approx(row.viscosity).epsilon(0.01));
    CHECK(air.conductivity.si() == doctest::Approx(row.conductivity).epsilon(0.01));
    CHECK(air.prandtl == doctest::Approx(row.prandtl).epsilon(0.02));
  }
}

TEST_CASE("an upright plate and a plate in a stream give the printed Nusselt numbers") {
  // Comparison values read in github.com/CalebBell/ht tests. Its function takes a Grashof number; ours a
  // Rayleigh number.
  CHECK(vertical_plate_nusselt(2.63e9 * 0.69, 0.69) == doctest::Approx(147.16185223770603).epsilon(1e-9));
  CHECK(forced_plate_nusselt(1e5, 0.7) == doctest::Approx(183.08600782591418).epsilon(1e-3));
}

TEST_CASE("a Grashof number mistaken for a Rayleigh number reads 12 % high") {
  CHECK(vertical_plate_nusselt(2.63e9, 0.69) / vertical_plate_nusselt(2.63e9 * 0.69, 0.69) ==
        doctest::Approx(1.12).epsilon(0.01));
}

TEST_CASE("a glass fire screen loses about a kilowatt to the room") {
  // Incropera example 9.2 (from memory): 0.71 m high, 1.02 m wide, 232 °C in 23 °C air: h 7.0 W/(m² K), 1060
  // W. Tolerance 3 %: the book takes its air from a table at 400 K.
  const auto h = natural_convection(Temperature::celsius(232), Temperature::celsius(23), 0.71 * metre);
  CHECK(h.si() == doctest::Approx(7.0).epsilon(0.03));
}

TEST_CASE("painted steel takes up as much heat by radiation as by still air, bright aluminium hardly any") {
  // Regression values of ε σ (T1 + T2)(T1² + T2²) between 30 °C and 71.1 °C.
  const auto radiation = [](double emissivity) {
    return radiation_coefficient(emissivity, Temperature::celsius(30), Temperature::celsius(71.1)).si();
  };
  CHECK(radiation(0.9) == doctest::Approx(6.952).epsilon(2e-4));
  CHECK(radiation(0.05) == doctest::Approx(0.386).epsilon(2e-3));
  CHECK(natural_convection(Temperature::celsius(30), Temperature::celsius(71.1), 0.2 * metre).si() ==
        doctest::Approx(5.43).epsilon(0.02));
}

TEST_CASE("thin mountain air carries less heat") {
  const auto at = [](Pressure pressure) {
    return forced_convection(Temperature::celsius(40), Temperature::celsius(70), 1.5 * metre_per_second,
                             0.3 * metre, pressure);
  };
  CHECK(at(80000 * pascal) < at(101325 * pascal));
}
