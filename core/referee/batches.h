#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/referee/judge.h"

// Judges a plan of batching machines (core/solver/batches.h states the same problem for the search) and reckons what it costs.
namespace dampward::referee {

struct OpenTime {
  std::int64_t from = 0, to = 0;
};

struct BatchSite {
  std::int64_t capacity = 0;
  std::size_t initial_family = 0;
  std::vector<OpenTime> open;
};

struct BatchItem {
  std::size_t family = 0;
  std::int64_t size = 0, release = 0, due = 0, min_time = 0, max_time = 0;
  std::vector<std::size_t> machines;
};

struct BatchCase {
  std::vector<std::vector<std::int64_t>> setup_times, setup_costs;  // [from][to]
  std::vector<BatchSite> machines;
  std::vector<BatchItem> jobs;
  std::int64_t run_time_weight = 0, late_weight = 0, setup_cost_weight = 0, setup_time_weight = 0;
};

struct BatchRun {
  std::size_t machine = 0;
  std::int64_t start = 0, length = 0;
  std::vector<std::size_t> jobs;
};

struct BatchVerdict {
  // Rules: "job" (not in exactly one batch, or none such), "machine" (none such, or one a job may not go to), "family",
  // "capacity", "release", "length", "open" (batch and the set-up before it are not inside one interval), "setup" (not enough time
  // since the batch before). Ids are indices from 0: of the machine, or of the job for "job".
  std::vector<Violation> broken;
  // Where nothing is broken.
  std::int64_t run_time = 0, late_jobs = 0, setup_cost = 0, setup_time = 0, weighted = 0;
};

// Batches of one machine follow one another by start, at one and the same start as they are listed.
BatchVerdict judge_batches(const BatchCase& problem, const std::vector<BatchRun>& plan);

}  // namespace dampward::referee
