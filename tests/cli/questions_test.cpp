#include <doctest/doctest.h>

#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

// What a question that cannot be answered is told.

namespace {

// The complaint about a call that must be at fault.
std::string complaint(const std::vector<std::string>& arguments) {
  const Run run = dampward_run(arguments);
  CHECK(run.exit_code == 2);
  CHECK(run.out.empty());
  return run.err;
}

}  // namespace

TEST_CASE("a question without folder and options names everything it needs at once") {
  const std::string mix = complaint({"mix"}), air = complaint({"air"}), bake = complaint({"bake"});
  for (const char* option : {"--inside", "--heater", "--mass", "--size", "--part", "--thickness", "--air"})
    CHECK(says(bake, option));
  for (const char* option : {"--area", "--method"}) CHECK(says(mix, option));
  for (const char* option : {"--room", "--fan", "--lacquer", "--method", "--rate"}) CHECK(says(air, option));
}

TEST_CASE("a room or fan of zero and an unknown solvent are faults that name their option") {
  const std::string found = complaint({"air", "--room", "4 x 0 x 2.5 m", "--fan", "0 cfm", "--solvent",
                                       "tolulene", "--method", "brush", "--rate", "0.1 L/min"});
  for (const char* part : {"--room", "--fan", "above zero", "--solvent", "Did you mean \"toluene\""}) {
    INFO(part);
    CHECK(says(found, part));
  }
}

TEST_CASE("a solvent whose make-up nobody knows closes the place") {
  const Run run = dampward_run({"air", "--room", "4 x 3 x 2.5 m", "--fan", "20 m3/min", "--solvent",
                                "acrylic_retarder", "--method", "brush", "--rate", "0.01 L/min"});
  CHECK(run.exit_code == 3);
  CHECK(says(run.out, "CLOSED: Nobody knows which solvents"));
}

TEST_CASE("options that do not belong together are told where each would be right") {
  const DemoShop demo;
  CHECK(says(complaint({"mix", demo.folder(), "--method", "brush"}), "--area"));
  CHECK(says(complaint({"mix", demo.folder(), "--count", "3"}), "--kind"));
  CHECK(says(complaint({"mix", demo.folder(), "--ratio", "2"}), "2:1"));
  CHECK(says(complaint({"air", demo.folder(), "--minutes", "20 min"}), "--litres"));
  CHECK(says(complaint({"air", demo.folder(), "--gun", "cupgun"}), "Did you mean \"cup_gun\""));
}

TEST_CASE("a load nobody may heat, or that no oven holds, is no success and says why") {
  const DemoShop demo;
  const Run unknown = dampward_run({"bake", demo.folder(), "--kind", "old_supply"});
  CHECK(unknown.exit_code == 3);
  CHECK(says(unknown.out, "nobody knows what"));
  const Run crowd = dampward_run({"bake", demo.folder(), "--kind", "river_radio", "--count", "40"});
  CHECK(crowd.exit_code == 3);
  CHECK(says(crowd.out, "fewer units"));
  CHECK(says(complaint({"bake", demo.folder(), "--serials", "TD-0108"}), "Did you mean \"TD-0107\""));
  CHECK(says(complaint({"bake", demo.folder(), "--kind", "river_radio", "--heater", "2 kW"}),
             "without a shop folder"));
}

TEST_CASE("a surface that cannot be read is told how one looks, and an unknown unit which are near") {
  CHECK(says(complaint({"window", "--surface", "60 C shell"}), "shell 60 C 12 min"));
  const std::string bare = complaint({"window"});
  for (const char* option : {"--surface", "--method", "--coat-time", "--air", "--lacquer"})
    CHECK(says(bare, option));
  const DemoShop demo;
  CHECK(says(complaint({"window", demo.folder(), "--unit", "TD-0108"}), "Did you mean \"TD-0107\""));
  CHECK(says(complaint({"window", demo.folder(), "--air", "32 C"}), "32 C 85 %"));
}

TEST_CASE("air so damp that no unit has a window is no success, and every way out is told") {
  const DemoShop demo;
  const Run run = dampward_run({"window", demo.folder(), "--kind", "river_radio", "--air", "32 C 85 %"});
  CHECK(run.exit_code == 3);
  for (const char* part : {"NO WINDOW", "dried_air", "warm_cabinet"}) CHECK(says(run.out, part));
}

TEST_CASE("the answer in US units is the same answer") {
  const std::vector<std::string> metric = {"air",       "--room",    "4 x 3 x 2.5 m", "--fan",
                                           "30 m3/min", "--solvent", "xylene",        "--method",
                                           "brush",     "--rate",    "0.01 L/min",    "--json"};
  std::vector<std::string> us = metric;
  us.insert(us.end(), {"--units", "us"});
  CHECK(dampward_run(metric).out == dampward_run(us).out);
}
