#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "adapters/files/project_file.h"
#include "core/solver/search.h"

// The formats as the READMEs of ../shared/data/scheduling/rcpsp_max and psplib describe them.

using namespace dampward;
using namespace dampward::files;

namespace {

const std::string sch =
    "2 1 0 0\n"
    "0 1 2 1 2 [0] [0]\n"
    "1 1 1 3 [3]\n"
    "2 1 2 3 1 [2] [-4]\n"
    "3 1 0\n"
    "0 1 0 0\n"
    "1 1 3 2\n"
    "2 1 2 1\n"
    "3 1 0 0\n"
    "2\n";

const std::string sm =
    "****\n"
    "jobs (incl. supersource/sink ):  4\n"
    "RESOURCES\n"
    "  - renewable                 :  2   R\n"
    "  - nonrenewable              :  0   N\n"
    "  - doubly constrained        :  0   D\n"
    "****\n"
    "PRECEDENCE RELATIONS:\n"
    "jobnr.    #modes  #successors   successors\n"
    "   1        1          2           2   3\n"
    "   2        1          1           4\n"
    "   3        1          1           4\n"
    "   4        1          0\n"
    "****\n"
    "REQUESTS/DURATIONS:\n"
    "jobnr. mode duration  R 1  R 2\n"
    "-----\n"
    "  1      1     0       0    0\n"
    "  2      1     7       0    3\n"
    "  3      1    10       1    0\n"
    "  4      1     0       0    0\n"
    "****\n"
    "RESOURCEAVAILABILITIES:\n"
    "  R 1  R 2\n"
    "   11   10\n"
    "****\n";

// The text with one piece put in another's place.
std::string with(std::string text, const std::string& piece, const std::string& other) {
  const std::size_t place = text.find(piece);
  REQUIRE(place != std::string::npos);
  return text.replace(place, piece.size(), other);
}

// The only problem of reading it, as "line: found".
std::string fault(const std::string& text, ProjectFormat format = ProjectFormat::sch) {
  const auto read = read_project(text, format, "x");
  if (read) return "none";
  REQUIRE(read.problems().size() == 1);
  const Problem& problem = read.problems().front();
  CHECK(problem.place.file == "x");
  CHECK_FALSE(problem.expected.empty());
  return std::to_string(problem.place.line) + ": " + problem.found;
}

}  // namespace

TEST_CASE("a ProGen/max file gives its operations, arcs and capacities") {
  const auto read = read_project(sch, ProjectFormat::sch, "x");
  REQUIRE(read.ok());
  CHECK(read->size() == 4);
  CHECK(read->capacities == std::vector<int>{2});
  CHECK(read->arcs.size() == 5);
  CHECK(read->arcs[4].from == 2);
  CHECK(read->arcs[4].to == 1);
  CHECK(read->arcs[4].lag == -4);
  CHECK(read->operations[1].duration == 3);
  CHECK(read->operations[1].demands.front().amount == 2);
  CHECK(read->operations[0].demands.empty());
}

TEST_CASE("a PSPLIB file gives the same, with lags as long as the job that goes before") {
  const auto read = read_project(sm, ProjectFormat::sm, "x");
  REQUIRE(read.ok());
  CHECK(read->size() == 4);
  CHECK(read->capacities == std::vector<int>{11, 10});
  CHECK(read->arcs.size() == 4);
  CHECK(read->arcs[3].lag == 10);
  CHECK(read->operations[1].demands.front().resource == 1);
}

TEST_CASE("the ending of a file's name tells its format") {
  CHECK(project_format("a/b/psp3.SCH") == ProjectFormat::sch);
  CHECK(project_format("j301_1.sm") == ProjectFormat::sm);
  CHECK_FALSE(project_format("week.json"));
}

TEST_CASE("what is wrong with a ProGen/max file is told with its line") {
  CHECK(fault("") == "0: the end of the file");
  CHECK(fault("\n\n") == "0: the end of the file");
  CHECK(fault(sch.substr(0, sch.find("2 1 2 1"))) == "7: the end of the file");
  CHECK(fault(sch.substr(0, sch.size() - 2)) == "9: the end of the file");
  CHECK(fault(with(sch, "2 1 0 0", "3 1 0 0")).starts_with("6:"));
  CHECK(fault(with(sch, "2 1 0 0", "1 1 0 0")).starts_with("3: successor"));
  CHECK(fault(with(sch, "2 1 0 0", "2 2 0 0")).starts_with("6:"));
  CHECK(fault(with(sch, "2 1 0 0", "2 1 1 0")).starts_with("1:"));
  CHECK(fault(with(sch, "2 1 0 0", "-5 1 0 0")).starts_with("1:"));
  CHECK(fault(with(sch, "2 1 0 0", "1000000 5 0 0")) == "1: 1000002 operations");
  CHECK(fault(with(sch, "2 1 0 0", "99999999999 5 0 0")).starts_with("1:"));
  CHECK(fault(with(sch, "1 1 3 2", "1 1 -3 2")) == "7: duration \"-3\"");
  CHECK(fault(with(sch, "1 1 3 2", "1 1 3 5")) == "7: a demand of 5 of resource 1");
  CHECK(fault(with(sch, "1 1 3 2", "1 1 3 -2")) == "7: demand \"-2\"");
  CHECK(fault(with(sch, "1 1 3 2", "1 2 3 2")) == "7: \"2\" modes");
  CHECK(fault(with(sch, "[3]", "3")) == "3: lag \"3\"");
  CHECK(fault(with(sch, "[3]", "[300000000]")).starts_with("0: arc 2 has lag"));
  CHECK(fault(with(sch, "1 1 1 3 [3]", "1 1 1 9 [3]")) == "3: successor \"9\"");
  CHECK(fault(with(sch, "1 1 1 3 [3]", "1 1 4000000000000 3 [3]")).starts_with("3:"));
  CHECK(fault(sch + "1 2 3\n").starts_with("11:"));
}

