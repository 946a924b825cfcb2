// Plans for the scheduling problems of ../shared/data/scheduling against the best known bounds there (each set's README says
// where they come from); every plan goes through the referee.
//   bench_solve [--full] [--seconds S] [--threads 1|2] [SET...]      without --full a fixed sample, about five minutes

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <map>
#include <optional>
#include <sstream>
#include <string>
#include <thread>
#include <vector>

#include "adapters/files/project_file.h"
#include "adapters/files/project_judged.h"
#include "benchmarks/solve_ovens.h"
#include "core/solver/search.h"

namespace {

using namespace dampward;
namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

struct Set {
  const char* name;
  int every;  // of the sample: each so many in the order of bounds.csv
};
constexpr Set sets[] = {{"rcpsp_max/ubo100", 1}, {"rcpsp_max/ubo200", 2},  {"rcpsp_max/c", 12},
                        {"rcpsp_max/d", 12},     {"rcpsp_max/j30", 3},     {"psplib/j30", 5},
                        {"psplib/j120", 9},      {"jobshop_operators", 13}};

struct Known {
  std::string instance;
  std::optional<int> lower, upper;
  bool infeasible = false;
  int operators = 0;  // of a job shop
};

struct Asked {
  bool full = false;
  double seconds = 10;
  int threads = 2;
  std::vector<std::string> sets;
};

std::string text_of(const fs::path& path) {
  std::ifstream file(path);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

std::vector<std::string> cells(const std::string& line) {
  std::vector<std::string> row;
  std::istringstream in(line);
  for (std::string cell; std::getline(in, cell, ',');) row.push_back(cell);
  return row;
}

std::vector<Known> bounds_of(const fs::path& folder) {
  std::istringstream in(text_of(folder / "bounds.csv"));
  std::string line;
  std::getline(in, line);
  const std::vector<std::string> heads = cells(line);
  std::vector<Known> all;
  while (std::getline(in, line)) {
    std::map<std::string, std::string> row;
    const std::vector<std::string> values = cells(line);
    for (std::size_t k = 0; k < std::min(heads.size(), values.size()); ++k) row[heads[k]] = values[k];
    Known known{row["instance"], {}, {}, row["status"] == "infeasible"};
    if (!row["best_lb"].empty()) known.lower = std::stoi(row["best_lb"]);
    if (!row["best_ub"].empty()) known.upper = std::stoi(row["best_ub"]);
    if (!row["operators"].empty()) {
      known.operators = std::stoi(row["operators"]);
      if (!row["lb"].empty()) known.lower = std::stoi(row["lb"]);
      if (!row["ub"].empty()) known.upper = std::stoi(row["ub"]);
    }
    all.push_back(known);
  }
  return all;
}

void side_by_side(std::span<const std::function<void()>> tasks) {
  std::vector<std::jthread> threads;
  for (const auto& task : tasks) threads.emplace_back(task);
}

struct Row {
  int instances = 0, feasible = 0, none_found = 0, proved = 0, refuted = 0, infeasible = 0, minimal = 0,
      shorter = 0;
  int with_gap = 0, wrong = 0;
  double gap = 0, worst = 0, seconds = 0, processor = 0, first = 0, first_worst = 0;
};

void count(const Known& known, const solver::Outcome& outcome, Row& row) {
  const bool found = !outcome.starts.empty();
  row.infeasible += known.infeasible;
  row.proved += outcome.status == solver::Status::optimal;
  if (outcome.status == solver::Status::infeasible) {
    ++row.refuted;
    row.minimal += outcome.conflict->minimal;
    row.wrong += known.upper.has_value();
  }
  if (known.upper && !found) ++row.none_found;
  if (!found) return;
  const int last = outcome.starts.back();
  row.wrong += known.infeasible || (known.lower && last < *known.lower) ||
               (known.upper && outcome.lower_bound > *known.upper);
  if (!known.upper) return;
  const double gap = 100.0 * (last - *known.upper) / *known.upper;
  row.shorter += gap < 0;
  ++row.with_gap;
  row.gap += gap;
  row.worst = std::max(row.worst, gap);
}

Row measure(const fs::path& files, const std::vector<Known>& known, int every, const Asked& asked) {
  Row row;
  for (std::size_t k = 0; k < known.size(); k += static_cast<std::size_t>(every)) {
    const fs::path path = files / known[k].instance;
    const auto problem =
        files::read_project(text_of(path),
                            known[k].operators > 0 ? files::ProjectFormat::jobs
                                                   : *files::project_format(path.filename().string()),
                            path.filename().string(), known[k].operators);
    ++row.instances;
    if (!problem) {
      std::printf("  %s\n", to_text(problem.problems().front()).c_str());
      ++row.wrong;
      continue;
    }
    const auto begun = Clock::now();
    const std::clock_t processor = std::clock();
    const auto taken = [&] { return std::chrono::duration<double>(Clock::now() - begun).count(); };
    double first = 0;
    solver::SearchOptions options;
    options.keep_going = [&] { return taken() < asked.seconds; };
    if (asked.threads == 2) options.executor = side_by_side;
    options.on_progress = [&](const solver::Starts&, int) {
      if (first == 0) first = taken();
    };
    const auto outcome = solver::solve(*problem, options);
    row.seconds += taken();
    row.processor += static_cast<double>(std::clock() - processor) / CLOCKS_PER_SEC;
    if (first > 0) {
      ++row.feasible;
      row.first += first;
      row.first_worst = std::max(row.first_worst, first);
    }
    if (!outcome->starts.empty() && !files::judged(*problem, outcome->starts).empty()) {
      std::printf("  %s: the plan breaks a rule\n", known[k].instance.c_str());
      ++row.wrong;
    }
    count(known[k], *outcome, row);
  }
  return row;
}

// The instances as plain files, unpacked for this run.
std::optional<fs::path> unpacked(const fs::path& folder, const fs::path& scratch) {
  const fs::path place = scratch / folder.parent_path().filename() / folder.filename();
  fs::create_directories(place);
  const std::string command =
      "tar xJf '" + (folder / "instances.tar.xz").string() + "' -C '" + place.string() + "'";
  if (std::system(command.c_str()) != 0) return std::nullopt;
  return place;
}

void print(const char* set, const Row& row) {
  std::printf("%-17s %4d %8.3f %7.2f %7d %7d %4d/%-4d %7d %6d %8.0f %8.0f %8.1f %8.1f %6d\n", set,
              row.instances, row.with_gap > 0 ? row.gap / row.with_gap : 0.0, row.worst, row.shorter,
              row.proved, row.refuted, row.infeasible, row.minimal, row.none_found,
              row.feasible > 0 ? 1000 * row.first / row.feasible : 0.0, 1000 * row.first_worst, row.seconds,
              row.processor, row.wrong);
  std::fflush(stdout);
}

Asked asked_of(int count, char** words) {
  Asked asked;
  for (int k = 1; k < count; ++k) {
    const std::string word = words[k];
    if (word == "--full")
      asked.full = true;
    else if (word == "--seconds" && k + 1 < count)
      asked.seconds = std::atof(words[++k]);
    else if (word == "--threads" && k + 1 < count)
      asked.threads = std::atoi(words[++k]);
    else
      asked.sets.push_back(word);
  }
  return asked;
}

}  // namespace

int main(int argument_count, char** arguments) {
  const Asked asked = asked_of(argument_count, arguments);
  const fs::path data = fs::path(DAMPWARD_SOURCE_DIR) / "../shared/data/scheduling";
  if (!fs::exists(data)) {
    std::puts("Skipped: ../shared/data/scheduling is not there.");
    return 0;
  }
  const fs::path scratch =
      fs::temp_directory_path() / ("dampward_bench_solve_" + std::to_string(std::rand()) +
                                   std::to_string(Clock::now().time_since_epoch().count()));
  std::printf("Plans of at most %g s each on %d thread(s), %s\n", asked.seconds, asked.threads,
              asked.full ? "all instances" : "a fixed sample");
  std::puts(
      "gap: to the best known plan, in per cent; shorter: plans better than that; wrong: against a known "
      "bound\n"
      "cpu s: of all threads; twice the seconds where both had a processor to themselves");
  std::printf("%-17s %4s %8s %7s %7s %7s %9s %7s %6s %8s %8s %8s %8s %6s\n", "set", "n", "mean gap", "worst",
              "shorter", "proved", "refuted", "minimal", "none", "first ms", "worst ms", "s in all", "cpu s",
              "wrong");
  int wrong = 0;
  for (const Set& set : sets) {
    if (!asked.sets.empty() && std::find(asked.sets.begin(), asked.sets.end(), set.name) == asked.sets.end())
      continue;
    const auto files = unpacked(data / set.name, scratch);
    if (!files) {
      std::printf("%-17s cannot be unpacked: tar and xz are wanted\n", set.name);
      continue;
    }
    const Row row = measure(*files, bounds_of(data / set.name), asked.full ? 1 : set.every, asked);
    print(set.name, row);
    wrong += row.wrong;
  }
  const auto ovens = std::find(asked.sets.begin(), asked.sets.end(), "oven_osp");
  if (asked.sets.empty() || ovens != asked.sets.end()) {
    if (const auto files = unpacked(data / "oven_osp", scratch))
      wrong += bench::ovens::measure(data / "oven_osp", *files, asked.full, asked.seconds,
                                     asked.threads == 2 ? solver::Executor(side_by_side) : nullptr);
  }
  fs::remove_all(scratch);
  return wrong == 0 ? 0 : 1;
}
