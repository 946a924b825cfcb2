#include "core/coating/pots.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>

using namespace dampward;
using namespace dampward::coating;
using doctest::Approx;

namespace {

const WallClock utc{std::chrono::seconds(0)};
const Instant monday = Instant(std::chrono::sys_days(std::chrono::year(2027) / 2 / 1));

MixUse use(int from_min, int to_min, double litres = 1) {
  return {monday + std::chrono::minutes(from_min), monday + std::chrono::minutes(to_min),
          Range<Volume>(litres * litre)};
}

}  // namespace

TEST_CASE("without a pot life one pot serves a day, and what is left is not kept overnight") {
  const std::vector<MixUse> uses = {use(480, 500), use(960, 980), use(24 * 60 + 480, 24 * 60 + 500)};
  const auto made = pots(uses, std::nullopt, utc);
  REQUIRE(made.size() == 2);
  CHECK(made[0].ready.typical.in(litre) == Approx(2));
  CHECK(made[0].use_by == monday + std::chrono::hours(24));
  CHECK(made[1].uses == std::vector<std::size_t>{2});
}

TEST_CASE("a pot of four hours serves what ends within four hours of its mixing") {
  const std::vector<MixUse> uses = {use(480, 500), use(700, 720), use(710, 730)};
  const auto made = pots(uses, 4 * hour, utc);
  REQUIRE(made.size() == 2);
  CHECK(made[0].uses == std::vector<std::size_t>{0, 1});
  CHECK(made[0].use_by == monday + std::chrono::minutes(720));
  CHECK(made[1].mixed == monday + std::chrono::minutes(710));
}

TEST_CASE("a coat that takes longer than the pot lives is told") {
  const std::vector<MixUse> uses = {use(480, 600)};
  CHECK(pots(uses, 1 * hour, utc).front().outlasted);
  CHECK_FALSE(pots(uses, 2 * hour, utc).front().outlasted);
}

TEST_CASE("every coat is served once, no pot is used past its time, and no litre is lost") {
  const bool held = rc::check([] {
    std::vector<MixUse> uses;
    for (int i = *rc::gen::inRange(0, 12); i > 0; --i) {
      const int from = *rc::gen::inRange(0, 3 * 24 * 60);
      uses.push_back(use(from, from + *rc::gen::inRange(1, 50), *rc::gen::inRange(1, 5)));
    }
    const auto life = *rc::gen::element(std::optional<Duration>(), std::optional<Duration>(1 * hour),
                                        std::optional<Duration>(6 * hour));
    std::vector<int> served(uses.size());
    Volume mixed, wanted;
    for (const Pot& pot : pots(uses, life, utc)) {
      mixed += pot.ready.typical;
      for (const std::size_t i : pot.uses) {
        ++served[i];
        RC_ASSERT(uses[i].starts >= pot.mixed);
        RC_ASSERT(pot.outlasted || uses[i].ends <= pot.use_by);
      }
    }
    for (const MixUse& one : uses) wanted += one.ready.typical;
    RC_ASSERT(std::all_of(served.begin(), served.end(), [](int n) { return n == 1; }));
    RC_ASSERT(std::abs((mixed - wanted).in(litre)) < 1e-9);
  });
  CHECK(held);
}
