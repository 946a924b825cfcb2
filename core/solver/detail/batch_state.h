#pragma once

#include <cstdint>
#include <limits>
#include <vector>

#include "core/solver/batches.h"

namespace dampward::solver::detail {

// A plan under change: the batches of each machine in their order, each at its earliest start, which no later one could better.
// Changes are made in place, told to `retime`, and either kept or taken back.
class BatchState {
 public:
  struct Batch {
    int machine = -1;  // -1: not in use
    int position = 0;  // in its machine's order
    int family = 0, size = 0, release = 0;
    int length = 0, most_length = 0;       // the longest min_time and the shortest max_time of its jobs
    int earliest_due = 0, latest_due = 0;  // of its jobs
    bool hopeful = false;                  // some of them could be on time
    std::uint64_t machines = 0;            // where all of its jobs may go, a bit each
    std::vector<int> jobs;
    int end = 0;            // never: it has no place
    int interval = 0;       // of its machine
    std::int64_t cost = 0;  // with the set-up before it
  };
  static constexpr int never = 1 << 30;

  explicit BatchState(const BatchProblem& problem);

  const BatchProblem& problem() const { return problem_; }
  const Batch& batch(int b) const { return batches_[b]; }
  int batch_of(int job) const { return batch_of_[job]; }  // -1: in none
  const std::vector<int>& order(int machine) const { return order_[machine]; }
  std::uint64_t machines_of(int job) const {
    return machines_of_[job];
  }  // eligible and large enough, a bit each
  const std::vector<int>& family_members(int family) const { return members_[family]; }

  // Each job without a place costs more than any that has one could.
  std::int64_t cost() const { return cost_; }
  std::int64_t kept_cost() const { return old_cost_; }  // before the changes that are not kept yet
  bool complete() const { return without_place_ == 0; }

  // Whether a batch could take the job, if `leaving` (-1: nobody) left it.
  bool fits(int b, int job, int leaving = -1) const;

  // Changes; all are kept or taken back together. A batch that loses its last job goes out of use.
  int open(int machine, int position, int job);  // a new batch of one job that is in none
  void put(int b, int job);                      // a job that is in none
  void take(int job);
  void exchange(int job, int other);             // two jobs change batches
  void place(int b, int machine, int position);  // moves a batch; position counts without it
  void swap(int b, int c);                       // two batches change places
  // False: it stopped early, since the cost would have grown by more than `most`; then only `take_back` may follow.
  bool retime(std::int64_t most = std::numeric_limits<std::int64_t>::max());
  void keep();
  void take_back();

  // All batches; those without a place start beyond every interval.
  BatchPlan plan() const;
  // Replaces everything: batches in the order given, starts as early as can be. Keeps the change.
  void load(const BatchPlan& plan);

 private:
  struct Undo {
    enum class What { put, take, exchange, insert, erase } what;
    int b, job, machine, position;  // exchange: b is the other job
  };
  struct Timing {
    int b, end, interval;
    std::int64_t cost;
  };
  // Positions of a machine whose batches, or those ahead of them, have changed; `last` may lie beyond the end.
  struct Touched {
    int machine, first, last;
    int next = 0;          // to be retimed
    bool earlier = false;  // what is there begins earlier than it did
  };

  bool could_be_on_time(const BatchJob& job) const;
  int unused();
  void touch(int machine, int position);
  void insert(int b, int machine, int position);
  void erase(int b);
  void add(int b, int job);
  void remove(int b, int job);
  void trade(int job, int other);
  void measure(Batch& batch) const;
  void retime(Touched& touched, bool to_the_end);
  bool may_gain(const Touched& touched) const;
  std::int64_t batch_cost(const Batch& batch, int before, int end) const;

  const BatchProblem& problem_;
  std::vector<std::vector<OpenInterval>> open_;  // not empty ones
  std::vector<std::uint64_t> machines_of_;
  std::vector<bool> hopeful_;  // jobs that could be on time
  std::vector<std::vector<int>> members_;
  std::vector<Batch> batches_;
  std::vector<int> unused_;
  std::vector<int> batch_of_;
  std::vector<std::vector<int>> order_;
  std::vector<Undo> undo_;
  std::vector<Timing> timing_;
  std::vector<Touched> touched_;
  std::int64_t cost_ = 0, old_cost_ = 0, no_place_ = 0;
  int without_place_ = 0, old_without_place_ = 0;
};

}  // namespace dampward::solver::detail
