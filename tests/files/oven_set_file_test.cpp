#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "adapters/files/oven_set_file.h"

// The format as ../shared/data/scheduling/oven_osp/README.md describes it.

using namespace dampward;
using namespace dampward::files;

namespace {

const std::string two_ovens =
    "l=50;\n"
    "a=2; % attributes\n"
    "setup_costs=[|0,5,\n"
    "|4,1,\n"
    "|0,0|];\n"
    "setup_times=[|0,2,|3,0,|0,0|];\n"
    "m=2;\n"
    "min_cap=[0,0];\n"
    "max_cap=[10,6];\n"
    "initState=[1,2];\n"
    "s=2;\n"
    "m_a_s = [|0,20,\n"
    "|0,5|];\n"
    "m_a_e = [|10,40,\n"
    "|0,30|];\n"
    "n=3;\n"
    "eligible_machine = [{1,2},\n"
    "{2},1..2];\n"
    "earliest_start=[0,1,2];\n"
    "latest_end=[9,8,7];\n"
    "min_time=[3,4,5];\n"
    "max_time=[3,9,6];\n"
    "size=[2,6,4];\n"
    "attribute=[1,2,1];\n"
    "upper_bound_integer_objective=6300;\n"
    "mult_factor_total_runtime=4;\n"
    "mult_factor_finished_toolate=600;\n"
    "mult_factor_total_setuptimes=0;\n"
    "mult_factor_total_setupcosts=3;\n";

std::string with(const std::string& piece, const std::string& other) {
  std::string text = two_ovens;
  const std::size_t place = text.find(piece);
  REQUIRE(place != std::string::npos);
  return text.replace(place, piece.size(), other);
}

// The first problem of reading it, as "line: found".
std::string fault(const std::string& text) {
  const auto read = read_oven_set(text, "x");
  if (read) return "none";
  const Problem& problem = read.problems().front();
  CHECK(problem.place.file == "x");
  CHECK_FALSE(problem.expected.empty());
  return std::to_string(problem.place.line) + ": " + problem.found;
}

}  // namespace

TEST_CASE("an instance of the oven set gives its machines, jobs, set-ups and weights") {
  CHECK(names_oven_set("x/uc1_003.DZN"));
  CHECK_FALSE(names_oven_set("x.sch"));
  const auto read = read_oven_set(two_ovens, "x");
  REQUIRE(read.ok());
  CHECK(read->families == 2);
  CHECK(read->setup_costs == std::vector<std::vector<int>>{{0, 5}, {4, 1}});
  CHECK(read->setup_times == std::vector<std::vector<int>>{{0, 2}, {3, 0}});
  REQUIRE(read->machines.size() == 2);
  CHECK(read->machines[1].capacity == 6);
  CHECK(read->machines[1].initial_family == 1);
  CHECK(read->machines[1].open[1].from == 5);
  CHECK(read->machines[1].open[1].to == 30);
  REQUIRE(read->size() == 3);
  CHECK(read->jobs[1].machines == std::vector<int>{1});
  CHECK(read->jobs[2].machines == std::vector<int>{0, 1});
  CHECK(read->jobs[2].family == 0);
  CHECK(read->jobs[2].release == 2);
  CHECK(read->jobs[2].due == 7);
  CHECK(read->jobs[2].max_time == 6);
  CHECK(read->normalization == 6300);
  CHECK(read->weights.late_jobs == 600);
  CHECK(read->weights.setup_cost == 3);
  CHECK(read->weights.setup_time == 0);
}

TEST_CASE("set-up times count where the instance weighs them, and need not be named") {
  CHECK(read_oven_set(with("setuptimes=0", "setuptimes=7"), "x")->weights.setup_time == 7);
  CHECK(read_oven_set(with("mult_factor_total_setuptimes=0;\n", ""), "x")->weights.setup_time == 0);
}

TEST_CASE("a bad instance of the oven set is told by line and what stands there") {
  CHECK(fault(two_ovens) == "none");
  CHECK(fault("") == "0: no a");
  CHECK(fault(with("n=3;", "n=1000000;")) == "16: n = 1000000");
  CHECK(fault(with("n=3;", "n=4;")) == "17: 3 sets in eligible_machine");
  CHECK(fault(with("size=[2,6,4]", "size=[2,6]")) == "23: 2 figures in size");
  CHECK(fault(with("size=[2,6,4]", "size=[2,-6,4]")) == "23: -6 at place 2 of size");
  CHECK(fault(with("size=[2,6,4]", "size=[2,7,4]")) == "0: job 2 has size 7");
  CHECK(fault(with("size=[2,6,4]", "size=7")) == "23: size of another form");
  CHECK(fault(with("size=[2,6,4]", "size=[2,6,99999999999]")) == "23: \"99999999999];\"");
  CHECK(fault(with("size=[2,6,4]", "size=[2,6.5,4]")) == "23: \".5,4];\"");
  CHECK(fault(with("size=[2,6,4];\n", "")) == "0: no size");
  CHECK(fault(with("|4,1,", "|4,")) == "3: 1 figures in row 2 of setup_costs");
  CHECK(fault(with("|4,1,", "|4,-1,")) == "3: -1 in row 2 of setup_costs");
  CHECK(fault(with("a=2;", "a=3;")) == "3: 3 rows in setup_costs");
  CHECK(fault(with("initState=[1,2]", "initState=[1,3]")) == "0: machine 2 is set up for family 3");
  CHECK(fault(with("{2}", "{3}")) == "0: job 2 may go to 1 machines, some unknown, twice, or none");
  CHECK(fault(with("{2}", "{}")) == "0: job 2 may go to 0 machines, some unknown, twice, or none");
  CHECK(fault(with("max_time=[3,9", "max_time=[3,3")) == "0: job 2 takes from 4 to 3");
  CHECK(fault(with("earliest_start=[0,1", "earliest_start=[0,27")) ==
        "0: job 2 takes 4 from 27 on, and no machine it may go to is open for that");
  CHECK(fault(with("m_a_s = [|0,20", "m_a_s = [|0,9")) ==
        "0: machine 1 opens at 9 before it has closed at 10");
  CHECK(fault(with("m=2;\n", "m=2;\nm=2;\n")) == "8: m once more");
}

TEST_CASE("an instance of the oven set that is cut short anywhere is refused, not read by half") {
  for (std::size_t length = 0; length + 2 < two_ovens.size(); ++length) {
    INFO(length);
    // A cut between two values leaves a sound text that lacks values; the last weight is the last that is wanted.
    CHECK_FALSE(read_oven_set(two_ovens.substr(0, length), "x").ok());
  }
}

TEST_CASE("instances of ../shared are read") {
  const std::filesystem::path smoke =
      std::filesystem::path(DAMPWARD_SOURCE_DIR) / "../shared/data/scheduling/oven_osp/smoke";
  if (!std::filesystem::exists(smoke)) {
    MESSAGE("skipped: ../shared is absent");
    return;
  }
  for (const auto& entry : std::filesystem::directory_iterator(smoke)) {
    std::ifstream file(entry.path());
    std::stringstream text;
    text << file.rdbuf();
    INFO(entry.path().string());
    CHECK(read_oven_set(text.str(), "x").ok());
  }
}
