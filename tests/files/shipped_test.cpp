#include "adapters/files/shipped.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

#include "core/base/problem.h"
#include "core/base/text.h"

using namespace dampward;
using namespace dampward::files;

namespace {

// Every source key a table may name: those of data/sources.csv.
std::set<std::string> known_keys() {
  std::set<std::string> keys;
  for (const Source& source : shipped().sources) keys.insert(source.key);
  return keys;
}

void check_keys(const std::set<std::string>& known, const std::string& written, const std::string& owner) {
  for (std::string_view key : split(written, '+')) {
    INFO(owner, " names ", std::string(key));
    CHECK((key.empty() || known.count(std::string(key)) == 1));
  }
}

}  // namespace

TEST_CASE("every table the program carries is read without a fault or a doubt") {
  Proof proof;
  const Shipped tables = read_shipped(proof);
  for (const Problem& problem : proof.faults) MESSAGE(to_text(problem));
  for (const Problem& problem : proof.warnings) MESSAGE(to_text(problem));
  CHECK(proof.faults.empty());
  CHECK(proof.warnings.empty());
  CHECK(tables.materials.rows().size() > 100);
  CHECK(tables.solvents.rows().size() > 15);
  CHECK(tables.lacquers.rows().size() >= 10);
  CHECK(tables.liquids.size() >= 15);
  CHECK(tables.hazards.size() >= 40);
  CHECK(tables.walls.rows().size() >= 5);
  CHECK(tables.archetypes.size() >= 12);
}

TEST_CASE("every figure the program carries names a source it can show") {
  const auto known = known_keys();
  for (const auto& material : shipped().materials.rows()) {
    if (material.heat_limit) check_keys(known, material.heat_limit->limit.source, material.id.text);
    if (material.density) check_keys(known, material.density->source, material.id.text);
    if (material.specific_heat) check_keys(known, material.specific_heat->source, material.id.text);
    if (material.diffusion) check_keys(known, material.diffusion->diffusivity.source, material.id.text);
  }
  for (const auto& lacquer : shipped().lacquers.rows()) {
    check_keys(known, lacquer.solids_by_mass.source, lacquer.id.text);
    check_keys(known, lacquer.source, lacquer.id.text);
  }
  for (const auto& solvent : shipped().solvents.rows()) {
    if (solvent.lower_flammable_limit)
      check_keys(known, solvent.lower_flammable_limit->source, solvent.id.text);
  }
  for (const auto& wall : shipped().walls.rows()) check_keys(known, wall.loss.source, wall.id);
}

TEST_CASE("every hazard defers to local codes and every row of a table has its own name") {
  for (const auto& hazard : shipped().hazards) {
    CHECK_FALSE(hazard.defer.empty());
    CHECK_FALSE(hazard.guard.empty());
  }
  std::set<std::string> ids;
  for (const auto& hazard : shipped().hazards) CHECK(ids.insert(hazard.id.text).second);
}

TEST_CASE("every lacquer's thinner and everything it attacks is in the tables") {
  for (const auto& lacquer : shipped().lacquers.rows()) {
    INFO(lacquer.id.text);
    const auto is_thinner = [&](const ShippedLiquid& row) { return row.liquid.id == lacquer.thinner; };
    CHECK((lacquer.thinner.empty() ||
           std::any_of(shipped().liquids.begin(), shipped().liquids.end(), is_thinner)));
    for (const std::string& attacked : lacquer.attacks) {
      INFO(attacked);
      CHECK(shipped().materials.find(attacked) != nullptr);
    }
    CHECK(lacquer.film_wanted.value.low > Length{});
    CHECK(lacquer.density.value.low > Density{});
    CHECK_FALSE(lacquer.coats.empty());
  }
}
