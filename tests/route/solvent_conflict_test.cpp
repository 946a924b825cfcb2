#include "core/route/solvent_conflict.h"

#include <doctest/doctest.h>

#include "bench.h"

namespace dampward::route::test {
namespace {

std::vector<SolventConflict> conflicts(const Bench& bench) {
  return bench.route().conflicts;
}

}  // namespace

TEST_CASE("a part the lacquer's list names is masked, whatever its kind says") {
  Bench bench;
  CHECK(conflicts(bench).empty());  // the formers stay bare
  bench.part("formers").treatment = equipment::Treatment::spray;
  const Route route = bench.route();
  REQUIRE(route.conflicts.size() == 1);
  CHECK(route.conflicts.front().named);
  CHECK(route.conflicts.front().why ==
        "varnish is said to attack the material of formers: mask it or take it out");
  CHECK(lists(route.lists.mask, "formers"));
}

TEST_CASE("a part made of what stands for a named material is named too") {
  Bench bench;
  bench.materials.push_back(bench.materials.front());
  bench.materials.back().id = MaterialId("coil_form");
  bench.materials.back().stands_for = {MaterialId("polystyrene")};
  bench.part("chassis").materials = {MaterialId("coil_form")};
  REQUIRE(conflicts(bench).size() == 1);
  CHECK(conflicts(bench).front().named);
}

TEST_CASE("a solvent family in common only asks for a drop test, the part is coated as its kind says") {
  Bench bench;
  bench.part("box").materials = {MaterialId("rubber")};
  const Route route = bench.route();
  REQUIRE(route.conflicts.size() == 1);
  CHECK(!route.conflicts.front().named);
  CHECK(route.conflicts.front().why.find("drop on a stray piece") != std::string::npos);
  CHECK(lists(route.lists.brush, "box"));
}

TEST_CASE("the thinner's solvents count as the lacquer's") {
  Bench bench;
  bench.materials.front().attacked_by = {"aliphatic hydrocarbons"};
  CHECK(conflicts(bench).size() == 3);  // chassis, cans, box
  CHECK(conflicts(bench).front().agent == "aliphatic hydrocarbons");
}

TEST_CASE("what is not known is not taken as harmless: a recipe, a thinner, a material") {
  Bench bench;
  bench.part("box").materials = {MaterialId("webbing")};
  bench.materials[4].attacked_by = {"ketones"};
  CHECK(conflicts(bench).empty());
  SUBCASE("a lacquer whose recipe is not known") {
    bench.lacquer.composition.clear();
  }
  SUBCASE("a solvent no table has") {
    bench.lacquer.composition.front().solvent = SolventId("mystery");
  }
  SUBCASE("a material no table has") {
    bench.part("box").materials = {MaterialId("mystery")};
  }
  SUBCASE("a part of no plausible material") {
    bench.part("box").materials.clear();
  }
  REQUIRE(conflicts(bench).size() == 1);
  CHECK(conflicts(bench).front().part.text == "box");
}

TEST_CASE("of several plausible materials the one attacked worst counts") {
  Bench bench;
  bench.part("box").materials = {MaterialId("steel"), MaterialId("rubber"), MaterialId("polystyrene")};
  REQUIRE(conflicts(bench).size() == 1);
  CHECK(conflicts(bench).front().material.text == "polystyrene");
  CHECK(conflicts(bench).front().named);
}

TEST_CASE("water and acids are no solvents of a lacquer, even an unknown one") {
  Bench bench;
  bench.lacquer.composition.clear();
  bench.part("box").materials = {MaterialId("paper")};
  CHECK(conflicts(bench).empty());
}

}  // namespace dampward::route::test
