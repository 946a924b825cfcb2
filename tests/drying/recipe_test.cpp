#include "core/drying/recipe.h"

#include <doctest/doctest.h>

#include "sample.h"

using namespace dampward;
using namespace dampward::drying;

namespace {

OvenPiece strong() {
  return sample::piece(sample::radio());
}

// The same radio with a coil that must stay under 56 °C.
OvenPiece weak() {
  equipment::Part wax = sample::part("coils", "wax_low", 20);
  wax.limit =
      equipment::GivenLimit{Temperature::celsius(66), std::nullopt, Mark::measured, "scraping melted"};
  equipment::Kind kind = sample::with_part(sample::radio(), wax);
  kind.id = KindId("waxed_radio");
  return sample::piece(kind);
}

BakePlan together(std::span<const LoadUnits> load) {
  return std::get<BakePlan>(bake_load(sample::cabinet(), sample::wall(), load, sample::shop_air()));
}

Recipe recipe(std::span<const LoadUnits> load) {
  return recipe_of(sample::cabinet(), sample::wall(), load, together(load), sample::shop_air());
}

}  // namespace

TEST_CASE("one weak unit costs the others the hours between its oven and theirs") {
  const OvenPiece a = strong(), b = weak();
  const LoadUnits mixed[] = {{&a, 2}, {&b, 1}}, alone[] = {{&a, 2}};
  const Recipe told = recipe(mixed);
  REQUIRE(told.costs.size() == 2);
  CHECK(told.costs[1].kind == KindId("waxed_radio"));
  CHECK(told.costs[1].set_without == together(alone).set);
  CHECK(told.costs[1].costs == together(mixed).in_oven() - together(alone).in_oven());
  CHECK(told.costs[1].costs > told.costs[0].costs);
}

TEST_CASE("a mixed load is split between the tender units and the others") {
  const OvenPiece a = strong(), b = weak();
  const LoadUnits mixed[] = {{&a, 2}, {&b, 1}};
  const Recipe told = recipe(mixed);
  REQUIRE(told.split.size() == 2);
  CHECK(told.split[0].kinds == std::vector{KindId("waxed_radio")});
  CHECK(told.split[1].kinds == std::vector{KindId("radio")});
  CHECK(told.split[1].set > told.split[0].set);
  CHECK(together(mixed).in_oven() - told.split[1].in_oven >= worth_splitting);
}

TEST_CASE("a load of one kind has nothing to split") {
  const OvenPiece a = strong();
  const LoadUnits one[] = {{&a, 4}};
  CHECK(recipe(one).costs.empty());
  CHECK(recipe(one).split.empty());
}

TEST_CASE("units that stand the same heat are not split") {
  const OvenPiece a = strong();
  equipment::Kind twin = sample::radio();
  twin.id = KindId("twin");
  const OvenPiece b = sample::piece(twin);
  const LoadUnits mixed[] = {{&a, 1}, {&b, 1}};
  CHECK(recipe(mixed).split.empty());
}
