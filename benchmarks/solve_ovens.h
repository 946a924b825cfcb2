#pragma once

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <limits>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "adapters/files/batches_judged.h"
#include "adapters/files/oven_set_file.h"
#include "core/solver/batch_search.h"

// The oven part of bench_solve: plans for ../shared/data/scheduling/oven_osp against the published costs of annealing with one and
// with five million moves and the best known (its README says where they come from); every plan goes through the referee.
namespace dampward::bench::ovens {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

struct Known {
  std::string instance;
  double normalization = 1, least = 0, short_annealing = 0, long_annealing = 0, best = 0;
};

inline std::string text_of(const fs::path& path) {
  std::ifstream file(path);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

inline std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> row;
  std::istringstream in(line);
  for (std::string cell; std::getline(in, cell, ',');) row.push_back(cell);
  return row;
}

inline std::vector<Known> known_of(const fs::path& bounds) {
  std::istringstream in(text_of(bounds));
  std::string line;
  std::getline(in, line);
  const std::vector<std::string> heads = cells_of(line);
  std::vector<Known> all;
  while (std::getline(in, line)) {
    std::map<std::string, std::string> row;
    const std::vector<std::string> values = cells_of(line);
    for (std::size_t k = 0; k < std::min(heads.size(), values.size()); ++k) row[heads[k]] = values[k];
    const auto number = [&](const char* name) { return row[name].empty() ? 0.0 : std::stod(row[name]); };
    all.push_back({row["instance"], number("normalization_constant"), number("best_integer_lb"),
                   number("sa1M_mean_cost"), number("sa5M_mean_cost"), number("best_cost")});
  }
  return all;
}

struct Row {
  int instances = 0, over_short = 0, over_long = 0, under_best = 0, proved = 0, none = 0, wrong = 0;
  double cost = 0, short_annealing = 0, long_annealing = 0, best = 0, gap = 0, first = 0, seconds = 0;
};

// Costs are equal that differ by less than what the published tables round away.
constexpr double rounding = 1e-8;

inline void count(const Known& known, const solver::BatchProblem& problem,
                  const solver::BatchOutcome& outcome, Row& row) {
  ++row.instances;
  row.none += outcome.plan.empty();
  if (outcome.plan.empty()) return;
  const double cost = static_cast<double>(outcome.objective) / known.normalization;
  const double bound = static_cast<double>(outcome.least_objective) / known.normalization;
  const referee::BatchVerdict verdict = files::judged(problem, outcome.plan);
  // best_integer_lb holds up to the rounding of the programs it comes from, and theirs is 1e-4 of the cost.
  row.wrong += !verdict.broken.empty() || verdict.weighted != outcome.objective ||
               bound > known.best + rounding || outcome.least_objective > outcome.objective ||
               cost < known.least / known.normalization * (1 - 1e-4);
  row.cost += cost;
  row.short_annealing += known.short_annealing;
  row.long_annealing += known.long_annealing;
  row.best += known.best;
  row.over_short += cost > known.short_annealing + rounding;
  row.over_long += cost > known.long_annealing + rounding;
  row.under_best += cost < known.best - rounding;
  row.proved += outcome.status == solver::Status::optimal;
  row.gap += 100 * (cost - bound) / cost;
}

inline void print(const std::string& jobs, const Row& row) {
  const int n = std::max(row.instances - row.none, 1);
  std::printf("%-17s %4d %9.6f %9.6f %9.6f %9.6f %6d %6d %6d %6d %6.2f %5d %8.0f %8.1f %6d\n", jobs.c_str(),
              row.instances, row.cost / n, row.short_annealing / n, row.long_annealing / n, row.best / n,
              row.over_short, row.over_long, row.under_best, row.proved, row.gap / n, row.none,
              1000 * row.first / n, row.seconds, row.wrong);
  std::fflush(stdout);
}

// Plans of at most `seconds` for up to 100 jobs and six times that for more; every eighth instance, or all. Answers how many are wrong.
inline int measure(const fs::path& set, const fs::path& files, bool full, double seconds,
                   const solver::Executor& executor) {
  std::puts(
      "ovens: mean costs, ours beside annealing with 1 and 5 million moves and the best known; >1M, >5M: "
      "plans that");
  std::puts("cost more, <best: less than the best known; gap: to our own lower bound, in per cent");
  std::printf("%-17s %4s %9s %9s %9s %9s %6s %6s %6s %6s %6s %5s %8s %8s %6s\n", "jobs", "n", "ours", "1M",
              "5M", "best", ">1M", ">5M", "<best", "proved", "gap", "none", "first ms", "s in all", "wrong");
  std::map<std::size_t, Row> rows;
  const std::vector<Known> all = known_of(set / "bounds.csv");
  for (std::size_t k = full ? 0 : 4; k < all.size(); k += full ? 1 : 8) {
    const auto problem = files::read_oven_set(text_of(files / all[k].instance), all[k].instance);
    if (!problem) {
      std::printf("  %s\n", to_text(problem.problems().front()).c_str());
      ++rows[0].wrong;
      continue;
    }
    const std::size_t jobs = problem->jobs.size();
    Row& row = rows[jobs];
    const double limit = jobs <= 100 ? seconds : 6 * seconds;
    const auto begun = Clock::now();
    const auto taken = [&] { return std::chrono::duration<double>(Clock::now() - begun).count(); };
    double first = 0;
    solver::BatchSearchOptions options;
    options.work = std::numeric_limits<std::int64_t>::max();
    options.share_used = [&] { return taken() / limit; };
    options.keep_going = [&] { return taken() < limit; };
    options.executor = executor;
    options.on_progress = [&](std::int64_t, std::int64_t) {
      if (first == 0) first = taken();
    };
    const auto outcome = solver::solve(*problem, options);
    row.seconds += taken();
    row.first += first;
    count(all[k], *problem, *outcome, row);
    if (full)
      std::printf("  %-13s %9.7f  1M %9.7f  5M %9.7f  best %9.7f  bound %9.7f\n", all[k].instance.c_str(),
                  static_cast<double>(outcome->objective) / all[k].normalization, all[k].short_annealing,
                  all[k].long_annealing, all[k].best,
                  static_cast<double>(outcome->least_objective) / all[k].normalization);
    std::fflush(stdout);
  }
  int wrong = 0;
  for (const auto& [jobs, row] : rows) {
    print(std::to_string(jobs), row);
    wrong += row.wrong;
  }
  return wrong;
}

}  // namespace dampward::bench::ovens
