#include "core/room_air/exposure_index.h"

#include <doctest/doctest.h>

#include "core/room_air/respirator.h"
#include "core/room_air/separation.h"
#include "solvents_of_tests.h"

using namespace dampward;
using namespace dampward::room_air;
using doctest::Approx;

namespace {

VapourShare ppm(double value) {
  return VapourShare::ppm(value);
}

Mixture toluene(std::vector<materials::Solvent> table = few_solvents()) {
  const materials::SolventPart recipe[] = {{SolventId("toluene"), MassShare::percent(100)}};
  return worst_mixture(recipe, table, Worst::people);
}

}  // namespace

// 29 CFR 1910.1000(d)(1), worked example (read).
TEST_CASE("two hours at 150, two at 75 and four at 50 ppm average to 81.25") {
  const Breathed day[] = {{ppm(150), 2 * hour}, {ppm(75), 2 * hour}, {ppm(50), 4 * hour}};
  CHECK(eight_hour_average(day).ppm() == Approx(81.25));
}

// 29 CFR 1910.1000(d)(2), worked example (read).
TEST_CASE("500 of 1000, 45 of 200 and 40 of 200 ppm use up 92.5 % of the mixture's limit") {
  const Agent mix[] = {{ppm(500), ppm(1000)}, {ppm(45), ppm(200)}, {ppm(40), ppm(200)}};
  CHECK(mixture_index(mix) == Approx(0.925));
}

// Brief and Scala 1975 (formula from memory).
TEST_CASE("ten hours leave 70 % of a limit and twelve leave half") {
  CHECK(long_day_factor(8 * hour) == 1);
  CHECK(long_day_factor(6 * hour) == 1);
  CHECK(long_day_factor(10 * hour) == Approx(0.70));
  CHECK(long_day_factor(12 * hour) == Approx(0.50));
  CHECK(long_day_factor(24 * hour) == 0);
  CHECK(long_day_factor(30 * hour) == 0);
}

TEST_CASE("the strictest authority rules unless one is named, and of a named one its latest edition") {
  materials::Solvent acetate = few_solvents()[2];
  acetate.limits = {{"ACGIH TLV", 1993, ppm(150), ppm(200), {}, Mark::read, "TLV1993"},
                    {"ACGIH TLV", 2016, ppm(50), ppm(150), {}, Mark::read, "HAZMAP"},
                    {"OSHA PEL", 2005, ppm(150), {}, {}, Mark::read, "IDLH"}};
  CHECK(eight_hour_limit(acetate)->limit == ppm(50));
  CHECK(eight_hour_limit(acetate)->authority == "ACGIH TLV");
  CHECK(eight_hour_limit(acetate)->year == 2016);
  CHECK(eight_hour_limit(acetate, "OSHA PEL")->limit == ppm(150));
  CHECK(eight_hour_limit(acetate, "ACGIH TLV")->limit == ppm(50));
  CHECK(short_limit(acetate)->limit == ppm(150));
  CHECK(!eight_hour_limit(acetate, "somebody"));
  // A limit that was relaxed later: the named authority's latest edition rules, though it is the milder one.
  acetate.limits[1].eight_hours = ppm(300);
  CHECK(eight_hour_limit(acetate, "ACGIH TLV")->limit == ppm(300));
  CHECK(eight_hour_limit(acetate)->limit == ppm(150));
}

TEST_CASE("a ceiling or a short limit also bounds the average") {
  materials::Solvent butanol;
  butanol.limits = {{"NIOSH REL", 2005, {}, {}, ppm(50), Mark::read, "NPG2005"},
                    {"OSHA PEL", 2005, ppm(100), {}, {}, Mark::read, "NPG2005"}};
  CHECK(eight_hour_limit(butanol)->limit == ppm(50));
  CHECK(short_limit(butanol)->limit == ppm(50));
  materials::Solvent ethanol;
  ethanol.limits = {{"Ontario OEL", 2016, {}, ppm(1000), {}, Mark::read, "ONT2016"}};
  CHECK(eight_hour_limit(ethanol)->limit == ppm(1000));
  CHECK(!eight_hour_limit(materials::Solvent{}));
}

// Factors of 29 CFR 1910.134 table 1 (from memory); toluene 500 ppm immediately dangerous (NIOSH, read), butyl acetate 1700 (read).
TEST_CASE(
    "a half mask against toluene stops at the figure dangerous to life, against butyl acetate at ten times "
    "the limit") {
  const Respirator& half = respirators()[0];
  CHECK(half.factor == 10);
  CHECK(highest_use(half, ppm(200), ppm(500)) == ppm(500));
  CHECK(highest_use(half, ppm(150), ppm(1700))->ppm() == Approx(1500));
  CHECK(!highest_use(half, ppm(150), std::nullopt));
}

TEST_CASE("the class of respirator rises with the air, and above danger to life nobody goes in") {
  using Verdict = RespiratorChoice::Verdict;
  CHECK(choose_respirator(toluene(), ppm(15), false).verdict == Verdict::none_needed);
  const auto half = choose_respirator(toluene(), ppm(150), false);
  CHECK(half.verdict == Verdict::wear);
  CHECK(half.respirator->factor == 10);
  CHECK(choose_respirator(toluene(), ppm(400), false).respirator->factor == 50);
  CHECK(choose_respirator(toluene(), ppm(501), false).verdict == Verdict::refuse);
  // A twelve-hour day halves the limit: 15 ppm of 20 is too much.
  CHECK(choose_respirator(toluene(), ppm(15), false, 0.5).verdict == Verdict::wear);
  CHECK(choose_respirator(toluene(), ppm(150), false, 0.5).respirator->factor == 50);
}

// UK HSE bodyshop myth 3; Safe Work Australia guide July 2020 (both read).
TEST_CASE("sprayed isocyanates ask for supplied air in the cleanest room") {
  const auto choice = choose_respirator(toluene(), ppm(1), true);
  REQUIRE(choice.verdict == RespiratorChoice::Verdict::wear);
  CHECK(choice.respirator->supplied_air);
}

TEST_CASE(
    "a solvent nobody set a limit for, or whose danger to life is unknown, is never filtered out of the "
    "room's own air") {
  auto no_limit = few_solvents();
  no_limit[0].limits.clear();
  CHECK(choose_respirator(toluene(no_limit), ppm(1), false).respirator->supplied_air);
  auto no_danger = few_solvents();
  no_danger[0].danger_to_life.reset();
  CHECK(choose_respirator(toluene(no_danger), ppm(150), false).respirator->supplied_air);
  CHECK(choose_respirator(toluene(no_danger), ppm(15), false).verdict ==
        RespiratorChoice::Verdict::none_needed);
}

// 29 CFR 1910.107(c)(6) in a summary and a sign-trade manual: 20 ft across, 10 ft up (read).
TEST_CASE(
    "heat stays on only in another room more than 6.1 m away, and an unknown distance is the same room") {
  CHECK(!may_be_on_together("shed", "shed", 20 * metre));
  CHECK(!may_be_on_together("shed", "store", std::nullopt));
  CHECK(!may_be_on_together("", "store", 20 * metre));
  CHECK(!may_be_on_together("shed", "store", 6.1 * metre));
  CHECK(may_be_on_together("shed", "store", 6.2 * metre));
  CHECK(may_be_on_together("shed", "loft", 2 * metre, 3.2 * metre));
  CHECK(!may_be_on_together("shed", "loft", 2 * metre, 2.5 * metre));
}
