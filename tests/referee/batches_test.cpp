#include <doctest/doctest.h>

#include "core/referee/batches.h"

// The rules as oven_osp/README.md of the data states them; every case is worked out by hand.

using namespace dampward::referee;

namespace {

// Machine 0 holds 10, set up for family 0, open 0 to 8 and 10 to 30; machine 1 holds 4, set up for 1. Jobs 0 and 1 are of family
// 0, job 2 of 1, job 3 of 0.
BatchCase four() {
  BatchCase problem;
  problem.setup_times = {{0, 2}, {1, 0}};
  problem.setup_costs = {{3, 7}, {5, 1}};
  problem.machines = {{10, 0, {{0, 8}, {10, 30}}}, {4, 1, {{0, 30}}}};
  problem.jobs = {{0, 5, 0, 4, 4, 6, {0}},
                  {0, 5, 1, 6, 3, 5, {0, 1}},
                  {1, 2, 0, 9, 3, 9, {0, 1}},
                  {0, 4, 0, 9, 2, 4, {0, 1}}};
  problem.run_time_weight = 10;
  problem.late_weight = 1000;
  problem.setup_cost_weight = 100;
  problem.setup_time_weight = 1;
  return problem;
}

std::vector<BatchRun> plan() {
  return {{0, 1, 4, {0, 1}}, {0, 12, 3, {2}}, {1, 1, 2, {3}}};
}

std::string rules(const std::vector<BatchRun>& runs) {
  std::string all;
  for (const Violation& one : judge_batches(four(), runs).broken) all += (all.empty() ? "" : " ") + one.rule;
  return all;
}

// The plan with one of its batches changed.
std::string with(std::size_t batch, auto change) {
  auto runs = plan();
  change(runs[batch]);
  return rules(runs);
}

}  // namespace

TEST_CASE("a plan of batches that keeps the rules passes, and its cost is the one worked out by hand") {
  const BatchVerdict verdict = judge_batches(four(), plan());
  CHECK(verdict.broken.empty());
  CHECK(verdict.run_time == 4 + 3 + 2);
  CHECK(verdict.late_jobs == 2);  // job 0 ends at 5, due at 4; job 2 ends at 15, due at 9
  CHECK(verdict.setup_cost == 3 + 7 + 5);
  CHECK(verdict.setup_time == 0 + 2 + 1);
  CHECK(verdict.weighted == 90 + 2000 + 1500 + 3);
}

TEST_CASE("each fault planted in a plan of batches is found") {
  CHECK(rules({{0, 1, 4, {0, 1}}, {1, 1, 2, {3}}}) == "job");
  CHECK(with(1, [](BatchRun& run) { run.jobs = {2, 3}; }) == "job");
  CHECK(with(1, [](BatchRun& run) { run.jobs = {2, 4}; }) == "job");
  CHECK(with(1, [](BatchRun& run) { run.machine = 2; }) == "machine");
  CHECK(with(0, [](BatchRun& run) { run.start = 0; }) == "release");
  CHECK(with(0, [](BatchRun& run) { run.length = 3; }) == "length");
  CHECK(with(0, [](BatchRun& run) { run.length = 6; }) == "length");
  CHECK(with(0, [](BatchRun& run) { run.start = 5; }) == "open");
  CHECK(with(1, [](BatchRun& run) { run.start = 11; }) == "open");
  CHECK(with(1, [](BatchRun& run) { run.start = 28; }) == "open");
  CHECK(with(1, [](BatchRun& run) { run.start = 4; }) == "setup");
  CHECK(with(2, [](BatchRun& run) { run.start = 0; }) == "open");
  CHECK(rules({{0, 1, 4, {1, 3}}, {1, 1, 4, {0}}, {0, 12, 3, {2}}}) == "machine capacity");
  CHECK(rules({{0, 1, 4, {0, 2}}, {0, 10, 3, {1}}, {1, 1, 2, {3}}}) == "family");
  CHECK(rules({{0, 1, 4, {0, 1, 3}}, {0, 12, 3, {2}}}) == "capacity");
}
