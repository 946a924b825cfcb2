// Drying of a load of the demo against SUNDIALS CVODE on the same equations, at equal error: three river-launch radios in the
// heater cabinet at 50 °C for eight hours, typical figures, with heat, films, vapour and the water inside every part that
// has an isotherm. Ours takes the series of each part along; CVODE gets finite volumes, narrow at the surface. Error: the
// largest of what is left in a part, in hundredths of its start, and of the shells' temperatures in tenths of a kelvin, at
// two, four and eight hours, against CVODE with many volumes at a fine tolerance.

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <functional>
#include <vector>

#include "adapters/files/shop_folder.h"
#include "benchmarks/cvode.h"
#include "core/drying/load_run.h"
#include "core/materials/isotherm.h"
#include "core/moist_air/saturation.h"
#include "workbench/workshop.h"

using namespace dampward;
using drying::DryingBody;

namespace {

constexpr double ends[] = {2 * 3600.0, 4 * 3600.0, 8 * 3600.0};  // s

struct Bench {
  const shop::Oven& oven;
  const drying::Wall& wall;
  drying::OvenPiece piece;
  moist_air::HumidAir room{Temperature::celsius(30), RelativeHumidity::percent(80)};
  drying::LoadUnits load{&piece, 3};
  drying::RunSettings settings{Temperature::celsius(50), drying::Side::typical, {}, {}, {}};

  std::vector<const drying::OvenPart*> parts() const {
    std::vector<const drying::OvenPart*> all;
    for (const auto& part : piece.parts)
      if (part.body && part.body->fibre > Mass{}) all.push_back(&part);
    return all;
  }
};

// What one way of reckoning says at one time: shares left in the parts, then the shell in kelvins.
using Said = std::vector<double>;

Said ours(const Bench& bench, double end) {
  drying::RunSettings settings = bench.settings;
  settings.rules.porous_residual = 0.999;  // wait for nothing but the end
  settings.at_least = Duration::si(end);
  const auto run = drying::run_load(bench.oven, bench.wall, {&bench.load, 1}, bench.room, settings);
  Said said;
  for (std::size_t j = 0; j < bench.piece.parts.size(); ++j) {
    const auto& part = bench.piece.parts[j];
    if (part.body && part.body->fibre > Mass{}) said.push_back(*run->parts[0][j].residual);
  }
  said.push_back(run->shell[0].points().back().temperature.kelvins());
  return said;
}

double milliseconds(const std::function<void()>& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

#if DAMPWARD_SUNDIALS

double median(std::vector<double> values) {
  std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2),
                   values.end());
  return values[values.size() / 2];
}

// A part in volumes that shrink towards its surface, in units of its path; the first is innermost.
struct Volumes {
  const drying::OvenPart* part;
  int power;
  std::vector<double> faces;  // 0 … 1
  double start, floor;

  Volumes(const drying::OvenPart& of, const Bench& bench, int count) : part(&of) {
    const DryingBody& body = *of.body;
    power = body.shape == equipment::Shape::plate ? 0 : body.shape == equipment::Shape::cylinder ? 1 : 2;
    for (int i = 0; i <= count; ++i) faces.push_back(1 - std::pow(1 - i / double(count), 2.5));
    const auto settled = moist_air::brought_to(bench.room, bench.settings.air);
    start = materials::equilibrium_moisture(body.isotherm, bench.room.temperature, bench.room.humidity)
                ->fraction();
    floor = materials::equilibrium_moisture(body.isotherm, settled.temperature, settled.humidity)->fraction();
  }
  std::size_t count() const { return faces.size() - 1; }
  double volume(std::size_t i) const {
    return (std::pow(faces[i + 1], power + 1) - std::pow(faces[i], power + 1));  // of the whole
  }
  // Rates of the cells; returns how fast the mean falls.
  double rates(const double* w, double* f, double kelvins, double pascals) const {
    const Temperature at = Temperature::kelvins(kelvins);
    const double humidity = std::clamp(pascals / moist_air::saturation_pressure(at).si(), 0.0, 1.0);
    const double surface =
        materials::equilibrium_moisture(part->body->isotherm, at, RelativeHumidity::fraction(humidity))
            ->fraction();
    const double path = part->body->path.typical.si();
    const double pace = effective_diffusivity(*part->body, at, drying::Side::typical).si() / (path * path);
    double inflow = 0;
    for (std::size_t i = 0; i < count(); ++i) {
      const double here = (faces[i] + faces[i + 1]) / 2;
      const bool last = i + 1 == count();
      const double next = last ? 1 : (faces[i + 1] + faces[i + 2]) / 2;
      const double beyond = last ? surface : w[i + 1];
      const double out = pace * (power + 1) * std::pow(faces[i + 1], power) * (w[i] - beyond) / (next - here);
      f[i] = (inflow - out) / volume(i);
      inflow = out;
    }
    return inflow;
  }
  double share_left(const double* w) const {
    double sum = 0;
    for (std::size_t i = 0; i < count(); ++i) sum += volume(i) * w[i];
    return (sum - floor) / (start - floor);
  }
};

