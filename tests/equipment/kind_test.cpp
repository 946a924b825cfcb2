#include "core/equipment/kind.h"

#include <doctest/doctest.h>

using namespace dampward;
using namespace dampward::equipment;

TEST_CASE("the outer area is the six sides of the typical box, the volume the box an oven must hold") {
  Kind kind;
  kind.length.value = {0.2 * metre, 0.3 * metre, 0.4 * metre};
  kind.width.value = {0.2 * metre};
  kind.height.value = {0.1 * metre};
  CHECK(outer_area(kind).in(square_metre) == doctest::Approx(2 * (0.06 + 0.02 + 0.03)));
  CHECK(outer_volume(kind).in(litre) == doctest::Approx(8));
}

TEST_CASE("a part is found by its id, an absent one is not") {
  Kind kind;
  Part lid;
  lid.id = PartId("lid");
  kind.parts = {lid};
  CHECK(find_part(kind, PartId("lid")) == &kind.parts[0]);
  CHECK(find_part(kind, PartId("base")) == nullptr);
}
