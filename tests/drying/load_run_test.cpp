#include "core/drying/load_run.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/drying/mixed_load.h"
#include "core/drying/surface_drying.h"
#include "core/materials/diffusivity.h"
#include "core/materials/isotherm.h"
#include "core/moist_air/saturation.h"
#include "sample.h"

using namespace dampward;
using namespace dampward::drying;

namespace {

equipment::Kind cotton_bale() {
  equipment::Kind kind = sample::radio();
  kind.parts.push_back(sample::part("bale", "webbing", 1500, equipment::Shape::plate, 12));
  return kind;
}

// The dull twin of a whole run: one kind of unit with one porous plate and one cord, explicit steps of a fifth of a
// second, finite volumes of ten shells inside each part, everything written out.
struct TwinPart {
  int power;           // 0 plate, 1 cylinder
  double path, fibre;  // m, kg in the whole load
  bool inner;
  std::vector<double> cells;
  double mean = 0;
};
struct TwinRun {
  double shell, inner, humidity;
  std::vector<double> left;  // moisture over dry mass
};

TwinRun twin_run(const OvenPiece& piece, int count, const shop::Oven& oven, const moist_air::HumidAir& room,
                 double set, double seconds) {
  constexpr int n = 30;
  const auto h = surface_convection(piece.flow_length, oven.air_moves, Temperature::kelvins(set));
  const double wet = piece.wet_surface.typical.si();
  const double drying = mass_transfer_coefficient(h).si() * wet, first_film = wet * 50e-6 * 1000;
  const double extra = h.si() * std::max(0.0, wet - piece.box.si());
  const double all = piece.capacity.typical.si(), heavy = piece.heavy_capacity->typical.si();
  const double g = all / piece.time_constant(AirMotion::moving).typical.si();
  const double k = heavy / piece.heavy_moving->typical.si();
  const OvenNodes nodes =
      oven_nodes(oven, sample::wall(), Loss::typical, moist_air::brought_to(room, Temperature::kelvins(set)));
  const double start = room.temperature.kelvins(), outside = moist_air::humidity_ratio(room).fraction();
  std::vector<TwinPart> parts;
  for (const OvenPart& part : piece.parts) {
    if (!part.body || part.body->diffusion.diffusivity.value.typical.si() < 1e-11) continue;
    const double damp =
        materials::equilibrium_moisture(part.body->isotherm, room.temperature, room.humidity)->fraction();
    parts.push_back({part.body->shape == Shape::plate ? 0 : 1, part.body->path.typical.si(),
                     count * part.body->fibre.si(), part.in_heavy_lump, std::vector<double>(n, damp), damp});
  }
  double air = start, lining = start, shell = start, inner = start, film = first_film, ratio = outside;
  bool was_dry = false;
  const double dt = 0.2;
  for (double t = 0; t < seconds - dt / 2; t += dt) {
    const double pressure = room.pressure.si() * ratio / (0.621945 + ratio);
    const double drive =
        moist_air::saturation_pressure(Temperature::kelvins(shell)).si() / (461.526 * shell) -
        pressure / (461.526 * air);
    const double covered = drive > 0 ? std::clamp(film / (0.1 * first_film), 0.0, 1.0) : 1;
    const double leaves = covered * drying * drive;
    const double power = nodes.available.si() * std::clamp((set - air) / 0.5, 0.0, 1.0);
    const double in = (g + covered * extra) * (air - shell), to_inner = k * (shell - inner);
    was_dry = was_dry || film <= 0.01 * first_film;
    double given = 0;
    if (was_dry) {
      for (TwinPart& part : parts) {
        const double at = part.inner ? inner : shell;
        const double d = 1e-9 * std::exp(-43e3 / 8.314462618 * (1 / at - 1 / 344.15));
        const double rh =
            std::clamp(pressure / moist_air::saturation_pressure(Temperature::kelvins(at)).si(), 0.0, 1.0);
        const double surface =
            materials::equilibrium_moisture(materials::Isotherm::paper, Temperature::kelvins(at),
                                            RelativeHumidity::fraction(rh))
                ->fraction();
        const double cell = part.path / n, before = part.mean;
        std::vector<double> flow(n + 1, 0.0);
        const auto face = [&](int i) { return part.power == 0 ? 1.0 : i * cell; };
        for (int i = 1; i < n; ++i) flow[i] = face(i) * d * (part.cells[i - 1] - part.cells[i]) / cell;
        flow[n] = face(n) * d * (part.cells[n - 1] - surface) / (cell / 2);
        double sum = 0, volume = 0;
        for (int i = 0; i < n; ++i) {
          const double here = part.power == 0 ? cell : (2 * i + 1) * cell * cell / 2;
          part.cells[i] += dt * (flow[i] - flow[i + 1]) / here;
          sum += here * part.cells[i], volume += here;
        }
        part.mean = sum / volume;
        given += part.fibre * (before - part.mean);
      }
    }
    shell += dt * (in - to_inner - (2501e3 - 2360 * (shell - 273.15)) * leaves) / (all - heavy);
    inner += dt * to_inner / heavy;
    film = std::max(0.0, film - dt * leaves);
    ratio += (dt * (count * leaves - nodes.fresh.si() * (ratio - outside)) + given) / nodes.dry_air.si();
    const double to_lining = nodes.inside.si() * (air - lining);
    lining += dt * (to_lining - nodes.outside.si() * (lining - start)) / nodes.lining.si();
    air += dt * (power - nodes.vented.si() * (air - start) - to_lining - count * in) / nodes.air.si();
  }
  TwinRun run{shell, inner, ratio, {}};
  for (const TwinPart& part : parts) run.left.push_back(part.mean);
  return run;
}

LoadRun run(const OvenPiece& piece, int count, RunSettings settings,
            const moist_air::HumidAir& air = sample::shop_air(), const shop::Oven& oven = sample::cabinet()) {
  const LoadUnits load[] = {{&piece, count}};
  const auto answer = run_load(oven, sample::wall(), load, air, settings);
  REQUIRE(answer.has_value());
  return *answer;
}

RunSettings typical(double celsius) {
  RunSettings settings;
  settings.air = Temperature::celsius(celsius);
  return settings;
}

}  // namespace

