// What the program carries inside itself hangs together: every name leads somewhere, every number says how it is known.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "adapters/files/quantity_text.h"
#include "adapters/files/shipped.h"
#include "core/base/text.h"

using namespace dampward;
using namespace dampward::files;

namespace {

// The data as carried; a test case of its own says that reading it finds no fault.
const Shipped& data() {
  static const Shipped all = [] {
    Proof proof;
    return read_shipped(proof);
  }();
  return all;
}

std::string text_of(const TomlNode& table, const char* key) {
  const TomlNode* value = table.find(key);
  return value == nullptr ? "" : value->text;
}

std::vector<std::string> list_of(const TomlNode& table, const char* key) {
  std::vector<std::string> all;
  if (const TomlNode* list = table.find(key)) {
    for (const TomlNode& item : list->items) all.push_back(item.text);
  }
  return all;
}

const std::vector<TomlNode>& parts_of(const TomlNode& kind) {
  const TomlNode* parts = kind.find("parts");
  REQUIRE(parts != nullptr);
  return parts->items;
}

std::vector<std::string> materials_of(const TomlNode& part) {
  const std::string one = text_of(part, "material");
  return one.empty() ? list_of(part, "materials") : std::vector{one};
}

bool in_sources(const std::string& keys) {
  for (std::string_view key : split(keys, ';')) {
    const auto known = [&](const Source& source) { return source.key == trimmed(key); };
    if (std::none_of(data().sources.begin(), data().sources.end(), known)) return false;
  }
  return true;
}

// The part left in the oven whose material allows least.
std::string weakest_part(const TomlNode& kind) {
  std::string weakest;
  std::optional<Temperature> lowest;
  for (const TomlNode& part : parts_of(kind)) {
    if (text_of(part, "treatment") == "remove") continue;
    for (const std::string& id : materials_of(part)) {
      const auto* material = data().materials.find(id);
      REQUIRE(material != nullptr);
      REQUIRE_MESSAGE(material->heat_limit, id, " stays in the oven without a heat limit");
      const Temperature allowed = material->heat_limit->limit.value.low - material->heat_limit->margin;
      if (!lowest || allowed < *lowest) {
        lowest = allowed;
        weakest = part.key;
      }
    }
  }
  return weakest;
}

std::set<std::string> masks_of(const TomlNode& kind) {
  std::set<std::string> all;
  for (const TomlNode& part : parts_of(kind)) {
    for (const std::string& mask : list_of(part, "mask")) all.insert(part.key + ": " + mask);
  }
  return all;
}

std::optional<Range<Mass>> mass_of(const TomlNode& table) {
  const auto mass = range_from_text<Mass>(text_of(table, "mass"));
  return mass ? std::optional(*mass) : std::nullopt;
}

}  // namespace

TEST_CASE("the carried tables are read without a fault") {
  Proof proof;
  read_shipped(proof);
  for (const Problem& fault : proof.faults) FAIL_CHECK(to_text(fault));
}

TEST_CASE("the materials table holds every material a part is made of") {
  for (const TomlNode& kind : data().archetypes) {
    for (const TomlNode& part : parts_of(kind)) {
      CAPTURE(kind.key);
      CAPTURE(part.key);
      CHECK_FALSE(materials_of(part).empty());
      for (const std::string& id : materials_of(part))
        CHECK_MESSAGE(data().materials.find(id) != nullptr, id);
    }
  }
}

TEST_CASE("every source a number names is in the list of sources") {
  for (const TomlNode& kind : data().archetypes) {
    if (const TomlNode* source = kind.find("source")) CHECK_MESSAGE(in_sources(source->text), source->text);
    for (const TomlNode& part : parts_of(kind)) {
      if (const TomlNode* source = part.find("source")) CHECK_MESSAGE(in_sources(source->text), source->text);
    }
  }
  const auto known = [](const std::string& source) { return source.empty() || in_sources(source); };
  for (const auto& row : data().materials.rows()) {
    CAPTURE(row.id.text);
    if (row.heat_limit) CHECK(known(row.heat_limit->limit.source));
    if (row.density) CHECK(known(row.density->source));
    if (row.specific_heat) CHECK(known(row.specific_heat->source));
    if (row.conductivity) CHECK(known(row.conductivity->source));
    if (row.emissivity) CHECK(known(row.emissivity->source));
    if (row.diffusion) CHECK(known(row.diffusion->diffusivity.source));
    if (row.diffusion) CHECK(known(row.diffusion->activation_energy.source));
  }
}

TEST_CASE("no source stands in the list twice") {
  std::set<std::string> keys;
  for (const Source& source : data().sources) CHECK_MESSAGE(keys.insert(source.key).second, source.key);
}

TEST_CASE("a figure that was read, remembered or computed says where") {
  const auto says = [](const auto& figure) {
    return !figure || figure->mark == Mark::estimate || figure->mark == Mark::doubtful ||
           !figure->source.empty();
  };
  for (const auto& row : data().materials.rows()) {
    CAPTURE(row.id.text);
    if (row.heat_limit) CHECK(says(std::optional(row.heat_limit->limit)));
    CHECK(says(row.density));
    CHECK(says(row.specific_heat));
    CHECK(says(row.conductivity));
    CHECK(says(row.emissivity));
  }
}

