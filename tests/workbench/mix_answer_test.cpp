#include "workbench/mix_answer.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <numeric>

#include "core/base/text.h"
#include "tests/workbench/demo_shop.h"

namespace dampward::workbench::test {
namespace {

using doctest::Approx;

// The shipped tables with one lacquer in use, and a surface to coat with it.
MixAnswer for_area(const std::string& lacquer, MixQuestion question) {
  Workshop tables = files::shipped_workshop();
  tables.shop.lacquer = LacquerId(lacquer);
  return mix_answer(tables, nullptr, question).value();
}

MixQuestion sprayed(Range<Area> area, double efficiency) {
  MixQuestion question;
  question.work = SomeArea{area};
  question.method = materials::Method::hand_gun;
  question.efficiency = Range(TransferEfficiency::fraction(efficiency));
  return question;
}

double litres_of(const Range<Volume>& range) {
  return range.typical.in(litre);
}

}  // namespace

TEST_CASE("what to mix for the demo's queue is what its plan draws from stock") {
  const HandedRecords records = demo_records();
  const MixAnswer mixed = mix_answer(demo_workshop(), &records, {}).value();
  const Plan plan = plan_of(demo_workshop(), records);
  REQUIRE(plan.stock.size() == 2);
  const std::pair<Range<Volume>, Range<Volume>> pairs[] = {{mixed.lacquer_litres, plan.stock[0].needed},
                                                           {mixed.thinner_litres, plan.stock[1].needed}};
  for (const auto& [of_mix, of_plan] : pairs) {
    CHECK(of_mix.low.in(litre) == Approx(of_plan.low.in(litre)));
    CHECK(of_mix.typical.in(litre) == Approx(of_plan.typical.in(litre)));
    CHECK(of_mix.high.in(litre) == Approx(of_plan.high.in(litre)));
  }
  const int units = std::accumulate(mixed.works.begin(), mixed.works.end(), 0,
                                    [](int sum, const MixWork& work) { return sum + work.count; });
  CHECK(units == static_cast<int>(plan.units.size()));
  CHECK(mixed.left_out.size() == plan.refused.size());
}

TEST_CASE("three sets of a kind take three times the litres of one") {
  const HandedRecords records = demo_records();
  MixQuestion one, three;
  one.work = UnitsOfKind{KindId("river_radio"), 1};
  three.work = UnitsOfKind{KindId("river_radio"), 3};
  const double single = litres_of(mix_answer(demo_workshop(), &records, one)->ready);
  CHECK(litres_of(mix_answer(demo_workshop(), &records, three)->ready) == Approx(3 * single));
}

TEST_CASE("a kind the shop must not heat or open is not mixed for, and the answer says why") {
  const HandedRecords records = demo_records();
  MixQuestion question;
  question.work = UnitsOfKind{KindId("old_supply"), 2};
  const MixAnswer mixed = mix_answer(demo_workshop(), &records, question).value();
  CHECK(mixed.works.empty());
  REQUIRE(mixed.left_out.size() == 1);
  CHECK_FALSE(mixed.left_out.front().settle.empty());
}

TEST_CASE("a gallon of mix covers what the spreading tables print") {
  // Estimating guide with spreading table, read in scribd.com/document/104802451: 1604 ft² a gallon at 1 mil of pure solids, so 281
  // ft² at 35 % by volume and 2 mil dry. Half a square foot for the printed whole ones.
  MixQuestion question = sprayed(281 * square_foot, 1);
  question.film = Range(2 * mil);
  const MixAnswer mixed = for_area("acrylic_solvent", question);
  const double solids = mixed.ways.front().film.solids.typical.fraction();
  CHECK(281 / mixed.ready.typical.in(us_gallon) * (0.35 / solids) == Approx(281).epsilon(0.6 / 281));
}

TEST_CASE("a lacquer thinned one to one holds half its solids by volume") {
  // Effect of solids content, worked example, read in conformalcoating.in: 35 % becomes 18 %, whole per cent.
  MixQuestion unthinned = sprayed(1 * square_metre, 0.3), halved = unthinned;
  unthinned.thinner_parts = 0;
  halved.thinner_parts = 1;
  const auto solids = [](const MixAnswer& mixed) { return mixed.ways.front().film.solids.typical.percent(); };
  const double before = solids(for_area("acrylic_solvent", unthinned));
  const double after = solids(for_area("acrylic_solvent", halved));
  CHECK(after == Approx(before / 2));
  CHECK(after * (35 / before) == Approx(18).epsilon(1.0 / 18));
}

TEST_CASE("the trade's two to one stands beside the published minimum, with a warning") {
  MixQuestion question = sprayed(0.4 * square_metre, 0.1);
  question.thinner_parts = coating::trade_thinner_parts;
  const MixAnswer mixed = for_area("phenolic_tung_varnish_fungicidal", question);
  const MixWay& way = mixed.ways.front();
  CHECK(way.views.disagree);
  CHECK(way.views.published_least == coating::published_least_solids);
  CHECK(way.trade_non_volatile == way.views.non_volatile);
  CHECK(std::find(mixed.warnings.begin(), mixed.warnings.end(), way.views.view) != mixed.warnings.end());
  CHECK_FALSE(way.gate.passed());
}

TEST_CASE("nobody guesses how much of a gun's spray lands") {
  Workshop tables = files::shipped_workshop();
  tables.shop.lacquer = LacquerId("acrylic_solvent");
  MixQuestion question = sprayed(1 * square_metre, 0.3);
  question.efficiency.reset();
  CHECK_FALSE(mix_answer(tables, nullptr, question).ok());
  question.method = materials::Method::brush;
  CHECK(mix_answer(tables, nullptr, question).ok());
}

TEST_CASE("a better gun, a smaller area or a thinner film never takes more mix") {
  CHECK(rc::check([] {
    const double area = 0.05 * *rc::gen::inRange(1, 60), efficiency = 0.05 * *rc::gen::inRange(1, 19);
    const auto litres_for = [](double square, double share, double film) {
      MixQuestion question = sprayed(square * square_metre, share);
      question.film = Range(film * micrometre);
      return for_area("alkyd_varnish", question).ready.high;
    };
    const Volume base = litres_for(area, efficiency, 60);
    RC_ASSERT(litres_for(area, efficiency + 0.05, 60) <= base);
    RC_ASSERT(litres_for(area * 0.9, efficiency, 60) <= base);
    RC_ASSERT(litres_for(area, efficiency, 50) <= base);
  }));
}

}  // namespace dampward::workbench::test
