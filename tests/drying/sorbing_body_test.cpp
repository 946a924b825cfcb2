#include "core/drying/sorbing_body.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/drying/diffusion.h"

using namespace dampward;
using namespace dampward::drying;

namespace {

constexpr Shape shapes[] = {Shape::plate, Shape::cylinder, Shape::sphere};

MoistureContent share(double fraction) {
  return MoistureContent::fraction(fraction);
}

// The dull twin: finite volumes in equal shells, small explicit steps, the surface given at each.
class FiniteVolumes {
 public:
  FiniteVolumes(Shape shape, double start)
      : power_(shape == Shape::plate      ? 0
               : shape == Shape::cylinder ? 1
                                          : 2),
        cells_(count, start) {}
  void advance(double fourier, double surface) {
    std::vector<double> flow(count + 1, 0);
    for (int i = 1; i < count; ++i) flow[i] = face(i) * (cells_[i - 1] - cells_[i]) * count;
    flow[count] = face(count) * (cells_[count - 1] - surface) * 2 * count;
    for (int i = 0; i < count; ++i) cells_[i] += fourier * (flow[i] - flow[i + 1]) / volume(i);
  }
  double mean(double layer = 1) const {
    double sum = 0, all = 0;
    for (int i = static_cast<int>(std::lround((1 - layer) * count)); i < count; ++i)
      sum += volume(i) * cells_[i], all += volume(i);
    return sum / all;
  }
  static constexpr int count = 200;
  static constexpr double safe_step = 0.2 / (count * count);

 private:
  double face(int i) const { return std::pow(i / double(count), power_); }
  double volume(int i) const {
    const double n = power_ + 1;
    return (std::pow((i + 1) / double(count), n) - std::pow(i / double(count), n)) / n;
  }
  int power_;
  std::vector<double> cells_;
};

}  // namespace

TEST_CASE("a surface that stays put gives the series of the three shapes") {
  for (const Shape shape : shapes) {
    for (const double fourier : {0.01, 0.05, 0.1, 0.3, 0.8}) {
      SorbingBody one(shape, 1, share(1)), many(shape, 1, share(1));
      one.advance(fourier, share(0));
      for (int i = 0; i < 50; ++i) many.advance(fourier / 50, share(0));
      CHECK(one.mean().fraction() == doctest::Approx(residual_share(shape, fourier)).epsilon(1e-4));
      CHECK(many.mean().fraction() == doctest::Approx(one.mean().fraction()).epsilon(1e-9));
    }
    // For shorter times the tail in one term stands for all the rest.
    for (const double fourier : {1e-5, 1e-4, 1e-3}) {
      SorbingBody body(shape, 1, share(1));
      body.advance(fourier, share(0));
      CHECK(std::abs(body.mean().fraction() - residual_share(shape, fourier)) < 0.01);
    }
  }
}

TEST_CASE("the modes of a body hold all its water at first") {
  for (const Shape shape : shapes) {
    double sum = 0;
    for (const Mode& mode : modes(shape)) {
      CHECK(mode.weight > 0);
      sum += mode.weight;
    }
    CHECK(sum == doctest::Approx(1));
  }
}

TEST_CASE("a part whose surface follows the oven's air dries as finite volumes in small steps say") {
  // A surface that wanders: damp air at first, drier later, one damp spell between.
  const auto surface = [](double fourier) {
    return 0.03 + 0.08 * std::exp(-fourier / 0.05) + 0.02 * std::exp(-std::pow((fourier - 0.2) / 0.04, 2));
  };
  for (const Shape shape : shapes) {
    SorbingBody ours(shape, 1, share(0.12));
    FiniteVolumes twin(shape, 0.12);
    double done = 0;
    ours.advance(0, share(surface(0)));
    for (int step = 1; step <= 40; ++step) {
      const double until = step * 0.01;
      while (done < until - 1e-12) {
        const double by = std::min(FiniteVolumes::safe_step, until - done);
        twin.advance(by, surface(done + by / 2));
        done += by;
      }
      ours.advance(0.01, share(surface(until)));
      CHECK(ours.mean().fraction() == doctest::Approx(twin.mean()).epsilon(0.004));
    }
  }
}

TEST_CASE("the outermost fifth of a plate dries long before its middle, as finite volumes say") {
  SorbingBody ours(Shape::plate, 0.2, share(1));
  FiniteVolumes twin(Shape::plate, 1);
  double done = 0;
  for (const double until : {0.02, 0.05, 0.1, 0.3, 0.6}) {
    while (done < until - 1e-12) {
      twin.advance(FiniteVolumes::safe_step, 0);
      done += FiniteVolumes::safe_step;
    }
    SorbingBody fresh(Shape::plate, 0.2, share(1));
    fresh.advance(done, share(0));
    CHECK(fresh.layer().fraction() == doctest::Approx(twin.mean(0.2)).epsilon(0.01));
    CHECK(fresh.layer() < fresh.mean());
  }
  CHECK(fourier_for_residual_of_layer(Shape::plate, 0.2, 0.1) < fourier_for_residual(Shape::plate, 0.1));
  CHECK(fourier_for_residual_of_layer(Shape::plate, 0.999999, 0.1) ==
        doctest::Approx(fourier_for_residual(Shape::plate, 0.1)).epsilon(1e-4));
}

TEST_CASE("a part never comes out wetter than it went in or than its surface ever was, nor drier") {
  rc::check([] {
    const Shape shape = shapes[*rc::gen::inRange(0, 3)];
    const double start = *rc::gen::inRange(0, 200) / 1000.0;
    SorbingBody body(shape, 1, share(start));
    double wettest = start, driest = start;
    for (int i = *rc::gen::inRange(1, 30); i > 0; --i) {
      const double surface = *rc::gen::inRange(0, 200) / 1000.0, fourier = *rc::gen::inRange(0, 100) / 1000.0;
      body.advance(fourier, share(surface));
      wettest = std::max(wettest, surface);
      driest = std::min(driest, surface);
      RC_ASSERT(body.mean().fraction() <= wettest + 1e-9);
      RC_ASSERT(body.mean().fraction() >= driest - 1e-9);
    }
  });
}

TEST_CASE("a corrected step is the step made with the right surface at once") {
  SorbingBody corrected(Shape::cylinder, 1, share(0.1)), at_once = corrected;
  for (const double surface : {0.04, 0.03, 0.05}) {
    corrected.advance(0.02, share(surface + 0.01));
    const double open = corrected.openness(), before = corrected.mean().fraction();
    corrected.correct(share(surface));
    at_once.advance(0.02, share(surface));
    CHECK(corrected.openness() == open);
    CHECK(before - corrected.mean().fraction() == doctest::Approx(0.01 * open));
    if (surface != 0.04)
      CHECK(corrected.mean().fraction() == doctest::Approx(at_once.mean().fraction()).epsilon(0.03));
  }
}