TEST_CASE("no figure counts as read whose source nobody opened") {
  std::map<std::string, std::string> status;
  for (const Source& source : data().sources) status[source.key] = source.status;
  const auto honest = [&](const auto& figure) {
    return !figure || figure->mark != Mark::read || status[figure->source] == "read";
  };
  for (const auto& row : data().materials.rows()) {
    CAPTURE(row.id.text);
    if (row.heat_limit) CHECK(honest(std::optional(row.heat_limit->limit)));
    CHECK(honest(row.density));
    CHECK(honest(row.specific_heat));
    CHECK(honest(row.conductivity));
    CHECK(honest(row.emissivity));
    if (row.diffusion) CHECK(honest(std::optional(row.diffusion->diffusivity)));
  }
}

TEST_CASE("heat limits are in order and a kind of part allows no more than what it stands for") {
  for (const auto& row : data().materials.rows()) {
    CAPTURE(row.id.text);
    if (!row.heat_limit) continue;
    CHECK(row.heat_limit->limit.value.ordered());
    for (const MaterialId& id : row.stands_for) {
      const auto* plainer = data().materials.find(id);
      REQUIRE(plainer != nullptr);
      CHECK(row.heat_limit->limit.value.low - row.heat_limit->margin <=
            plainer->heat_limit->limit.value.low - plainer->heat_limit->margin);
    }
  }
}

TEST_CASE("only thin open things dry through in a shift") {
  // The job's own list: thin open paper, cotton, webbing, cones, cloth-covered wire, with cord, canvas and felt.
  std::set<std::string> porous;
  for (const auto& row : data().materials.rows()) {
    if (row.drying == materials::Drying::porous) porous.insert(row.id.text);
  }
  CHECK(porous == std::set<std::string>{"cable_cotton_tinsel", "canvas_duck", "cone", "cord", "cotton",
                                        "cotton_webbing", "felt", "loudspeaker_cone_paper", "paper_crepe",
                                        "paper_kraft", "webbing", "wire_cloth", "wire_cotton_rubber"});
}

TEST_CASE("there are thirteen archetypes of at least eight parts, each with its cells out") {
  CHECK(data().archetypes.size() == 13);
  for (const TomlNode& kind : data().archetypes) {
    CAPTURE(kind.key);
    CHECK(parts_of(kind).size() >= 8);
    for (const TomlNode& part : parts_of(kind)) {
      for (const std::string& id : materials_of(part)) {
        if (id.starts_with("cell_")) CHECK_MESSAGE(text_of(part, "treatment") == "remove", part.key);
      }
    }
  }
}

TEST_CASE("archetypes differ in mask list, and in weakest part or way") {
  std::set<std::set<std::string>> masks;
  std::set<std::string> weakest, ways;
  for (const TomlNode& kind : data().archetypes) {
    CAPTURE(kind.key);
    CHECK(masks.insert(masks_of(kind)).second);
    weakest.insert(weakest_part(kind));
    ways.insert(text_of(kind, "way"));
  }
  CHECK(weakest.size() >= 12);
  CHECK(ways == std::set<std::string>{"brush_assembled", "spray_stripped"});
}

TEST_CASE("the parts of an archetype weigh together what the unit weighs") {
  // Sum of typical masses against the typical mass: within 5 %, as the archetypes were put together.
  for (const TomlNode& kind : data().archetypes) {
    CAPTURE(kind.key);
    double sum = 0;
    for (const TomlNode& part : parts_of(kind)) {
      const auto mass = mass_of(part);
      REQUIRE(mass);
      const TomlNode* count = part.find("count");
      sum += mass->typical.in(kilogram) * (count == nullptr ? 1 : count->number);
    }
    const auto whole = mass_of(kind);
    REQUIRE(whole);
    CHECK(sum == doctest::Approx(whole->typical.in(kilogram)).epsilon(0.05));
  }
}

TEST_CASE("every part says how its mass is known and what would settle it, and what is masked says where") {
  for (const TomlNode& kind : data().archetypes) {
    for (const TomlNode& part : parts_of(kind)) {
      CAPTURE(kind.key);
      CAPTURE(part.key);
      REQUIRE(part.find("marks") != nullptr);
      CHECK_FALSE(text_of(*part.find("marks"), "mass").empty());
      CHECK_FALSE(text_of(part, "settle").empty());
      const TomlNode* valve = part.find("valve");
      if (text_of(part, "treatment") == "mask" && (valve == nullptr || !valve->truth)) {
        CHECK_FALSE(list_of(part, "mask").empty());
      }
    }
  }
}

TEST_CASE("hazards of parts are in the hazard table and none isolates every unit of an archetype") {
  for (const TomlNode& kind : data().archetypes) {
    for (const TomlNode& part : parts_of(kind)) {
      for (const std::string& id : list_of(part, "hazards")) {
        CAPTURE(kind.key);
        CAPTURE(part.key);
        CAPTURE(id);
        const auto row = std::find_if(data().hazards.begin(), data().hazards.end(),
                                      [&](const hazards::Hazard& hazard) { return hazard.id.text == id; });
        REQUIRE(row != data().hazards.end());
        CHECK_FALSE(row->isolate);
      }
    }
  }
}
