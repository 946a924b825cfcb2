#include "adapters/files/what_if.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <filesystem>

#include "adapters/files/shop_folder.h"
#include "adapters/files/text_file.h"
#include "core/shop/crew.h"

using namespace dampward;
using namespace dampward::files;

namespace {

const std::filesystem::path demo = std::filesystem::path(DAMPWARD_SOURCE_DIR) / "data/demo";

const workbench::Workshop& as_is() {
  static const workbench::Workshop workshop = read_workshop(demo).value();
  return workshop;
}

Result<ChangedWorkshop> with(const std::vector<std::string>& texts) {
  const auto changes = changes_from_text(texts);
  if (!changes) return changes.problems();
  return read_changed_workshop(demo, *changes, as_is());
}

Problem only_problem(const std::string& text) {
  const auto changed = with({text});
  INFO(text);
  REQUIRE_FALSE(changed.ok());
  REQUIRE(changed.problems().size() == 1);
  return changed.problems().front();
}

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

const shop::Oven& oven(const workbench::Workshop& workshop, const std::string& id) {
  for (const auto& oven : workshop.shop.ovens) {
    if (oven.id.text == id) return oven;
  }
  FAIL("no oven " << id);
  return workshop.shop.ovens.front();
}

}  // namespace

TEST_CASE("a change reaches the workshop as if it stood in the file, and leaves the file alone") {
  const std::string file = read_text(demo / "ovens.toml", "ovens.toml").value();
  const auto changed = with({"ovens.locker.lamps.count=3", "spray.fan=\"90 m3/min\""}).value();
  CHECK(oven(changed.workshop, "locker").lamps->count == 3);
  CHECK(oven(as_is(), "locker").lamps->count == 4);
  CHECK(changed.workshop.shop.spray.fan->in(cubic_metre_per_minute) == doctest::Approx(90));
  REQUIRE(changed.changes.size() == 2);
  CHECK(changed.changes[0].path == "ovens.locker.lamps.count");
  CHECK(changed.changes[0].before == "4");
  CHECK(changed.changes[0].after == "3");
  CHECK(changed.changes[1].before == "\"45 m3/min\"");
  CHECK(read_text(demo / "ovens.toml", "ovens.toml").value() == file);
}

TEST_CASE("the short forms stand for what the page says: a count of lamps, somebody ill or away") {
  CHECK(oven(with({"ovens.locker.lamps=3"}).value().workshop, "locker").lamps->count == 3);
  for (const char* word :
       {"crew.painter=ill", "crew.painter = away", "crew.painter=\"ill\"", "crew.painter.shifts=[]"}) {
    INFO(word);
    const auto changed = with({word}).value();
    int away = 0;
    for (const auto& person : changed.workshop.shop.crew) away += shop::comes_in(person) ? 0 : 1;
    CHECK(away == 1);
    CHECK_FALSE(shop::crew_can(changed.workshop.shop, "spray"));
    CHECK(changed.changes.at(0).path == "crew.painter.shifts");
  }
}

TEST_CASE("words and figures may have lost their quotes on the way through a command line") {
  CHECK(with({"spray.fan=90 m3/min"}).value().workshop.shop.spray.fan->in(cubic_metre_per_minute) ==
        doctest::Approx(90));
  CHECK(with({"ovens.locker.air=moving"}).value().workshop.shop.ovens.size() == 2);
}

TEST_CASE("several changes stand in one text with semicolons between, but not inside a value") {
  const auto changed = with({"ovens.locker.lamps=3; spray.name=\"a; b = c\" ;crew.lead=ill"}).value();
  CHECK(changed.changes.size() == 3);
  CHECK(changed.workshop.shop.spray.name == "a; b = c");
}

TEST_CASE("a key the file leaves out may be given, and what stood there is then unknown") {
  const auto changed = with({"spray.air_changes=6"}).value();
  CHECK(changed.workshop.shop.spray.air_changes_per_hour == 6);
  CHECK_FALSE(changed.changes.at(0).before.has_value());
}

TEST_CASE("a whole table may be added where names are one's own") {
  const auto changed = with({"stations.second_wash={ serves = [\"clean\"] }"}).value();
  CHECK(changed.workshop.shop.stations.size() == as_is().shop.stations.size() + 1);
}

