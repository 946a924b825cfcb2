#include "core/room_air/air_course.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

#include "core/room_air/breathed_day.h"
#include "core/room_air/flammability.h"
#include "core/room_air/wet_work.h"
#include "solvents_of_tests.h"

using namespace dampward;
using namespace dampward::room_air;
using doctest::Approx;

namespace {

Mixture recipe(std::vector<std::pair<const char*, double>> shares) {
  std::vector<materials::SolventPart> parts;
  for (const auto& [id, percent] : shares) parts.push_back({SolventId(id), MassShare::percent(percent)});
  return worst_mixture(parts, few_solvents(), Worst::people);
}

Release steady(int from, int to, Mass volatiles) {
  Release release;
  release.from = from;
  release.to = to;
  release.volatiles = volatiles;
  return release;
}

Release film(int from, int to, Mass volatiles, Duration nine_tenths, double at_once) {
  Release release = steady(from, to, volatiles);
  release.nine_tenths = nine_tenths;
  release.at_once = at_once;
  return release;
}

Scene scene(Room room, std::vector<Release> releases) {
  return {room, {}, {recipe({{"toluene", 60}, {"ethanol", 40}})}, std::move(releases)};
}

const Room shed{40 * cubic_metre, 8 * cubic_metre_per_minute, 0.4};

// The same air, the dull way: a hundred small steps a minute of films and room alike, in m³ of vapour.
std::vector<double> toluene_step_by_step(const Scene& scene, int minutes) {
  const int steps = 100;
  const double dt = 1.0 / steps;
  const double kilogram_to_vapour = vapour_volume(0.6 * kilogram, 92.138 * gram_per_mole).si();
  std::vector<double> films(scene.releases.size());
  std::vector<double> at_minutes{0};
  double share = 0;
  for (int minute_now = 0; minute_now < minutes; ++minute_now) {
    for (int step = 0; step < steps; ++step) {
      const double now = minute_now + (step + 0.5) * dt;
      double released = 0;
      for (std::size_t i = 0; i < scene.releases.size(); ++i) {
        const Release& r = scene.releases[i];
        const double laying = now > r.from && now < r.to ? r.volatiles.si() / (r.to - r.from) : 0;
        if (!(r.nine_tenths > Duration{})) {
          released += laying * dt;
          continue;
        }
        const double leaves = films[i] * std::log(10.0) / r.nine_tenths.in(minute)*dt;
        films[i] += (1 - r.at_once) * laying * dt - leaves;
        released += r.at_once * laying * dt + leaves;
      }
      share += (kilogram_to_vapour * released - 0.4 * 8 * share * dt) / 40;
    }
    at_minutes.push_back(share);
  }
  return at_minutes;
}

}  // namespace

TEST_CASE("a film gives off nine tenths in its time, and all of it in the end") {
  const Release coat = film(10, 11, 1 * kilogram, 20 * minute, 0);
  CHECK(evaporated_by(coat, 10) == 0);
  CHECK(evaporated_by(coat, 31) == Approx(0.9).epsilon(0.01));
  CHECK(evaporated_by(coat, 51) == Approx(0.99).epsilon(0.002));
  CHECK(evaporated_by(coat, 500) == Approx(1));
  CHECK(1 - evaporated_by(coat, over_by(coat)) < 1e-3);
  CHECK(evaporated_by(steady(0, 10, 1 * kilogram), 5) == Approx(0.5));
}

TEST_CASE("more of a coat is vapour at once where more of it misses the work") {
  CHECK(evaporated_by(film(0, 4, 1 * kilogram, 20 * minute, 0.9), 4) >
        evaporated_by(film(0, 4, 1 * kilogram, 20 * minute, 0.1), 4));
}

TEST_CASE(
    "the strongest minute of a release is never stronger than its laying, and bounds every minute of it") {
  CHECK(rc::check([] {
    const int laying = *rc::gen::inRange(1, 40);
    const Release coat =
        film(0, laying, 1 * kilogram, *rc::gen::inRange(1, 90) * minute, *rc::gen::inRange(0, 10) / 10.0);
    const double strongest_of_a_minute = strongest(coat) * minute / kilogram;
    RC_ASSERT(strongest_of_a_minute <= 1.0 / laying + 1e-12);
    for (int when = 0; when < over_by(coat); ++when)
      RC_ASSERT(evaporated_by(coat, when + 1) - evaporated_by(coat, when) <= strongest_of_a_minute + 1e-12);
  }));
}

// A slow twin: the day's coats, films, a rag, in small steps.
TEST_CASE("the day's air follows films and room step by step") {
  const Scene day = scene(
      shed, {film(5, 12, 0.4 * kilogram, 20 * minute, 0.9), film(32, 39, 0.4 * kilogram, 20 * minute, 0.9),
             film(40, 41, 0.05 * kilogram, 240 * minute, 0), steady(60, 75, 0.1 * kilogram)});
  const AirCourse course = air_course(day);
  const std::vector<double> slow = toluene_step_by_step(day, 240);
  REQUIRE(course.solvents.at(0).name == "toluene");
  CHECK(course.from == 5);
  const double peak = *std::max_element(slow.begin(), slow.end());
  for (int when = 0; when <= 240; ++when) {
    INFO("minute ", when);
    // Within a minute the release counts as steady: 1.5 % of the peak.
    CHECK(std::abs(course.at(0, when).fraction() - slow[static_cast<std::size_t>(when)]) < 0.015 * peak);
  }
}

