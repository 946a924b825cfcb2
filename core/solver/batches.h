#pragma once

#include <cstdint>
#include <vector>

#include "core/base/problem.h"

// Jobs that share runs of parallel batching machines (p-batch: all of a batch start and end together), such as ovens. A batch
// holds jobs of one family on one machine, lies inside one of the machine's open intervals together with the set-up before it,
// and lasts at least as long as each of its jobs needs and no longer than any of them bears.
// Model: Lackner, Mrkvicka, Musliu, Walkiewicz and Winter 2023 (oven scheduling problem). Times are whole.
namespace dampward::solver {

// Half open: a batch may start at `from` and must have ended by `to`.
struct OpenInterval {
  int from = 0, to = 0;
};

struct BatchMachine {
  int capacity = 0;
  int initial_family = 0;          // what it is set up for at time 0
  std::vector<OpenInterval> open;  // in time order, apart; empty ones count for nothing
};

struct BatchJob {
  int family = 0;
  int size = 0;                    // 0 or more; sizes of a batch add up to at most the capacity
  int release = 0;                 // no earlier start
  int due = 0;                     // late if its batch ends after
  int min_time = 0, max_time = 0;  // of the batch that holds it
  std::vector<int> machines;       // where it may go, indices without repetition
};

// What one unit of each costs.
struct BatchWeights {
  int run_time = 0;    // sum of the lengths of all batches
  int late_jobs = 0;   // number of jobs that end after their due time
  int setup_cost = 0;  // sum of the costs of all set-ups
  int setup_time = 0;  // sum of the times of all set-ups
};

struct BatchProblem {
  int families = 0;
  // [from][to]: of the set-up between batches of two families, or of one and the same.
  std::vector<std::vector<int>> setup_times, setup_costs;
  std::vector<BatchMachine> machines;
  std::vector<BatchJob> jobs;
  BatchWeights weights;
  std::int64_t normalization = 1;  // the sets of the literature divide the weighted sum by it

  int size() const { return static_cast<int>(jobs.size()); }
};

struct PlannedBatch {
  int machine = 0;
  int start = 0, length = 0;
  std::vector<int> jobs;
};

// In time order on each machine. A plan that is found holds every job once.
using BatchPlan = std::vector<PlannedBatch>;

struct BatchCost {
  std::int64_t run_time = 0, late_jobs = 0, setup_cost = 0, setup_time = 0;
};
std::int64_t weighted(const BatchWeights& weights, const BatchCost& cost);

// Of a plan whose batches keep the rules; set-ups of a machine go from its initial family to its first batch, and so on.
BatchCost cost_of(const BatchProblem& problem, const BatchPlan& plan);

// More than these are refused.
inline constexpr int most_batch_jobs = 5000;
inline constexpr int most_batch_machines = 64;
inline constexpr int most_families = 1000;
inline constexpr int most_open_intervals = 1000;  // of a machine

// What keeps a problem from being solved at all, none: nothing. Counts beyond the most there may be, tables of the wrong size,
// an index out of range, a negative figure, min_time above max_time, intervals that overlap, a job larger than every machine it
// may go to, a job that no interval can hold after its release, a sum of costs beyond what can be added up. Jobs and machines
// are named by index from 1, as files count them.
Problems faults(const BatchProblem& problem);

}  // namespace dampward::solver