TEST_CASE("an item of a list goes by its number from 1") {
  const auto changed = with({"spray.heat.1.distance=3 m"}).value();
  CHECK(changed.workshop.shop.spray.heat_sources.at(0).distance->in(metre) == doctest::Approx(3));
  CHECK(says(only_problem("spray.heat.2.distance=3 m").expected, "from 1 to 1"));
  CHECK(says(only_problem("spray.heat.0.distance=3 m").expected, "from 1 to 1"));
  CHECK(says(only_problem("spray.heat.first.distance=3 m").expected, "from 1 to 1"));
}

TEST_CASE("a path into nothing is a fault that names the path and the nearest one") {
  struct Row {
    const char *change, *found, *next;
  };
  for (const Row& row :
       {Row{"oven.cabinet.swing=3 K", "oven", "\"ovens\""},
        Row{"ovens.cabnet.swing=3 K", "ovens.cabnet", "\"cabinet\""},
        Row{"ovens.cabinet.swng=3 K", "swng", "\"swing\""},
        Row{"crew.paintr=ill", "crew.paintr", "\"painter\""},
        Row{"kinds.river_phone.parts.capcitor.limit=80 °C", "parts.capcitor", "\"capacitor\""},
        Row{"kinds.river_fone.mass=5 kg", "kinds.river_fone", "\"river_phone\""}}) {
    const Problem problem = only_problem(row.change);
    INFO(row.change, ": ", to_text(problem));
    CHECK(says(problem.place.file, row.change));
    CHECK(says(problem.found, row.found));
    CHECK(says(problem.next, row.next));
  }
}

TEST_CASE("a value of the wrong sort is a fault at the change itself, in the words of the file's reader") {
  struct Row {
    const char *change, *found, *expected;
  };
  for (const Row& row :
       {Row{"ovens.cabinet.swing=3 kg", "mass", "temperature difference"},
        Row{"ovens.locker.lamps.count=2.5", "2.5", "whole number"},
        Row{"ovens.locker.air=3", "air = 3", "text in quotes"},
        Row{"ovens.cabinet.lamps=3", "no lamps", "count = 3"}, Row{"spray.fan=-3 m3/min", "fan", ""},
        Row{"spray=3", "whole table", "spray.fan"}, Row{"crew.lead=sick", "\"sick\"", "crew.lead.name"},
        Row{"spray.fan.x=3", "x inside spray.fan", "spray.fan="}, Row{"site.lacquer=jam", "jam", "one of"}}) {
    const Problem problem = only_problem(row.change);
    INFO(row.change, ": ", to_text(problem));
    CHECK(says(problem.place.file, row.change));
    CHECK(says(problem.found, row.found));
    CHECK(says(problem.expected, row.expected));
  }
}

TEST_CASE("a change that is no change, or that quarrels with another, is told before anything is read") {
  for (const char* text : {"", "spray.fan", "=3", "spray.=3", "spray.fan=", "spray.fan=[\"x",
                           "spray.fan=1;spray.fan=2", "ovens.locker.lamps={};ovens.locker.lamps.count=2"}) {
    INFO(text);
    CHECK_FALSE(changes_from_text(std::vector<std::string>{text}).ok());
  }
}

TEST_CASE("whatever is typed as a change is read or refused, and the program lives on") {
  rc::check([](const std::vector<std::string>& texts) {
    const auto changes = changes_from_text(texts);
    if (!changes) RC_ASSERT(!changes.problems().empty());
  });
}

TEST_CASE("costs in a unit of one's own are all there, because the usual ones are hours") {
  CHECK(with({"costs={ lamp = 3 }"}).ok() == false);  // a whole table goes key by key
  CHECK(with({"costs.lamp=3"}).value().workshop.shop.costs.of(shop::Cost::lamp) == 3);
  const auto euros = with({"costs.unit=EUR", "costs.lamp=3"});
  REQUIRE_FALSE(euros.ok());
  CHECK(euros.problems().size() == shop::cost_rows().size() - 1);
  CHECK(says(only_problem("costs.lmp=3").next, "lamp"));
}
