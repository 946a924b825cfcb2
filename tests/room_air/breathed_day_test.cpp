#include "core/room_air/breathed_day.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "solvents_of_tests.h"

using namespace dampward;
using namespace dampward::room_air;
using doctest::Approx;
using Verdict = RespiratorChoice::Verdict;

namespace {

// Air with given shares of toluene for given hours, as an exposure example has it: no room, only what is breathed.
struct Stretch {
  double ppm, minutes;
};

materials::Solvent toluene_with(double limit, std::optional<double> short_limit = {}) {
  materials::Solvent toluene = few_solvents()[0];
  toluene.limits = {{"an authority", 2020, VapourShare::ppm(limit), {}, {}, Mark::read, ""}};
  if (short_limit) toluene.limits.front().fifteen_minutes = VapourShare::ppm(*short_limit);
  return toluene;
}

Mixture all_of(const materials::Solvent& solvent) {
  const materials::SolventPart recipe[] = {{solvent.id, MassShare::percent(100)}};
  const std::vector<materials::Solvent> table{solvent};
  return worst_mixture(recipe, table, Worst::people);
}

struct Example {
  Scene scene;
  AirCourse course;
  WorkDay day;
};

// A course written down outright. Each minute counts as the richer of its ends, so a stretch holds its own figure at both.
Example example(const std::vector<Stretch>& stretches, const materials::Solvent& solvent,
                Duration shift = 8 * hour) {
  Example e;
  e.scene.liquids.push_back(all_of(solvent));
  e.course.solvents = e.scene.liquids.front().parts;
  e.course.share.emplace_back();
  int now = 0;
  for (const Stretch& stretch : stretches) {
    e.day.stays.push_back({now, now + static_cast<int>(stretch.minutes), std::nullopt});
    for (int i = 0; i <= static_cast<int>(stretch.minutes); ++i)
      e.course.share.front().push_back(stretch.ppm * 1e-6);
    now += static_cast<int>(stretch.minutes) + 1;
  }
  e.day.shift = shift;
  return e;
}

Breathing breathed(const Example& e) {
  return breathing(e.scene, e.course, e.day);
}

}  // namespace

// 29 CFR 1910.1000(d)(1), worked example (read): 150, 75 and 50 ppm for 2, 2 and 4 hours average to 81.25 ppm, under a limit of 100.
TEST_CASE("the regulation's day of 150, 75 and 50 ppm uses 81 % of a limit of 100") {
  const auto day = breathed(example({{150, 120}, {75, 120}, {50, 240}}, toluene_with(100)));
  CHECK(*day.index == Approx(0.8125));
  CHECK(day.peak.ppm() == Approx(150));
  CHECK(choose_respirator(day).verdict == Verdict::none_needed);
}

// 29 CFR 1910.1000(d)(2), worked example (read): 500 of 1000, 45 of 200 and 40 of 200 ppm all day come to 0.925.
TEST_CASE("the regulation's three agents together use 92.5 % of their limits") {
  Example e;
  const double ppm[] = {500, 45, 40}, limits[] = {1000, 200, 200};
  for (int i = 0; i < 3; ++i) {
    materials::Solvent agent = toluene_with(limits[i]);
    agent.id = SolventId("agent " + std::to_string(i));
    e.scene.liquids.push_back(all_of(agent));
    e.course.solvents.push_back(e.scene.liquids.back().parts.front());
    e.course.share.emplace_back(481, ppm[i] * 1e-6);
  }
  e.day = {{{0, 480, std::nullopt}}, 8 * hour};
  CHECK(*breathed(e).index == Approx(0.925));
}

TEST_CASE("hours that are not listed are clean, and a long day shortens the limit") {
  CHECK(*breathed(example({{100, 240}}, toluene_with(100))).index == Approx(0.5));
  CHECK(*breathed(example({{100, 240}}, toluene_with(100), 10 * hour)).index == Approx(0.5 / 0.7));
  CHECK(*breathed(example({{100, 240}}, toluene_with(100), 12 * hour)).index == Approx(1.0));
  CHECK(!breathed(example({{100, 240}}, toluene_with(100), 24 * hour)).index);
}

TEST_CASE(
    "the worst fifteen minutes are found wherever they lie, against the short limit or three times the long "
    "one") {
  const auto day = breathed(example({{10, 100}, {300, 10}, {10, 100}}, toluene_with(100, 150)));
  CHECK(*day.short_index == Approx((300.0 * 10 + 10 * 4) / 15 / 150).epsilon(0.02));
  CHECK(day.short_at >= 95);
  CHECK(day.short_at <= 102);
  const auto without = breathed(example({{300, 30}}, toluene_with(100)));
  CHECK(*without.short_index == Approx(1.0));
}

TEST_CASE("five bad minutes count as five of fifteen, not as fifteen") {
  CHECK(*breathed(example({{450, 5}}, toluene_with(200, 150))).short_index == Approx(1.0));
}

