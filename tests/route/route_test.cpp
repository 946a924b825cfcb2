#include "core/route/route.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <set>

#include "bench.h"

namespace dampward::route::test {

TEST_CASE("a sprayed set goes through every step in the order of the trade") {
  const Route route = Bench().route();
  REQUIRE(!route.refused);
  const StepCode order[] = {
      StepCode::make_safe,  StepCode::test,         StepCode::strip,  StepCode::take_out, StepCode::clean,
      StepCode::salt_proof, StepCode::solvent_free, StepCode::cover,  StepCode::loosen,   StepCode::tighten,
      StepCode::load,       StepCode::bake,         StepCode::unload, StepCode::tape};
  for (std::size_t i = 0; i + 1 < std::size(order); ++i)
    CHECK(place(route, order[i]) + 1 == place(route, order[i + 1]));
  CHECK(place(route, StepCode::coat, 1) == place(route, StepCode::tape) + 1);
  CHECK(place(route, StepCode::coat, 3) > place(route, StepCode::flash, 2));
  const StepCode rest[] = {StepCode::unmask, StepCode::touch_up,   StepCode::film_dry, StepCode::mark,
                           StepCode::airing, StepCode::reassemble, StepCode::retest,   StepCode::recheck};
  for (std::size_t i = 0; i + 1 < std::size(rest); ++i)
    CHECK(place(route, rest[i]) + 1 == place(route, rest[i + 1]));
}

TEST_CASE("every step has a reason, ordered minutes, and a skill or nobody's hands") {
  const Route route = Bench().route();
  for (const Step& step : route.steps) {
    CHECK_MESSAGE(!step.reason.empty(), step.id);
    CHECK_MESSAGE(step.minutes.ordered(), step.id);
    CHECK_MESSAGE(step.minutes.low > Duration{}, step.id);
    CHECK_MESSAGE((step.attendance == Attendance::unattended) == step.skill.empty(), step.id);
    CHECK_MESSAGE(!step.hazard_step.empty(), step.id);
  }
}

TEST_CASE("an id names route version and code, and is the same when times move") {
  Bench bench;
  CHECK(step(bench.route(), StepCode::coat, 2)->id == "r1.coat2");
  bench.facts.drying = Heat{Temperature::celsius(50), Temperature::celsius(55), Range<Duration>(9 * hour)};
  CHECK(step(bench.route(), StepCode::unmask)->id == "r1.unmask");
  bench.facts.version = 2;
  CHECK(step(bench.route(), StepCode::unmask)->id == "r2.unmask");
  std::set<std::string> ids;
  const Route again = bench.route();
  for (const Step& s : again.steps) CHECK(ids.insert(s.id).second);
}

TEST_CASE("only the bake is watched, flash, drying of film and airing need nobody") {
  const Route route = Bench().route();
  for (const Step& s : route.steps) {
    if (s.code == StepCode::bake) CHECK(s.attendance == Attendance::watched);
    if (s.code == StepCode::flash || s.code == StepCode::airing)
      CHECK(s.attendance == Attendance::unattended);
  }
}

TEST_CASE("a unit with a mercury relay is refused whole, with the way out") {
  Bench bench;
  bench.part("chassis").hazards = {HazardId("H06")};
  const Route route = bench.route();
  REQUIRE(route.refused);
  CHECK(route.steps.empty());
  CHECK(route.refused->reason.find("mercury relays") != std::string::npos);
  CHECK(route.refused->settle.find("licensed hand") != std::string::npos);
}

TEST_CASE("a hazard no table knows is not taken as harmless") {
  Bench bench;
  bench.part("chassis").hazards = {HazardId("H99")};
  REQUIRE(bench.route().refused);
}

TEST_CASE("a bank of capacitors lengthens making safe and does not stop the work") {
  Bench bench;
  const Duration without = step(bench.route(), StepCode::make_safe)->minutes.typical;
  bench.part("chassis").hazards = {HazardId("H01")};
  CHECK(step(bench.route(), StepCode::make_safe)->minutes.typical - without == 2 * minute);
}

TEST_CASE("cells come out whatever their treatment says, and so does what its material sends out") {
  Bench bench;
  bench.part("cells").treatment = equipment::Treatment::spray;
  const Route route = bench.route();
  CHECK(lists(route.lists.removed, "cells"));
  CHECK(lists(route.lists.removed, "display"));
  CHECK(lists(route.lists.removed, "cans"));
  CHECK(lists(route.lists.removed, "strap"));
  CHECK(!lists(route.lists.mask, "cells"));
}

TEST_CASE("valves stay as masks or come out, and both views are told") {
  Bench bench;
  CHECK(lists(bench.route().lists.mask, "valves"));
  CHECK(bench.route().valves.find("stay in") != std::string::npos);
  bench.shop.valves_stay = false;
  const Route route = bench.route();
  CHECK(lists(route.lists.removed, "valves"));
  CHECK(!lists(route.lists.mask, "valves"));
  CHECK(route.valves.find("left in they mask their own sockets") != std::string::npos);
  CHECK(route.valves.find("takes them out") != std::string::npos);
}

TEST_CASE("fastenings are tightened before any coat, and rims touched up after unmasking") {
  const Route route = Bench().route();
  CHECK(lists(route.lists.tighten, "chassis"));
  CHECK(lists(route.lists.loosen, "gang"));
  CHECK(place(route, StepCode::tighten) < place(route, StepCode::coat, 1));
  CHECK(lists(route.lists.touch_up, "chassis"));
  CHECK(place(route, StepCode::touch_up) > place(route, StepCode::unmask));
}

TEST_CASE("nothing is unsoldered") {
  const auto notes = step(Bench().route(), StepCode::strip)->notes;
  CHECK(std::find(notes.begin(), notes.end(), "nothing is unsoldered") != notes.end());
}

TEST_CASE("common tape goes on after the bake and costs the window its minutes, rated tape goes on before") {
  // Common masking tape is rated 60 to 66 °C.
  Bench bench;
  Route route = bench.route();
  CHECK(!route.masking.all_before_bake);
  CHECK(step(route, StepCode::tape)->minutes == route.masking.after);
  CHECK(route.masking.after.typical + route.masking.before.typical == route.masking_otherwise.before.typical);
  CHECK(route.masking_reason.find("tape after (23 min") != std::string::npos);
  bench.shop.tape_rating = Temperature::celsius(71);
  route = bench.route();
  CHECK(route.masking.all_before_bake);
  CHECK(step(route, StepCode::tape) == nullptr);
  CHECK(!route.masking_otherwise.all_before_bake);
  CHECK(route.masking_reason.find("cost the window 23 min") != std::string::npos);
}

TEST_CASE("tape is judged by the hottest place of the oven, not by its setting") {
  Bench bench;
  bench.shop.tape_rating = Temperature::celsius(66);
  bench.facts.drying = Heat{Temperature::celsius(64), Temperature::celsius(68), Range<Duration>(3 * hour)};
  CHECK(step(bench.route(), StepCode::tape) != nullptr);
}

TEST_CASE("three coats by hand gun 15 to 20 min apart, two by power gun (common practice, no source)") {
  Bench bench;
  Route route = bench.route();
  CHECK(step(route, StepCode::coat, 3) != nullptr);
  CHECK(step(route, StepCode::coat, 4) == nullptr);
  const StepGap* flash = gap(route, GapKind::flash, "r1.coat1", "r1.coat2");
  REQUIRE(flash);
  CHECK(flash->shortest == 20 * minute);
  CHECK(flash->longest == 48 * hour);
  bench.shop.guns.front().power = true;
  route = bench.route();
  CHECK(step(route, StepCode::coat, 2) != nullptr);
  CHECK(step(route, StepCode::coat, 3) == nullptr);
}

TEST_CASE("the warm window holds from leaving the oven to the end of the last flash") {
  Bench bench;
  Route route = bench.route();
  const StepGap* open = gap(route, GapKind::warm_window, "r1.unload", "r1.coat1");
  REQUIRE(open);
  CHECK(!open->longest);
  bench.facts.window = WarmWindow{12 * minute, 70 * minute};
  route = bench.route();
  CHECK(gap(route, GapKind::warm_window, "r1.unload", "r1.coat1")->shortest == 12 * minute);
  const StepGap* end = gap(route, GapKind::warm_window, "r1.unload", "r1.flash3");
  REQUIRE(end);
  CHECK(end->longest == 70 * minute);
  CHECK(end->to_end);
}

TEST_CASE("a case closes no sooner than 24 h after the film is dry, and is checked again at 72 h") {
  // NAVAIR 01-1A-509-3 p. 66 (read): both figures.
  const Route route = Bench().route();
  CHECK(step(route, StepCode::airing)->minutes.low == 24 * hour);
  CHECK(gap(route, GapKind::airing, "r1.film_dry", "r1.airing"));
  CHECK(gap(route, GapKind::order, "r1.airing", "r1.reassemble"));
  CHECK(gap(route, GapKind::recheck, "r1.film_dry", "r1.recheck")->shortest == 72 * hour);
}

TEST_CASE(
    "masks come off when the film is dry to the touch, at its slowest, unknown counts as 4 h and says so") {
  Bench bench;
  CHECK(gap(bench.route(), GapKind::touch_dry, "r1.coat3", "r1.unmask")->shortest == 4 * hour);
  bench.lacquer.touch_dry.reset();
  const Route route = bench.route();
  CHECK(gap(route, GapKind::touch_dry, "r1.coat3", "r1.unmask")->reason.find("estimate") !=
        std::string::npos);
}

TEST_CASE("without a safe oven the unit dries in a cabinet instead, masked beforehand") {
  Bench bench;
  bench.facts.drying =
      NoHeat{"the wax's limit less its margin is 36 °C", "warm cabinet", Range<Duration>(60 * hour)};
  const Route route = bench.route();
  CHECK(step(route, StepCode::bake) == nullptr);
  CHECK(step(route, StepCode::load) == nullptr);
  CHECK(step(route, StepCode::tape) == nullptr);
  REQUIRE(step(route, StepCode::cabinet) != nullptr);
  CHECK(step(route, StepCode::cabinet)->attendance == Attendance::unattended);
  CHECK(step(route, StepCode::cabinet)->minutes.typical == 60 * hour);
  CHECK(step(route, StepCode::cabinet)->reason.find("36 °C") != std::string::npos);
  CHECK(gap(route, GapKind::warm_window, "r1.cabinet_out", "r1.coat1"));
}

TEST_CASE("labour the kind does not give is estimated and marked so") {
  Bench bench;
  bench.kind.labour.clear();
  const Route route = bench.route();
  CHECK(step(route, StepCode::unload)->mark == Mark::estimate);
  CHECK(!step(route, StepCode::unload)->settle.empty());
  bench.kind.labour[equipment::Operation::unload] = {4 * minute, 2, Mark::measured, ""};
  const Route timed = bench.route();
  CHECK(step(timed, StepCode::unload)->mark == Mark::measured);
  CHECK(step(timed, StepCode::unload)->people == 2);
}

TEST_CASE("a fault found is put right before anything is coated") {
  Bench bench;
  CHECK(step(bench.route(), StepCode::repair) == nullptr);
  bench.findings = {"fault"};
  const Route route = bench.route();
  CHECK(place(route, StepCode::repair) == place(route, StepCode::test) + 1);
}

TEST_CASE(
    "every gap joins two steps of the route, the first before the second, and all steps hang together") {
  CHECK(rc::check([](bool brush, bool no_heat, bool rated, bool valves, bool fault) {
    Bench bench;
    if (brush) bench.shop.guns.clear();
    if (no_heat) bench.facts.drying = NoHeat{"no oven", "desiccant box", Range<Duration>(90 * hour)};
    if (rated) bench.shop.tape_rating = Temperature::celsius(90);
    bench.shop.valves_stay = valves;
    if (fault) bench.findings = {"fault", "mould"};
    const Route route = bench.route();
    RC_ASSERT(!route.refused);
    const auto at = [&](const std::string& id) {
      const auto it =
          std::find_if(route.steps.begin(), route.steps.end(), [&](const Step& s) { return s.id == id; });
      RC_ASSERT(it != route.steps.end());
      return it - route.steps.begin();
    };
    std::set<std::string> reached{route.steps.front().id};
    for (const StepGap& g : route.gaps) {
      RC_ASSERT(at(g.from) < at(g.to));
      RC_ASSERT(g.longest.value_or(g.shortest) >= g.shortest);
      reached.insert(g.to);
    }
    RC_ASSERT(reached.size() == route.steps.size());
  }));
}

}  // namespace dampward::route::test
