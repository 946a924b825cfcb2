#include "core/equipment/contradictions.h"

#include <doctest/doctest.h>

#include <limits>

using namespace dampward;
using namespace dampward::equipment;

namespace {

Part spring_set() {
  Part part;
  part.id = PartId("springs");
  part.count.value = {12.0};
  part.mass_each.value = {20 * gram, 30 * gram, 45 * gram};
  part.shape = Shape::plate;
  part.thickness.value = {2 * millimetre};
  part.open_faces = 2;
  return part;
}

Kind switchboard() {
  Kind kind;
  kind.id = KindId("switchboard");
  kind.length.value = {600 * millimetre, 685 * millimetre, 815 * millimetre};
  kind.width.value = {380 * millimetre};
  kind.height.value = {265 * millimetre};
  kind.mass.value = {14 * kilogram, 23 * kilogram, 45 * kilogram};
  kind.spray_area_stripped.value = {2 * square_metre};
  kind.spray_area_assembled.value = {1 * square_metre};
  kind.contacts.value = {40, 90, 220};
  kind.masking.value = {32 * minute};
  kind.parts = {spring_set()};
  kind.heavy_lump = {PartId("springs")};
  kind.labour[Operation::mask] = {{9 * minute, 32 * minute, 164 * minute}, 1, Mark::estimate, ""};
  return kind;
}

// Whether the one thing wrong is told with these words.
void check_told(const Kind& kind, const std::string& words) {
  const auto found = contradictions(kind);
  CAPTURE(words);
  REQUIRE(found.size() == 1);
  CAPTURE(found.front());
  CHECK(found.front().find(words) != std::string::npos);
}

}  // namespace

TEST_CASE("a kind that can be true has no contradictions") {
  CHECK(contradictions(switchboard()).empty());
}

TEST_CASE("a negative, endless or unknowable mass is told by name of the part") {
  Kind kind = switchboard();
  kind.parts[0].mass_each.value = {-1 * gram, 3 * gram, 5 * gram};
  check_told(kind, "\"springs\": the mass of one is -0.001 kg: it must be above zero");
  kind.parts[0].mass_each.value = {std::numeric_limits<double>::quiet_NaN() * gram};
  check_told(kind, "is not a number");
  kind.parts[0].mass_each.value = {std::numeric_limits<double>::infinity() * gram};
  check_told(kind, "is not a number");
}

TEST_CASE("a range out of order is told with its figures") {
  Kind kind = switchboard();
  kind.mass.value = {5 * kilogram, 4 * kilogram, 3 * kilogram};
  check_told(kind, "The mass runs 5..4..3 kg");
}

TEST_CASE("a plate to dry needs a face that water can leave through") {
  Kind kind = switchboard();
  kind.parts[0].open_faces = 0;
  check_told(kind, "0 open faces");
  kind.parts[0].open_faces = 3;
  check_told(kind, "3 open faces");
}

TEST_CASE("a part to be dried within needs a shape") {
  Kind kind = switchboard();
  kind.parts[0].shape = Shape::none;
  kind.parts[0].dry_target = DryTarget::porous;
  check_told(kind, "has no shape");
  kind.parts[0].dry_target = DryTarget::surface;
  CHECK(contradictions(kind).empty());
}

TEST_CASE("the heavy lump is made of parts that are there and stay in the oven") {
  Kind kind = switchboard();
  kind.heavy_lump = {PartId("generator")};
  check_told(kind, "no such part");
  kind.heavy_lump = {PartId("springs")};
  kind.parts[0].treatment = Treatment::remove;
  check_told(kind, "comes out before the bake");
}

TEST_CASE("a limit its own margin eats up is a contradiction") {
  Kind kind = switchboard();
  kind.parts[0].limit = GivenLimit{Temperature::celsius(40), 45 * kelvin, Mark::measured, ""};
  check_told(kind, "leaves nothing above freezing");
  kind.parts[0].limit = GivenLimit{Temperature::celsius(60), -5 * kelvin, Mark::measured, ""};
  check_told(kind, "must not be below zero");
}

TEST_CASE("two parts of one name, no parts, and work done by nobody are told") {
  Kind kind = switchboard();
  kind.parts.push_back(spring_set());
  check_told(kind, "stands there twice");
  kind = switchboard();
  kind.labour[Operation::mask].people = 0;
  check_told(kind, "1 person or more");
  kind = switchboard();
  kind.parts.clear();
  kind.heavy_lump.clear();
  check_told(kind, "It has no parts");
}

TEST_CASE("an assembled unit cannot show more to the spray than a stripped one") {
  Kind kind = switchboard();
  kind.spray_area_assembled.value = {3 * square_metre};
  check_told(kind, "More area");
}