TEST_CASE("class and highest use rise with the air, and no class is worn above danger to life") {
  const auto half = breathed(example({{100, 480}}, toluene_with(20, 60)));
  const auto choice = choose_respirator(half);
  REQUIRE(choice.verdict == Verdict::wear);
  CHECK(choice.respirator->factor == 10);
  // Ten times 60 ppm is above the 500 ppm that are immediately dangerous: the lower rules.
  CHECK(highest_use(*choice.respirator, half).ppm() == Approx(500));
  CHECK(choose_respirator(breathed(example({{300, 480}}, toluene_with(20)))).respirator->factor == 50);
  CHECK(choose_respirator(breathed(example({{501, 1}}, toluene_with(2000)))).verdict == Verdict::refuse);
  CHECK(choose_respirator(breathed(example({{499, 480}}, toluene_with(0.2)))).verdict == Verdict::refuse);
}

TEST_CASE("no limit, or no figure for danger to life, means supplied air") {
  materials::Solvent unknown = toluene_with(20);
  unknown.limits.clear();
  const auto no_limit = breathed(example({{1, 10}}, unknown));
  CHECK(!no_limit.index);
  CHECK(choose_respirator(no_limit).respirator->supplied_air);
  materials::Solvent life = toluene_with(20);
  life.danger_to_life.reset();
  const auto no_figure = breathed(example({{100, 480}}, life));
  CHECK(choose_respirator(no_figure).respirator->supplied_air);
}

TEST_CASE(
    "sprayed isocyanates ask for supplied air in the cleanest room, but not of whoever keeps away from the "
    "gun") {
  Scene scene;
  scene.room = {40 * cubic_metre, 400 * cubic_metre_per_minute, 1};
  scene.liquids.push_back(all_of(toluene_with(100)));
  Release coat;
  coat.to = 5;
  coat.volatiles = 1 * gram;
  coat.sprays_isocyanate = true;
  coat.near = ball(0.8 * metre, 0.1 * metre_per_second);
  scene.releases.push_back(coat);
  const AirCourse course = air_course(scene);
  const auto at_the_gun = breathing(scene, course, {{{0, 5, std::size_t{0}}}, 8 * hour});
  REQUIRE(choose_respirator(at_the_gun).verdict == Verdict::wear);
  CHECK(choose_respirator(at_the_gun).respirator->supplied_air);
  const auto away = breathing(scene, course, {{}, 8 * hour});
  CHECK(choose_respirator(away).verdict == Verdict::none_needed);
}

TEST_CASE("who holds the gun stands in more than who stands by, and taking turns shares it") {
  Scene scene;
  scene.room = {40 * cubic_metre, 8 * cubic_metre_per_minute, 0.4};
  scene.liquids.push_back(all_of(toluene_with(100)));
  Release coat;
  coat.to = 60;
  coat.volatiles = 200 * gram;
  coat.near = ball(0.8 * metre, 0.1 * metre_per_second);
  scene.releases.push_back(coat);
  const AirCourse course = air_course(scene);
  const auto gun = breathing(scene, course, {{{0, 60, std::size_t{0}}}, 8 * hour});
  const auto by = breathing(scene, course, {{{0, 60, std::nullopt}}, 8 * hour});
  CHECK(*gun.index > *by.index);
  CHECK(*gun.index_far == Approx(*by.index));
  Breathing much;
  much.index = 2.6;
  much.index_far = 0.2;
  CHECK(turns_needed(much) == 3);
  much.index_far = 1.2;
  CHECK(!turns_needed(much));
  much.index = 0.9;
  much.index_far = 0.2;
  CHECK(turns_needed(much) == 1);
}

TEST_CASE("a stricter limit never allows more") {
  CHECK(rc::check([] {
    std::vector<Stretch> stretches;
    for (int i = 0; i < 4; ++i)
      stretches.push_back(
          {static_cast<double>(*rc::gen::inRange(0, 600)), static_cast<double>(*rc::gen::inRange(1, 100))});
    const double limit = *rc::gen::inRange(2, 300), short_limit = *rc::gen::inRange(2, 600);
    const auto with = [&](double l, double s) { return breathed(example(stretches, toluene_with(l, s))); };
    const Breathing mild = with(limit, short_limit);
    const auto rank = [](const RespiratorChoice& choice) {
      if (choice.verdict == Verdict::refuse) return 1e9;
      return choice.respirator == nullptr ? 0 : choice.respirator->factor;
    };
    for (const Breathing& strict : {with(limit - 1, short_limit), with(limit, short_limit - 1)}) {
      RC_ASSERT(*strict.index >= *mild.index - 1e-12);
      RC_ASSERT(*strict.short_index >= *mild.short_index - 1e-12);
      RC_ASSERT(rank(choose_respirator(strict)) >= rank(choose_respirator(mild)));
      for (const Respirator& respirator : respirators())
        RC_ASSERT(highest_use(respirator, strict) <= highest_use(respirator, mild));
    }
  }));
}
