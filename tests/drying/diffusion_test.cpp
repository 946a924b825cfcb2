#include "core/drying/diffusion.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <vector>

#include "core/drying/part_drying.h"
#include "sample.h"

using namespace dampward;
using namespace dampward::drying;

namespace {

// The dull twin: diffusion in layers, plain explicit steps, nothing shared with the series. Geometry 0 plate
// (half, two faces), 1 cylinder, 2 sphere. Returns the share left at Fourier number `fourier`.
double residual_by_layers(int geometry, double fourier, int layers) {
  const double dx = 1.0 / layers;
  std::vector<double> c(layers, 1.0), volume(layers), face(layers + 1);
  for (int i = 0; i <= layers; ++i) face[i] = std::pow(i * dx, geometry);
  double total = 0;
  for (int i = 0; i < layers; ++i) {
    volume[i] = (std::pow((i + 1) * dx, geometry + 1) - std::pow(i * dx, geometry + 1)) / (geometry + 1);
    total += volume[i];
  }
  const int steps = static_cast<int>(fourier / (0.2 * dx * dx)) + 1;
  const double dt = fourier / steps;
  for (int n = 0; n < steps; ++n) {
    double inflow = 0;  // through the inner face of layer i
    for (int i = 0; i < layers; ++i) {
      const double outflow =
          i + 1 < layers ? face[i + 1] * (c[i] - c[i + 1]) / dx : face[layers] * c[i] / (0.5 * dx);
      c[i] += dt * (inflow - outflow) / volume[i];
      inflow = outflow;
    }
  }
  double left = 0;
  for (int i = 0; i < layers; ++i) left += c[i] * volume[i];
  return left / total;
}

constexpr Shape shapes[] = {Shape::plate, Shape::cylinder, Shape::sphere};

}  // namespace

TEST_CASE("the three series give the shares that Crank's equations do") {
  // Regression values: Crank 1975 eq. 4.18, 5.23, 6.20 summed to 2000 terms elsewhere.
  struct Row {
    double fourier, plate, cylinder, sphere;
  };
  constexpr Row rows[] = {{0.001, 0.035682, 0.070359, 0.104047}, {0.01, 0.112838, 0.215474, 0.308514},
                          {0.05, 0.252313, 0.452121, 0.606940},  {0.1, 0.356823, 0.605824, 0.770479},
                          {0.2, 0.504088, 0.782148, 0.915496},   {0.5, 0.763950, 0.961621, 0.995628},
                          {1.0, 0.931260, 0.997870, 0.999969}};
  for (const Row& row : rows) {
    CAPTURE(row.fourier);
    CHECK(std::abs(1 - residual_share(Shape::plate, row.fourier) - row.plate) < 1e-6);
    CHECK(std::abs(1 - residual_share(Shape::cylinder, row.fourier) - row.cylinder) < 2e-6);
    CHECK(std::abs(1 - residual_share(Shape::sphere, row.fourier) - row.sphere) < 1e-6);
  }
}

TEST_CASE("half a sheet's water is out when D t over thickness squared is 0.049") {
  // Crank 1975 ch. 4 prints 0.049 (from memory); thickness is the full one, so Fo = 4 × 0.049.
  CHECK(fourier_for_residual(Shape::plate, 0.5) / 4 == doctest::Approx(0.049).epsilon(0.01));
}

TEST_CASE("nine tenths are out of plate, cylinder and sphere at 0.848, 0.334 and 0.183") {
  CHECK(fourier_for_residual(Shape::plate, 0.1) == doctest::Approx(0.848085).epsilon(2e-6));
  CHECK(fourier_for_residual(Shape::cylinder, 0.1) == doctest::Approx(0.334413).epsilon(2e-6));
  CHECK(fourier_for_residual(Shape::sphere, 0.1) == doctest::Approx(0.182985).epsilon(5e-6));
  CHECK(fourier_for_residual(Shape::sphere, 1) == 0);
}

TEST_CASE("a cube loses water through three pairs of faces at once") {
  // Newman's product with Fo 0.1 each way: 0.733934 out (regression value).
  CHECK(1 - residual_share_of_block(0.1, 0.1, 0.1) == doctest::Approx(0.733934).epsilon(1e-5));
}

TEST_CASE("the series agree with thin layers stepped through time") {
  for (int geometry = 0; geometry < 3; ++geometry) {
    for (const double fourier : {0.05, 0.2, 0.6}) {
      CAPTURE(geometry);
      CAPTURE(fourier);
      CHECK(std::abs(residual_by_layers(geometry, fourier, 80) - residual_share(shapes[geometry], fourier)) <
            1e-3);
    }
  }
}

