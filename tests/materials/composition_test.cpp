#include "core/materials/composition.h"

#include <doctest/doctest.h>

#include <limits>

using namespace dampward;
using namespace dampward::materials;
using doctest::Approx;

namespace {

std::vector<Solvent> table() {
  Solvent toluene, ethanol;
  toluene.id = SolventId("toluene");
  toluene.density = 868.5 * kilogram_per_cubic_metre;
  ethanol.id = SolventId("ethanol");
  ethanol.density = 790.3 * kilogram_per_cubic_metre;
  return {toluene, ethanol};
}

SolventPart part(const char* id, double percent) {
  return {SolventId(id), MassShare::percent(percent)};
}

}  // namespace

TEST_CASE("a recipe that adds to 100 % within one is sound, and an empty one is unknown rather than wrong") {
  const SolventPart sound[] = {part("toluene", 60.5), part("ethanol", 40)};
  CHECK(faults_of_composition(sound, table(), "thinner").empty());
  CHECK(faults_of_composition({}, table(), "thinner").empty());
}

TEST_CASE("a recipe short of 100 %, a misspelt solvent and a share that is no number are told together") {
  const SolventPart faulty[] = {part("tolunee", 60),
                                part("ethanol", std::numeric_limits<double>::quiet_NaN())};
  const Problems problems = faults_of_composition(faulty, table(), "thinner");
  REQUIRE(problems.size() == 3);
  CHECK(problems[0].next == "Did you mean \"toluene\"?");
}

TEST_CASE("volumes of a recipe add up to its density, and an unknown recipe may be any of the table") {
  const SolventPart half[] = {part("toluene", 50), part("ethanol", 50)};
  CHECK(volatile_density(half, table()).typical.si() == Approx(2 / (1 / 868.5 + 1 / 790.3)));
  const Range<Density> unknown = volatile_density({}, table());
  CHECK(unknown.low.si() == Approx(790.3));
  CHECK(unknown.high.si() == Approx(868.5));
  CHECK(unknown.ordered());
}