TEST_CASE("once nothing more comes the air clears as the closed form of the room says") {
  const Scene day = scene(shed, {steady(0, 30, 0.3 * kilogram)});
  const AirCourse course = air_course(day);
  const double lasts = 40 / (0.4 * 8);  // minutes in which it falls to 1/e
  CHECK(course.at(0, 60).fraction() / course.at(0, 40).fraction() == Approx(std::exp(-20 / lasts)));
  CHECK(course.at(0, 30).fraction() ==
        Approx(concentration(shed, vapour_volume(0.18 * kilogram, 92.138 * gram_per_mole) / (30 * minute), {},
                             30 * minute)
                   .fraction()));
}

TEST_CASE("a long steady release comes to the room's steady share, and its fan for fire holds just that") {
  const Scene day = scene(shed, {steady(0, 600, 6 * kilogram)});
  const AirCourse course = air_course(day);
  const FlammablePeak peak = flammable_peak(day, course);
  const auto mix = evaporated(day.liquids[0], day.air);
  const VolumeFlow vapour = mix->vapour_per_kilogram * 6 / (600 * minute);
  CHECK(peak.share == Approx(vapour / (0.4 * shed.fresh_air) / mix->lower_limit.fraction()).epsilon(1e-6));
  const AirForScene needed = air_for(day, day, peak.share);
  CHECK(needed.fire.in(cubic_metre_per_minute) == Approx(8).epsilon(1e-6));
  CHECK(*needed.people > 10 * needed.fire);
}

TEST_CASE("the share of the flammable limit of each minute is that of Le Chatelier's mix") {
  const Scene day = scene(shed, {film(0, 10, 0.5 * kilogram, 20 * minute, 0.5)});
  const AirCourse course = air_course(day);
  const double toluene = course.at(0, 12).fraction(), ethanol = course.at(1, 12).fraction();
  const Combustible mix[] = {{toluene, VapourShare::percent(1.0)}, {ethanol, VapourShare::percent(3.1)}};
  CHECK(flammable_share(course, 12, day.air) == Approx((toluene + ethanol) / le_chatelier(mix).fraction()));
}

TEST_CASE("without fresh air the vapour stays, and fills only part of the room") {
  const Room closed{40 * cubic_metre, {}, 0.3};
  const Scene day = scene(closed, {steady(0, 10, 0.01 * kilogram)});
  const AirCourse course = air_course(day);
  const auto vapour = vapour_volume(0.006 * kilogram, 92.138 * gram_per_mole);
  CHECK(course.at(0, 10).fraction() == Approx(vapour / (0.3 * closed.volume)));
}

TEST_CASE("more air, or better mixed air, never raises the vapour of a fixed timetable in any minute") {
  CHECK(rc::check([] {
    std::vector<Release> releases;
    const int count = *rc::gen::inRange(1, 5);
    for (int i = 0; i < count; ++i) {
      const int from = *rc::gen::inRange(0, 200);
      releases.push_back(film(from, from + *rc::gen::inRange(1, 30), *rc::gen::inRange(1, 500) * gram,
                              *rc::gen::inRange(0, 60) * minute, *rc::gen::inRange(0, 10) / 10.0));
      releases.back().near = half_ball(0.7 * metre, 0.06 * metre_per_second);
    }
    const double air = *rc::gen::inRange(0, 50), mixing = *rc::gen::inRange(1, 9) / 10.0;
    const auto with = [&](double q, double m) {
      return scene({40 * cubic_metre, q * cubic_metre_per_minute, m}, releases);
    };
    const Scene now = with(air, mixing), airier = with(air + 1, mixing), mixed = with(air, mixing + 0.1);
    const AirCourse course = air_course(now), more = air_course(airier), better = air_course(mixed);
    for (int when = 0; when < 300; when += 7) {
      RC_ASSERT(more.at(0, when).fraction() <= course.at(0, when).fraction() + 2e-9);
      RC_ASSERT(better.at(0, when).fraction() <= course.at(0, when).fraction() + 2e-9);
    }
    RC_ASSERT(flammable_peak(airier, more).near_share <= flammable_peak(now, course).near_share + 1e-12);
    const WorkDay day{{{0, 240, std::size_t{0}}}, 8 * hour};
    RC_ASSERT(*breathing(airier, more, day).index <= *breathing(now, course, day).index + 1e-9);
    RC_ASSERT(*breathing(airier, more, day).short_index <= *breathing(now, course, day).short_index + 1e-9);
  }));
}

// 20 mL of toluene flashing in an oven of 0.3 m³ at 71 °C are 1.77 % of its air, above the lower limit of 1.0 %.
TEST_CASE("a spoonful of solvent in a small oven is over its flammable limit") {
  const double share =
      wet_in_oven(20 * millilitre * (868.5 * kilogram_per_cubic_metre), recipe({{"toluene", 100}}),
                  0.3 * cubic_metre, {Temperature::celsius(71), 101325 * pascal});
  CHECK(share * 0.01 * (1 - 0.000784 * 46) == Approx(0.0177).epsilon(0.01));
  CHECK(share > 1);
}
