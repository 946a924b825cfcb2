#include <doctest/doctest.h>

#include <fstream>

#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

// dampward solve on problems of the literature, from the command line to the JSON.

namespace {

// Two operations of 3 and 2 on a resource of 2, the second within so many after the first; by hand: 5 is best, and with less
// than 3 between them there is no plan.
std::string two(const std::string& longest) {
  return "2 1 0 0\n"
         "0 1 2 1 2 [0] [0]\n"
         "1 1 2 2 3 [0] [3]\n"
         "2 1 2 1 3 [-" +
         longest +
         "] [2]\n"
         "3 1 0\n"
         "0 1 0 0\n"
         "1 1 3 2\n"
         "2 1 2 1\n"
         "3 1 0 0\n"
         "2\n";
}

class ProblemFile {
 public:
  explicit ProblemFile(const std::string& text, const std::string& name = "two.sch")
      : path_((folder_.path() / name).string()) {
    std::ofstream(path_) << text;
  }
  const std::string& path() const { return path_; }

 private:
  ScratchFolder folder_;
  std::string path_;
};

Json solved(const std::string& path, int exit_code, const std::vector<std::string>& more = {}) {
  std::vector<std::string> arguments = {"solve", path, "--json"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  const Run run = dampward_run(arguments);
  INFO(run.err);
  CHECK(run.exit_code == exit_code);
  return only_document(run);
}

}  // namespace

TEST_CASE("solve answers a .sch file with status, objective, bound and starts") {
  const ProblemFile file(two("4"));
  const Json answer = solved(file.path(), 0);
  CHECK(answer.at("status") == "optimal");
  CHECK(answer.at("objective") == 5);
  CHECK(answer.at("lower_bound") == 5);
  CHECK(answer.at("starts") == Json({0, 0, 3, 5}));
  CHECK(answer.at("assignments").empty());
  CHECK(answer.at("batches").empty());
  CHECK(answer.at("conflict").empty());
}

TEST_CASE("solve names the gaps and the resource that no plan keeps together") {
  const ProblemFile file(two("2"));
  const Json answer = solved(file.path(), 3);
  CHECK(answer.at("status") == "infeasible");
  CHECK(answer.at("objective").is_null());
  CHECK(answer.at("starts").empty());
  CHECK(answer.at("conflict").size() == 3);
  CHECK(answer.at("conflict_minimal") == true);
  CHECK(answer.at("conflict")[2].at("resource") == 1);
  const Run spoken = dampward_run({"solve", file.path()});
  CHECK(spoken.exit_code == 3);
  CHECK(says(spoken.out, "2 starts at most 2 after 1"));
}

TEST_CASE("solve takes a file of another name for what --format says") {
  const ProblemFile file(two("4"), "two.txt");
  CHECK(solved(file.path(), 0, {"--format", "sch"}).at("objective") == 5);
  CHECK(dampward_run({"solve", file.path()}).exit_code == 2);
  CHECK(dampward_run({"solve", file.path(), "--format", "sm"}).exit_code == 2);
  CHECK(dampward_run({"solve", file.path(), "--format", "xml"}).exit_code == 2);
}

TEST_CASE("under a work limit solve prints the same plan on one thread and on two") {
  const ProblemFile file(two("4"));
  Json one = solved(file.path(), 0, {"--work-limit", "50000", "--threads", "1", "--seed", "3"});
  Json two_threads = solved(file.path(), 0, {"--work-limit", "50000", "--threads", "2", "--seed", "3"});
  one.erase("time_s");
  two_threads.erase("time_s");
  CHECK(one == two_threads);
}

TEST_CASE("limits that mean nothing, and problems that cannot be read, end with exit code 2") {
  const ProblemFile file(two("4"));
  for (const char* limit : {"0", "-1", "x", "1e3", ""})
    CHECK(dampward_run({"solve", file.path(), "--work-limit", limit}).exit_code == 2);
  for (const char* limit : {"0", "-1", "x", "nan", "inf"})
    CHECK(dampward_run({"solve", file.path(), "--time-limit", limit}).exit_code == 2);
  CHECK(dampward_run({"solve", file.path(), "--threads", "3"}).exit_code == 2);
  CHECK(dampward_run({"solve", file.path(), "--seed", "-1"}).exit_code == 2);
  CHECK(dampward_run({"solve", file.path(), "--answer", "x.json"}).exit_code == 2);
  const ProblemFile many("1000000 5 0 0\n0 1 1 1 [0]\n");
  CHECK(dampward_run({"solve", many.path()}).exit_code == 2);
  const ProblemFile cut(two("4").substr(0, 60));
  CHECK(dampward_run({"solve", cut.path()}).exit_code == 2);
}
