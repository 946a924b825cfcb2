#include <doctest/doctest.h>

#include <functional>

#include "core/line/planner.h"
#include "shops.h"

namespace dampward::line::test {

TEST_CASE("a problem that names what is not there, or counts what cannot be, is refused with what is wrong") {
  struct Row {
    const char* says;
    std::function<void(Problem&)> spoil;
  };
  const Row rows[] = {
      {"a horizon of 0", [](Problem& p) { p.horizon = 0; }},
      {"names the unit \"0002\"", [](Problem& p) { p.operations[0].unit = "0002"; }},
      {"names the operation \"0001.laod\"", [](Problem& p) { p.gaps[0].to = "0001.laod"; }},
      {"lasts -5 minutes", [](Problem& p) { p.operations[0].length = -5; }},
      {"asks for 0 people", [](Problem& p) { p.operations[0].people = 0; }},
      {"names no skill", [](Problem& p) { p.operations[0].skill.clear(); }},
      {"names the capacity \"steam\"", [](Problem& p) { p.operations[0].demands = {{"steam", 1, 0}}; }},
      {"with a tail of -1 minutes", [](Problem& p) { p.operations[0].demands = {{"vapour", 1, -1}}; }},
      {"is at least -1 minutes", [](Problem& p) { p.gaps[0].shortest = -1; }},
      {"at least 0 and at most -1", [](Problem& p) { p.gaps[0].longest = -1; }},
      {"two of kind operation", [](Problem& p) { p.operations.push_back(p.operations[0]); }},
      {"without an id", [](Problem& p) { p.people[0].id.clear(); }},
      {"names no oven", [](Problem& p) { p.loads[0].ovens.clear(); }},
      {"names the oven \"cupboard\"", [](Problem& p) { p.loads[0].ovens = {"cupboard"}; }},
      {"has two places in loads",
       [](Problem& p) { p.loads[0].members.push_back({"0001.load", "0001.unload", 0, {}, {}, {}, {}}); }},
      {"which is not watched", [](Problem& p) { p.loads[0].bake = "0001.test"; }},
      {"out of order", [](Problem& p) { p.people[0].shifts = {{10, 5}}; }},
      {"with places of 0", [](Problem& p) { p.stations[0].places = 0; }},
      {"steps out of order", [](Problem& p) { p.capacities[0].steps = {{5, 1}, {5, 2}}; }},
      {"a weight of -1", [](Problem& p) { p.units[0].weight = -1; }},
      {"not of one unit", [](Problem& p) { p.operations[1].unit.clear(); }},
      {"a time to cool of -1", [](Problem& p) { p.ovens[0].cools = -1; }},
      {"a time to clear of -1", [](Problem& p) { p.operations[0].clears = -1; }},
      {"bakes 60 min and 0001.load needs 61", [](Problem& p) { p.loads[0].members[0].needs = 61; }},
      {"of 50 L and 0 kg",
       [](Problem& p) { p.loads[0].members[0].volume = 50 * litre, p.ovens[0].volume = 40 * litre; }},
      {"does not stand",
       [](Problem& p) {
         p.loads[0].setting = Temperature::celsius(60);
         p.loads[0].members[0].hottest = Temperature::celsius(55);
       }},
      {"limits a setting", [](Problem& p) { p.loads[0].members[0].coldest = Temperature::celsius(55); }},
      {"wait for each other in a ring",
       [](Problem& p) { p.gaps.push_back({"back", "0001.unload", "0001.load", 0, std::nullopt}); }},
      {"is fixed twice",
       [](Problem& p) { p.fixed = {{"0001.test", 0, 20, {}, "bench"}, {"0001.test", 0, 20, {}, "bench"}}; }},
      {"names the person \"third\"", [](Problem& p) { p.fixed = {{"0001.test", 0, 20, {"third"}, ""}}; }},
      {"names no oven",
       [](Problem& p) {
         p.ovens.push_back({"box", {}, false, 0, {}, {}});
         p.loads[0].ovens = {"cabinet", "box"};
         p.fixed = {{"0001.load", 0, 5, {"first"}, ""}};
       }},
  };
  Problem sound = small_shop(1);
  add_unit(sound, "0001", "morning", 60, 15);
  CHECK(faults(sound).empty());
  for (const Row& row : rows) {
    Problem problem = sound;
    row.spoil(problem);
    const auto result = plan(problem);
    REQUIRE(!result.ok());
    CHECK_MESSAGE(to_text(result.problems().front()).find(row.says) != std::string::npos, row.says, " / ",
                  to_text(result.problems().front()));
  }
}

TEST_CASE("a misspelt operation is met with the one probably meant") {
  Problem problem = small_shop(1);
  add_unit(problem, "0001", "morning", 60, 15);
  problem.gaps[0].to = "0001.laod";
  CHECK(to_text(faults(problem).front()).find("Did you mean \"0001.load\"?") != std::string::npos);
}

}  // namespace dampward::line::test