TEST_CASE("what is wrong with a PSPLIB file is told with its line") {
  const auto sm_fault = [](const std::string& text) { return fault(text, ProjectFormat::sm); };
  CHECK(sm_fault("") == "0: the end of the file");
  CHECK(sm_fault(sm.substr(0, sm.find("  3      1"))).find("the end of the file") != std::string::npos);
  CHECK(sm_fault(sm.substr(0, sm.find("   11   10"))).find("the end of the file") != std::string::npos);
  CHECK(sm_fault(with(sm, ":  4", ":  5")).starts_with("15:"));
  CHECK(sm_fault(with(sm, ":  4", ":  3")).starts_with("11: successor"));
  CHECK(sm_fault(with(sm, ":  4", ":  1000000")) == "2: 1000000 operations");
  CHECK(sm_fault(with(sm, ":  2   R", ":  3   R")).starts_with("18:"));
  CHECK(sm_fault(with(sm, ":  0   N", ":  1   N")).starts_with("5:"));
  CHECK(sm_fault(with(sm, "    7  ", "   -7  ")) == "19: duration \"-7\"");
  CHECK(sm_fault(with(sm, "   11   10", "   11   2")).starts_with("19: a demand of 3"));
}

TEST_CASE("every byte cut off the end is told or leaves the same problem") {
  for (const auto& [text, format] : {std::pair{sch, ProjectFormat::sch}, std::pair{sm, ProjectFormat::sm}}) {
    for (std::size_t size = 0; size < text.size(); ++size) {
      const auto read = read_project(text.substr(0, size), format, "x");
      if (read) CHECK(read->capacities.size() == (format == ProjectFormat::sch ? 1 : 2));
    }
  }
}

TEST_CASE("instances of ../shared are read whole") {
  const std::filesystem::path shared =
      std::filesystem::path(DAMPWARD_SOURCE_DIR) / "../shared/data/scheduling";
  if (!std::filesystem::exists(shared)) {
    MESSAGE("skipped: ../shared is absent");
    return;
  }
  int files = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(shared)) {
    const auto format = project_format(entry.path().filename().string());
    if (!format) continue;
    std::ifstream file(entry.path());
    std::stringstream text;
    text << file.rdbuf();
    const auto read = read_project(text.str(), *format, entry.path().filename().string());
    CHECK_MESSAGE(read.ok(), entry.path().string());
    ++files;
  }
  CHECK(files > 10);
}

TEST_CASE("a job shop with a crew becomes chains on machines and one resource of operators") {
  const auto problem = read_project("2 2\n0 3 1 2\n1 2 0 4\n", ProjectFormat::jobs, "shop.txt", 1);
  REQUIRE(problem.ok());
  REQUIRE(problem->size() == 6);
  CHECK(problem->capacities == std::vector<int>{1, 1, 1});
  CHECK(problem->operations[3].duration == 2);
  CHECK(problem->operations[3].demands[0].resource == 1);
  CHECK(problem->operations[3].demands[1].resource == 2);
  // One pair of hands: all four in turn, 3 + 2 + 2 + 4.
  const auto outcome = solver::solve(*problem, {});
  REQUIRE(outcome.ok());
  CHECK(outcome->status == solver::Status::optimal);
  CHECK(outcome->starts.back() == 11);
  CHECK(operators_of(*problem, outcome->starts, 1) == std::vector<int>{1, 1, 1, 1});
  // Two pairs: nobody has two things in hand at once.
  const auto two = read_project("2 2\n0 3 1 2\n1 2 0 4\n", ProjectFormat::jobs, "shop.txt", 2);
  const auto both = solver::solve(*two, {});
  CHECK(both->starts.back() == 7);
  const auto crew = operators_of(*two, both->starts, 2);
  for (int a = 1; a < 5; ++a) {
    for (int b = a + 1; b < 5; ++b) {
      const bool together = both->starts[a] < both->starts[b] + two->operations[b].duration &&
                            both->starts[b] < both->starts[a] + two->operations[a].duration;
      if (together) CHECK(crew[static_cast<std::size_t>(a - 1)] != crew[static_cast<std::size_t>(b - 1)]);
    }
  }
}

TEST_CASE(
    "a job shop cut short, of more jobs than told, of unknown machines or odd figures is refused with its "
    "line") {
  const std::pair<const char*, const char*> all[] = {{"", "jobs and machines"},
                                                     {"2 2\n0 3 1 2\n", "job 2 of 2"},
                                                     {"1 2\n0 3 1 2\n1 2 0 4\n", "1 jobs and no more"},
                                                     {"1 2\n0 3 2 2\n", "machine"},
                                                     {"1 2\n0 3 1\n", "3 figures"},
                                                     {"1 2\n0 3 1 -2\n", "duration"},
                                                     {"1 2000\n0 3\n", "2001 resources"}};
  for (const auto& [text, why] : all) {
    const auto problem = read_project(text, ProjectFormat::jobs, "shop.txt", 4);
    REQUIRE_FALSE(problem.ok());
    INFO(to_text(problem.problems().front()));
    CHECK(to_text(problem.problems().front()).find(why) != std::string::npos);
  }
}