TEST_CASE("halving the layers of the twin cuts its distance from the series to about a quarter") {
  const double exact = residual_share(Shape::plate, 0.2);
  const double coarse = std::abs(residual_by_layers(0, 0.2, 20) - exact),
               fine = std::abs(residual_by_layers(0, 0.2, 40) - exact);
  CHECK(coarse / fine == doctest::Approx(4).epsilon(0.15));
}

TEST_CASE("what is left only falls with time, and the inverse finds it again") {
  rc::check([] {
    const Shape shape = shapes[*rc::gen::inRange(0, 3)];
    const double fourier = *rc::gen::inRange(0, 40000) / 20000.0, more = *rc::gen::inRange(1, 1000) / 20000.0;
    const double left = residual_share(shape, fourier);
    RC_ASSERT(left >= 0 && left <= 1);
    RC_ASSERT(residual_share(shape, fourier + more) <= left);
    if (left > 1e-6)
      RC_ASSERT(std::abs(residual_share(shape, fourier_for_residual(shape, left)) - left) < 1e-8);
  });
}

TEST_CASE("half and whole thickness are told apart: one open face takes four times as long") {
  const Length two = path_length(Shape::plate, 3 * millimetre, 2),
               one = path_length(Shape::plate, 3 * millimetre, 1);
  CHECK((one * one) / (two * two) == doctest::Approx(4));
  CHECK(path_length(Shape::cylinder, 6 * millimetre, 1) == 3 * millimetre);
}

TEST_CASE("three hours at 71 °C take 22.7 % of its water from a 1.6 mm epoxy sheet, and 90 % takes 63 h") {
  // Regression values with D 2.391e-12 m²/s at 71.1 °C: the rule of the trade dries surfaces and paper, not
  // laminates.
  DryingBody sheet;
  sheet.shape = Shape::plate;
  sheet.path = 0.8 * millimetre;
  sheet.diffusion = {sample::figure(Diffusivity::si(2.391e-12)), Temperature::celsius(71.1),
                     sample::figure(43 * kilojoule_per_mole)};
  sheet.needed = fourier_for_residual(Shape::plate, 0.1) * (0.8 * millimetre * (0.8 * millimetre));
  const auto out_after = [&](Duration time) {
    const Area way = effective_diffusivity(sheet, Temperature::celsius(71.1), Side::typical) * time;
    return 1 - residual_share(Shape::plate, way / (0.8 * millimetre * (0.8 * millimetre)));
  };
  CHECK(out_after(3 * hour) == doctest::Approx(0.227).epsilon(0.003));
  CHECK(out_after(24 * hour) == doctest::Approx(0.634).epsilon(0.003));
  CHECK(time_to_dry(sheet, Temperature::celsius(71.1), Side::typical).in(hour) ==
        doctest::Approx(63.1).epsilon(0.003));
}

TEST_CASE(
    "independent doubts combine: the safe drying is slower than each doubt alone, and not as slow as all at "
    "once") {
  const auto slowness = [](Range<double> diffusivity, Range<double> energy_kj, Range<double> path_mm) {
    DryingBody body;
    body.path = {path_mm.low * millimetre, path_mm.typical * millimetre, path_mm.high * millimetre};
    body.diffusion = {
        sample::figure(Diffusivity::si(diffusivity.low), Diffusivity::si(diffusivity.typical),
                       Diffusivity::si(diffusivity.high)),
        Temperature::celsius(71),
        sample::figure(energy_kj.low * kilojoule_per_mole, energy_kj.typical * kilojoule_per_mole,
                       energy_kj.high * kilojoule_per_mole)};
    body.needed = Area::si(1e-7);
    const auto time = [&](Side side) { return time_to_dry(body, Temperature::celsius(50), side); };
    return time(Side::safe) / time(Side::typical);
  };
  const Range<double> wide = {1e-10, 1e-9, 3e-9}, energy = {30, 43, 50}, path = {2, 3, 4};
  CHECK(slowness(1e-9, 43, 3) == doctest::Approx(1));
  CHECK(slowness(wide, 43, 3) == doctest::Approx(10));
  CHECK(slowness(1e-9, 43, path) == doctest::Approx(16.0 / 9));
  const double by_energy = slowness(1e-9, energy, 3), all = slowness(wide, energy, path);
  CHECK(by_energy > 1.1);
  CHECK(all > 10);
  CHECK(all < 10 * by_energy * 16 / 9);
  CHECK(std::log(all) == doctest::Approx(std::hypot(std::log(10), std::log(by_energy), std::log(16.0 / 9))));
}
