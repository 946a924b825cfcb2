#include "core/materials/table.h"

#include <doctest/doctest.h>

#include "core/base/text.h"

using namespace dampward;
using namespace dampward::materials;

namespace {

Material material(const char* id, const char* name) {
  Material row;
  row.id = MaterialId(id);
  row.name = name;
  return row;
}

}  // namespace

TEST_CASE("a table gives back its rows by id, in the order they came in") {
  const MaterialTable table({material("wax_paraffin", "paraffin wax"), material("abs", "ABS")});
  REQUIRE(table.find(MaterialId("abs")) != nullptr);
  CHECK(table.find("abs")->name == "ABS");
  CHECK(table.find(MaterialId("bakelite")) == nullptr);
  CHECK(table.rows().front().id.text == "wax_paraffin");
}

TEST_CASE("a shop's own row takes the place of the shipped one") {
  MaterialTable table({material("abs", "ABS"), material("steel", "steel")});
  table.put(material("abs", "ABS as the workshop measured it"));
  CHECK(table.rows().size() == 2);
  CHECK(table.find("abs")->name == "ABS as the workshop measured it");
}

TEST_CASE("a misspelt id finds its neighbour") {
  const MaterialTable table({material("wax_paraffin", ""), material("wax_bees", ""), material("steel", "")});
  CHECK(nearest("wax_parafin", table.ids()) == "wax_paraffin");
}

TEST_CASE("liquids, solvents and lacquers are found the same way") {
  Liquid thinner;
  thinner.id = "xylene_thinner";
  CHECK(LiquidTable({thinner}).find("xylene_thinner") != nullptr);
  Solvent toluene;
  toluene.id = SolventId("toluene");
  CHECK(SolventTable({toluene}).find(SolventId("toluene")) != nullptr);
  Lacquer varnish;
  varnish.id = LacquerId("varnish");
  CHECK(LacquerTable({varnish}).find(LacquerId("varnish")) != nullptr);
}

TEST_CASE("what attacks acrylic counts against a window of acrylic, and against no other plastic") {
  Material window = material("acrylic_window", "acrylic window");
  window.stands_for = {MaterialId("acrylic")};
  CHECK(counts_as(window, "acrylic_window"));
  CHECK(counts_as(window, "acrylic"));
  CHECK_FALSE(counts_as(window, "abs"));
}
