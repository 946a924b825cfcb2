#include "core/route/cleaning.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "bench.h"

namespace dampward::route::test {
namespace {

std::vector<CleanerChoice> choose(const Bench& bench, std::vector<std::string> soils,
                                  std::vector<PartId> out = {}) {
  return choose_cleaners(soils, bench.kind, out, bench.cleaners, bench.materials, bench.solvents);
}

}  // namespace

TEST_CASE("mould means fungus to clean, and a unit with nothing written down is dusted") {
  CHECK(soils_of({}, std::vector<std::string>{"mould"}) == std::vector<std::string>{"fungus"});
  CHECK(soils_of(std::vector<std::string>{"salts"}, std::vector<std::string>{"mould"}) ==
        std::vector<std::string>{"salts", "fungus"});
  CHECK(soils_of({}, {}) == std::vector<std::string>{"dust"});
}

TEST_CASE("a cleaner that harms no part goes before one that does") {
  Bench bench;
  const auto choices = choose(bench, {"fungus"});
  CHECK(choices.front().cleaner == "soapy water");  // alcohol attacks the polystyrene formers
  CHECK(choices.front().keep_off.empty());
}

TEST_CASE("a part that is out of the unit cannot be harmed") {
  Bench bench;
  std::erase_if(bench.cleaners, [](const materials::Liquid& l) { return l.id == "soapy water"; });
  CHECK(choose(bench, {"fungus"}).front().keep_off == std::vector<std::string>{"formers"});
  CHECK(choose(bench, {"fungus"}, {PartId("formers")}).front().keep_off.empty());
}

TEST_CASE("alcohol is for elsewhere, never for the spray area: its flash point is under 38 °C") {
  Bench bench;
  const auto choice = choose(bench, {"flux_rosin"}).front();
  CHECK(choice.cleaner == "alcohol");
  CHECK(!choice.spray_area);
  CHECK(choice.reason.find("never in the spray area") != std::string::npos);
}

TEST_CASE("38 °C is enough for the spray area and less is not, unknown counts as less") {
  Bench bench;
  bench.cleaners = {bench.cleaners[1]};
  for (const auto& [flash, allowed] : {std::pair{38.0, true}, {37.9, false}}) {
    bench.cleaners.front().flash_point = Temperature::celsius(flash);
    CHECK(choose(bench, {"oil_grease"}).front().spray_area == allowed);
  }
  bench.cleaners.front().flash_point.reset();
  CHECK(!choose(bench, {"oil_grease"}).front().spray_area);
}

TEST_CASE("chlorinated solvents are never chosen, even where nothing else would serve") {
  Bench bench;
  const auto choice = choose(bench, {"old_lacquer"}).front();
  CHECK(!choice.found);
  bench.soils = {"old_lacquer"};
  const Route route = bench.route();
  REQUIRE(route.refused);
  CHECK(route.refused->reason.find("film on dirt peels") != std::string::npos);
  CHECK(route.refused->settle.find("good for old_lacquer") != std::string::npos);
}

TEST_CASE("dust needs no liquid where there is none that is harmless") {
  Bench bench;
  bench.cleaners.clear();
  const auto choice = choose(bench, {"dust"}).front();
  CHECK(choice.dry);
  CHECK(choice.found);
}

TEST_CASE("a unit is salt-proved after cleaning and stands until free of solvent before any heat") {
  Bench bench;
  bench.soils = {"oil_grease"};
  std::erase_if(bench.cleaners, [](const materials::Liquid& l) { return l.id == "soapy water"; });
  const Route route = bench.route();
  CHECK(step(route, StepCode::solvent_free)->minutes.low >= 60 * minute);  // slow spirits
  CHECK(place(route, StepCode::solvent_free) < place(route, StepCode::load));
  CHECK(place(route, StepCode::salt_proof) == place(route, StepCode::clean) + 1);
}

}  // namespace dampward::route::test
