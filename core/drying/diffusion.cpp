#include "core/drying/diffusion.h"

#include <array>
#include <cmath>
#include <numbers>

#include "core/base/promise.h"
#include "core/drying/diffusion_modes.h"
#include "core/numerics/roots.h"

namespace dampward::drying {
namespace {

using std::numbers::pi;

// Zeros of the Bessel function J0, to double precision (Abramowitz and Stegun 1964 table 9.5 lists them).
constexpr std::array bessel_zeros = {2.404825557695773, 5.520078110286311, 8.653727912911013,
                                     11.79153443901428, 14.93091770848779, 18.07106396791092,
                                     21.21163662987926, 24.3524715307493,  27.49347913204025,
                                     30.63460646843198, 33.77582021357357, 36.91709835366404};

// Below these the short-time forms are closer than the cut-off series.
constexpr double short_time_plate = 0.05, short_time_cylinder = 0.007, short_time_sphere = 0.02;

double plate(double fo) {
  if (fo < short_time_plate) return 1 - 2 * std::sqrt(fo / pi);
  double sum = 0;
  for (int n = 0; n < 12; ++n) {
    const double odd = (2 * n + 1) * pi;
    sum += 8 / (odd * odd) * std::exp(-odd * odd * fo / 4);
  }
  return sum;
}

double cylinder(double fo) {
  if (fo < short_time_cylinder) {
    const double root = std::sqrt(fo);
    return 1 - (4 * root / std::sqrt(pi) - fo - fo * root / (3 * std::sqrt(pi)) - fo * fo / 8);
  }
  double sum = 0;
  for (const double a : bessel_zeros) sum += 4 / (a * a) * std::exp(-a * a * fo);
  return sum;
}

double sphere(double fo) {
  if (fo < short_time_sphere) return 1 - (6 * std::sqrt(fo / pi) - 3 * fo);
  double sum = 0;
  for (int n = 1; n <= 12; ++n) sum += 6 / (pi * pi * n * n) * std::exp(-n * n * pi * pi * fo);
  return sum;
}

}  // namespace

double residual_share(Shape shape, double fourier) {
  DAMPWARD_PROMISE(fourier >= 0, "a Fourier number is never negative");
  switch (shape) {
    case Shape::plate:
      return plate(fourier);
    case Shape::cylinder:
      return cylinder(fourier);
    case Shape::sphere:
      return sphere(fourier);
    case Shape::none:
      break;
  }
  broken_promise("only a body with a shape loses water by diffusion");
}

double fourier_for_residual(Shape shape, double residual) {
  DAMPWARD_PROMISE(residual > 0 && residual <= 1, "a residual share lies above 0 and at most at 1");
  if (residual == 1) return 0;
  double high = 1;
  while (residual_share(shape, high) > residual) high *= 2;
  return numerics::root_between([&](double fo) { return residual_share(shape, fo) - residual; }, 0, high,
                                1e-10);
}

double fourier_for_residual_of_layer(Shape shape, double layer, double residual) {
  if (layer == 1) return fourier_for_residual(shape, residual);
  const Modes all = modes(shape, layer);
  const auto left = [&](double fo) {
    double sum = 0;
    for (const Mode& mode : all) sum += mode.weight * std::exp(-mode.rate * fo);
    return sum;
  };
  double high = 1;
  while (left(high) > residual) high *= 2;
  return numerics::root_between([&](double fo) { return left(fo) - residual; }, 0, high, 1e-10);
}

double residual_share_of_block(double fourier_length, double fourier_width, double fourier_height) {
  return plate(fourier_length) * plate(fourier_width) * plate(fourier_height);
}

Length path_length(Shape shape, Length thickness, int open_faces) {
  const bool one_sided = shape == Shape::plate && open_faces < 2;
  return one_sided ? thickness : thickness / 2;
}

}  // namespace dampward::drying
