#include <doctest/doctest.h>

#include <fstream>

#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

// dampward solve on oven scheduling problems, from the command line to the JSON.

namespace {

// Three jobs of one family on an oven of 2. By hand: the two long ones together (4), then the short one (2) after 1 of set-up,
// done at 8, late by its due time of 7; before them it would make both late. 6 of run time, 2 set-ups at 5 each, 1 late: 116.
std::string three(const std::string& size) {
  return "a=1; m=1; s=2; n=3; setup_costs=[|5,|0|]; setup_times=[|1,|0|];\n"
         "max_cap=[2]; initState=[1]; m_a_s=[|0,0|]; m_a_e=[|0,40|];\n"
         "eligible_machine=[{1},{1},{1}]; earliest_start=[0,0,0]; latest_end=[5,5,7];\n"
         "min_time=[4,3,2]; max_time=[4,4,2]; size=[1,1," +
         size +
         "]; attribute=[1,1,1];\n"
         "mult_factor_total_runtime=1; mult_factor_finished_toolate=100; mult_factor_total_setupcosts=1;\n"
         "mult_factor_total_setuptimes=0; upper_bound_integer_objective=1000;\n";
}

class OvenFile {
 public:
  explicit OvenFile(const std::string& text, const std::string& name = "three.dzn")
      : path_((folder_.path() / name).string()) {
    std::ofstream(path_) << text;
  }
  const std::string& path() const { return path_; }

 private:
  ScratchFolder folder_;
  std::string path_;
};

Json solved(const std::string& path, const std::vector<std::string>& more = {}) {
  std::vector<std::string> arguments = {"solve", path, "--json", "--work-limit", "400000"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  const Run run = dampward_run(arguments);
  INFO(run.err);
  CHECK(run.exit_code == 0);
  return only_document(run);
}

}  // namespace

TEST_CASE("solve answers an oven problem with batches, both forms of the objective and a bound") {
  const OvenFile file(three("2"));
  const Json answer = solved(file.path());
  CHECK(answer.at("objective_integer") == 116);
  CHECK(answer.at("objective") == 0.116);
  CHECK(answer.at("lower_bound_integer") <= 116);
  CHECK(answer.at("batches").size() == 2);
  CHECK(answer.at("batches")[0].at("jobs") == Json({1, 2}));
  CHECK(answer.at("batches")[1].at("start") == 6);
  CHECK(answer.at("starts") == Json({1, 1, 6}));
  CHECK(answer.at("assignments")[2].at("machine") == 1);
  CHECK(answer.at("terms")[1].at("value") == 1);
  const Run spoken = dampward_run({"solve", file.path(), "--work-limit", "400000"});
  CHECK(says(spoken.out, "jobs 1, 2"));
}

TEST_CASE(
    "an oven problem of another name is read where --format says so, and the plan is the same on one "
    "thread") {
  const OvenFile file(three("2"), "three.txt");
  Json one = solved(file.path(), {"--format", "ovens", "--threads", "1", "--seed", "5"});
  Json two = solved(file.path(), {"--format", "ovens", "--threads", "2", "--seed", "5"});
  one.erase("time_s");
  two.erase("time_s");
  CHECK(one == two);
}

TEST_CASE("oven problems that cannot be used end with exit code 2") {
  const OvenFile large(three("3")), cut(three("2").substr(0, 200)), good(three("2"));
  CHECK(says(dampward_run({"solve", large.path()}).err, "job 3 has size 3"));
  CHECK(dampward_run({"solve", large.path()}).exit_code == 2);
  CHECK(dampward_run({"solve", cut.path()}).exit_code == 2);
  CHECK(dampward_run({"solve", good.path(), "--work-limit", "0"}).exit_code == 2);
  CHECK(dampward_run({"solve", good.path(), "--answer", "x.json"}).exit_code == 2);
}