TEST_CASE("a whole run of wet units with kilograms of cotton agrees with a brute-force twin in small steps") {
  const OvenPiece piece = sample::piece(cotton_bale());
  shop::Oven shut = sample::cabinet();
  shut.vent = 0.02 * cubic_metre_per_minute;
  for (const shop::Oven& oven : {sample::cabinet(), shut}) {
    for (const double hours : {2.0, 4.0}) {
      RunSettings settings = typical(65);
      settings.at_least = hours * hour;
      // Only parts that are waited for end a run early or late: the residuals are those at `at_least` or later.
      const LoadRun ours = run(piece, 3, settings, sample::shop_air(), oven);
      const double end = std::max(ours.until_dry(), settings.at_least).si();
      const TwinRun twin = twin_run(piece, 3, oven, sample::shop_air(), 338.15, end);
      CHECK(std::abs(ours.shell[0].points().back().temperature.kelvins() - twin.shell) < 0.2);
      CHECK(std::abs(ours.inner[0].points().back().temperature.kelvins() - twin.inner) < 0.2);
      std::size_t next = 0;
      for (std::size_t j = 0; j < piece.parts.size(); ++j) {
        const auto& body = piece.parts[j].body;
        if (!body || body->diffusion.diffusivity.value.typical.si() < 1e-11) continue;
        const PartRun& part = ours.parts[0][j];
        const double removable = part.moisture->start.fraction() - part.moisture->floor.fraction();
        const double left = (twin.left[next++] - part.moisture->floor.fraction()) / removable;
        CAPTURE(piece.parts[j].name);
        CHECK(std::abs(*part.residual - left) < 0.01);
      }
    }
  }
}

TEST_CASE("water that leaves parts makes the oven's air damper and holds the others back") {
  const OvenPiece little = sample::piece(sample::radio()), much = sample::piece(cotton_bale());
  shop::Oven shut = sample::cabinet();
  shut.vent = {};
  const auto cord_left = [&](const OvenPiece& piece) {
    RunSettings settings = typical(65);
    settings.at_least = 12 * hour;
    settings.rules.porous_residual = 0.9;  // nothing is waited for
    settings.at_least = 4 * hour;
    const LoadRun done = run(piece, 4, settings, sample::shop_air(), shut);
    return *done.parts[0][2].residual;
  };
  CHECK(cord_left(much) > cord_left(little));
}

TEST_CASE("a unit that goes in dry never comes out wetter than the oven's air allows") {
  rc::check([] {
    const double celsius = *rc::gen::inRange(20, 36), percent = *rc::gen::inRange(2, 95);
    const double set = *rc::gen::inRange(50, 80);
    const OvenPiece piece = sample::piece(sample::radio());
    const auto air = sample::shop_air(celsius, percent);
    const LoadRun done = run(piece, *rc::gen::inRange(1, 5), typical(set), air);
    for (const PartRun& part : done.parts[0]) {
      if (!part.moisture) continue;
      const double wettest =
          materials::equilibrium_moisture(materials::Isotherm::paper, air.temperature, done.dampest)
              ->fraction();
      RC_ASSERT(part.moisture->after.fraction() <= std::max(part.moisture->start.fraction(), wettest) + 1e-6);
      RC_ASSERT(part.moisture->after.fraction() >= part.moisture->floor.fraction() - 1e-6);
    }
  });
}

TEST_CASE("the clock of the hold starts when the last node is warm, long after the oven's air is") {
  const LoadRun done = run(sample::piece(sample::radio()), 2, typical(65));
  const Duration warm = done.plateau + done.warm_up;
  CHECK(done.inner[0].at(warm).celsius() == doctest::Approx(63).epsilon(0.005));
  CHECK(done.shell[0].at(warm).celsius() >= 62.9);
  CHECK(done.shell[0].at(0.5 * done.plateau).celsius() < 50);  // the wet bulb holds it down
  CHECK(warm > 30 * minute);
}

TEST_CASE("a plate asked to dry a fifth of a millimetre in is waited for, and for less long than all of it") {
  equipment::Kind deep = sample::radio(), skin = sample::radio();
  for (equipment::Part& part : deep.parts)
    if (part.id == PartId("board")) part.dry_target = equipment::DryTarget::deep;
  for (equipment::Part& part : skin.parts)
    if (part.id == PartId("board")) part.dry_depth = 0.2 * millimetre;
  const OvenPiece all = sample::piece(deep), some = sample::piece(skin);
  CHECK(some.parts[3].asked);
  CHECK(some.parts[3].body->layer == doctest::Approx(0.25));
  const Duration through = run(all, 1, typical(70)).hold, near = run(some, 1, typical(70)).hold;
  CHECK(near < through);
  CHECK(near > Duration{});
}
