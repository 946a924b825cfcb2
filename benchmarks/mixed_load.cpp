// Heat, films and vapour of a mixed load against SUNDIALS CVODE on the same equations, at equal error:
// `core/drying/mixed_load.h` over eight hours, from wet and cold to warm and dry. Error: the largest of the temperatures'
// (in kelvins, over 0.1 K) and the films' (in shares of themselves, over 0.1 %), at every half hour, against CVODE at
// tolerances a thousand times finer. CVODE's tolerance is the loosest at which it errs no more than ours.

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <functional>
#include <utility>
#include <vector>

#include "benchmarks/cvode.h"
#include "core/drying/mixed_load.h"

using namespace dampward;

namespace {

constexpr Duration whole = 8 * hour, between = 30 * minute;

// A load like the demo's receivers and radios in its cabinet: figures in round numbers, so that this bench stands still
// while the data move.
drying::MixedLoad load() {
  const drying::OvenNodes oven = {2400 * watt,
                                  1.2 * kilojoule / kelvin,
                                  23 * kilojoule / kelvin,
                                  56 * watt_per_kelvin,
                                  6 * watt_per_kelvin,
                                  4 * watt_per_kelvin,
                                  kilogram,
                                  0.0035 * kilogram_per_second};
  const drying::UnitNodes receiver = {
      2,         12 * kilojoule / kelvin, 4.7 * kilojoule / kelvin, 9 * watt_per_kelvin,
      {},        1.1 * watt_per_kelvin,   VolumeFlow::si(0.012),    8 * watt_per_kelvin,
      150 * gram};
  const drying::UnitNodes radio = {3,
                                   4.5 * kilojoule / kelvin,
                                   1.5 * kilojoule / kelvin,
                                   5 * watt_per_kelvin,
                                   0.6 * watt_per_kelvin,
                                   {},
                                   VolumeFlow::si(0.006),
                                   3 * watt_per_kelvin,
                                   60 * gram};
  const moist_air::HumidAir room{Temperature::celsius(30), RelativeHumidity::percent(80)};
  return {oven, {receiver, radio}, room, Temperature::celsius(65)};
}

using States = std::vector<std::vector<double>>;

States ours() {
  drying::MixedLoad oven = load();
  States seen;
  for (Duration now; now < whole;) {
    for (Duration until = now + between; now < until - 1e-6 * second; now += 20 * second)
      oven.advance(20 * second, MassFlow{});
    seen.push_back(oven.state());
  }
  return seen;
}

double milliseconds(const std::function<void()>& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

#if DAMPWARD_SUNDIALS

States by_cvode(double tolerance) {
  const drying::MixedLoad oven = load();
  cvode::Problem problem;
  problem.rates = [&](auto y, auto f) { oven.rates(y, MassFlow{}, f); };
  problem.start = oven.state();
  problem.relative = tolerance;
  for (std::size_t i = 0; i < problem.start.size(); ++i) {
    // Kelvins; kg of water over kg of air and kg of film, which are small.
    const bool small = i == 2 || (i >= 3 && (i - 3) % 3 == 2);
    problem.absolute.push_back(tolerance * (small ? 1e-2 : 100));
  }
  for (Duration until = between; until <= whole + second; until += between)
    problem.times.push_back(until.si());
  return cvode::integrate(problem).states;
}

double error(const States& seen, const States& truth) {
  if (seen.size() != truth.size()) return HUGE_VAL;
  const drying::MixedLoad fresh = load();
  double most = 0;
  for (std::size_t t = 0; t < truth.size(); ++t) {
    for (std::size_t i = 0; i < truth[t].size(); ++i) {
      if (i == 2) continue;  // the air's vapour shows in the films
      const bool film = i >= 3 && (i - 3) % 3 == 2;
      const double scale = film ? 1e-3 * fresh.state()[i] : 0.1;
      most = std::max(most, std::abs(seen[t][i] - truth[t][i]) / scale);
    }
  }
  return most;
}

double median(std::vector<double> values) {
  std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2),
                   values.end());
  return values[values.size() / 2];
}

#endif

}  // namespace

int main() {
#if DAMPWARD_SUNDIALS
  const States truth = by_cvode(1e-10);
  const double our_error = error(ours(), truth);
  double tolerance = 1e-2;
  while (tolerance > 1e-9 && error(by_cvode(tolerance), truth) > our_error) tolerance /= 2;
  std::vector<double> ours_ms, cvode_ms, ratios;
  for (int turn = 0; turn < 41;
       ++turn) {  // turn and turn about, so that other work on the machine meets both alike
    ours_ms.push_back(milliseconds([] { ours(); }));
    cvode_ms.push_back(milliseconds([&] { by_cvode(tolerance); }));
    ratios.push_back(ours_ms.back() / cvode_ms.back());
  }
  std::printf(
      "Eight hours of a mixed load: ours %.2f ms, error %.2f; CVODE at tolerance %.1e %.2f ms, error %.2f; "
      "ratio %.2f (median of %zu turns; 1 is as quick).\n",
      median(ours_ms), our_error, tolerance, median(cvode_ms), error(by_cvode(tolerance), truth),
      median(ratios), ratios.size());
#else
  std::printf(
      "Eight hours of a mixed load: ours %.2f ms. Nothing to compare with: SUNDIALS is not installed "
      "(Debian: libsundials-dev), then start ./bench drying again.\n",
      milliseconds([] { ours(); }));
#endif
}