std::vector<Said> by_cvode(const Bench& bench, int cells, double tolerance) {
  const drying::MixedLoad oven =
      drying::mixed_load(bench.oven, bench.wall, {&bench.load, 1}, bench.room, bench.settings);
  std::vector<Volumes> parts;
  for (const auto* part : bench.parts()) parts.emplace_back(*part, bench, cells);
  const double film = oven.state()[5];

  cvode::Problem wet;  // until the surfaces are dry, the insides stand still
  wet.rates = [&](auto y, auto f) { oven.rates(y, MassFlow{}, f); };
  wet.start = oven.state();
  wet.relative = tolerance;
  for (const std::size_t i : {0, 1, 2, 3, 4, 5})
    wet.absolute.push_back(tolerance * (i == 2 || i == 5 ? 1e-2 : 100));
  wet.times = {ends[0]};
  wet.ends = [&](auto y) { return y[5] - drying::film_gone * film; };
  const cvode::Answer dry = cvode::integrate(wet);

  cvode::Problem whole;
  whole.relative = tolerance;
  whole.start = dry.last;
  whole.absolute = wet.absolute;
  for (const Volumes& part : parts) {
    whole.start.insert(whole.start.end(), part.count(), part.start);
    whole.absolute.insert(whole.absolute.end(), part.count(), tolerance * 0.1);
  }
  whole.rates = [&](auto y, auto f) {
    const double pascals = bench.room.pressure.si() * y[2] / (0.621945 + y[2]);
    double given = 0;
    std::size_t at = 6;
    for (const Volumes& part : parts) {
      const double kelvins = part.part->in_heavy_lump ? y[4] : y[3];
      given += bench.load.count * part.part->body->fibre.si() * part.rates(&y[at], &f[at], kelvins, pascals);
      at += part.count();
    }
    oven.rates(y.first(6), MassFlow::si(given), f.first(6));
  };
  for (const double end : ends) whole.times.push_back(end - dry.ended);
  std::vector<Said> all;
  for (const auto& y : cvode::integrate(whole).states) {
    Said& said = all.emplace_back();
    std::size_t at = 6;
    for (const Volumes& part : parts) {
      said.push_back(part.share_left(&y[at]));
      at += part.count();
    }
    said.push_back(y[3]);
  }
  return all;
}

double error(const std::vector<Said>& said, const std::vector<Said>& truth) {
  if (said.size() != truth.size()) return HUGE_VAL;
  double most = 0;
  for (std::size_t t = 0; t < truth.size(); ++t)
    for (std::size_t i = 0; i < truth[t].size(); ++i)
      most = std::max(most, std::abs(said[t][i] - truth[t][i]) / (i + 1 < truth[t].size() ? 0.01 : 0.1));
  return most;
}

void compare(const Bench& bench) {
  const std::vector<Said> truth = by_cvode(bench, 60, 1e-8);
  std::vector<Said> said;
  for (const double end : ends) said.push_back(ours(bench, end));
  const double our_error = error(said, truth);
  // The quickest of CVODE's settings that errs no more.
  int cells = 0;
  double tolerance = 0, quickest = HUGE_VAL;
  for (const int some : {6, 8, 10, 14, 20, 28, 40}) {
    for (const double by : {1e-3, 1e-4, 1e-5, 1e-6}) {
      if (error(by_cvode(bench, some, by), truth) > our_error) continue;
      const double took = milliseconds([&] { by_cvode(bench, some, by); });
      if (took < quickest) quickest = took, cells = some, tolerance = by;
    }
  }
  if (cells == 0) {
    std::printf("CVODE with up to 40 volumes a part does not reach our error of %.2f.\n", our_error);
    return;
  }
  std::vector<double> ours_ms, cvode_ms, ratios;
  for (int turn = 0; turn < 21;
       ++turn) {  // turn and turn about, so that other work on the machine meets both alike
    ours_ms.push_back(milliseconds([&] { ours(bench, ends[2]); }));
    cvode_ms.push_back(milliseconds([&] { by_cvode(bench, cells, tolerance); }));
    ratios.push_back(ours_ms.back() / cvode_ms.back());
  }
  std::printf(
      "Eight hours of drying three sets, %zu parts each: ours %.2f ms, error %.2f; CVODE with %d volumes a "
      "part at "
      "tolerance %.0e %.2f ms, error %.2f; ratio %.2f (median of %zu turns; 1 is as quick).\n",
      bench.parts().size(), median(ours_ms), our_error, cells, tolerance, median(cvode_ms),
      error(by_cvode(bench, cells, tolerance), truth), median(ratios), ratios.size());
}

#else

void compare(const Bench& bench) {
  std::printf(
      "Eight hours of drying three sets: ours %.2f ms. Nothing to compare with: SUNDIALS is not installed "
      "(Debian: libsundials-dev). Install it, then start ./bench drying again.\n",
      milliseconds([&] { ours(bench, ends[2]); }));
}

#endif

}  // namespace

int main() {
  const auto workshop = files::read_workshop(std::filesystem::path(DAMPWARD_SOURCE_DIR) / "data/demo");
  if (!workshop) return 1;
  const equipment::Kind* radio = workshop->kinds.find(KindId("river_radio"));
  const shop::Oven& cabinet = workshop->shop.ovens.front();
  const drying::Wall* wall = workshop->walls.find(cabinet.wall);
  if (radio == nullptr || wall == nullptr) return 1;
  const auto out = drying::usually_out(*radio, equipment::ValveChoice::stay_as_masks);
  compare({cabinet, *wall, drying::oven_piece(*radio, out, workshop->materials)});
}
