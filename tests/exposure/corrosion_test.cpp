#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

#include "core/exposure/corrosion.h"

using namespace dampward;
using namespace dampward::exposure;

namespace {

DepositionRate deposit(double mg) {
  return mg * milligram_per_square_metre_day;
}

// µm a year, aluminium g/m² a year, as the standard gives them.
double loss(Metal metal, double t, double rh, double so2, double salt) {
  const double um = first_year_loss(metal, Temperature::celsius(t), RelativeHumidity::percent(rh),
                                    deposit(salt), deposit(so2))
                        .in(micrometre / year);
  return metal == Metal::aluminium ? 2.7 * um : um;
}

}  // namespace

TEST_CASE("first-year losses keep their regression values in five climates") {
  // Regression values: computed outside this program from the functions of ISO 9223:2012 (coefficients partly from memory).
  const struct {
    double t, rh, so2, salt, losses[4];
  } rows[] = {{27, 85, 5, 10, {29.6277, 1.66456, 1.83982, 0.55119}},
              {27, 85, 5, 100, {95.1991, 5.12308, 3.15744, 2.03093}},
              {10, 75, 20, 3, {41.2389, 1.65785, 1.29941, 0.28387}},
              {0, 80, 10, 5, {10.3545, 1.04636, 0.58883, 0.17573}},
              {28, 88, 5, 600, {310.0493, 15.07170, 5.74474, 6.81096}}};
  for (const auto& row : rows) {
    for (const Metal metal : metals) {
      CAPTURE(name(metal));
      CAPTURE(row.salt);
      CHECK(loss(metal, row.t, row.rh, row.so2, row.salt) ==
            doctest::Approx(row.losses[static_cast<std::size_t>(metal)]).epsilon(1e-5));
    }
  }
}

TEST_CASE("steel is C3 up to 50 µm a year, C5 up to 200, CX beyond") {
  // ISO 9223:2012 table 2, steel: 1.3, 25, 50, 80, 200 µm (read in public quotations).
  const auto steel = [](double um) { return category(Metal::steel, um * micrometre / year); };
  CHECK(steel(1.3) == Corrosivity::c1);
  CHECK(steel(25) == Corrosivity::c2);
  CHECK(steel(25.1) == Corrosivity::c3);
  CHECK(steel(79) == Corrosivity::c4);
  CHECK(steel(200) == Corrosivity::c5);
  CHECK(steel(310) == Corrosivity::cx);
}

TEST_CASE("more salt never corrodes less") {
  CHECK(rc::check([] {
    const double t = *rc::gen::inRange(-15, 29), rh = *rc::gen::inRange(35, 93),
                 salt = *rc::gen::inRange(1, 700);
    for (const Metal metal : metals)
      RC_ASSERT(loss(metal, t, rh, 5, salt + 10) > loss(metal, t, rh, 5, salt));
  }));
}

TEST_CASE("salt thins out from the surf and is never taken as none") {
  Length distance;
  DepositionRate before = deposit(1e6);
  for (const double metres : {0.0, 50.0, 400.0, 2000.0, 20000.0}) {
    const SaltDeposition salt = estimated_salt(metres * metre);
    CHECK(salt.chloride.typical < before);
    CHECK(salt.chloride.low > deposit(1));
    CHECK(salt.chloride.ordered());
    before = salt.chloride.typical;
  }
  CHECK(unknown_salt().chloride.high >= deposit(300));
}

TEST_CASE("the estimate covers what was collected on Norfolk Island on both sides of 400 m") {
  // Teixeira et al. 2024 (abstract read): 22.7 to 36.7 mg/(m² day) beyond 400 m of the coast, 50.9 to 1022.7 closer.
  const auto at = [](double metres) { return estimated_salt(metres * metre).chloride; };
  CHECK(at(400).low <= deposit(36.7));
  CHECK(at(2000).high >= deposit(22.7));
  CHECK(at(5).high >= deposit(1022.7));
  CHECK(at(350).low <= deposit(50.9));
}

TEST_CASE("unknown salt widens the answer instead of choosing one") {
  const auto losses = first_year_loss(Temperature::celsius(27), RelativeHumidity::percent(80),
                                      unknown_salt().chloride, deposit(5));
  for (const MetalLoss& metal : losses) {
    CHECK(metal.loss.ordered());
    CHECK(metal.worst >= metal.category);
    CHECK(metal.loss.high.si() > 3 * metal.loss.low.si());
  }
}

TEST_CASE("a mean outside the fitted climates is said so") {
  const auto warnings = [](double t, double rh, double salt) {
    return outside_validity(Temperature::celsius(t), RelativeHumidity::percent(rh), deposit(salt), deposit(5))
        .size();
  };
  CHECK(warnings(27, 80, 60) == 0);
  CHECK(warnings(29.5, 80, 60) == 1);
  CHECK(warnings(29.5, 20, 900) == 3);
}
