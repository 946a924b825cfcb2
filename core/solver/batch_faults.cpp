#include <algorithm>
#include <cstdint>

#include "core/base/format.h"
#include "core/solver/batches.h"
#include "core/solver/problem.h"

namespace dampward::solver {
namespace {

class Faults {
 public:
  void add(std::string found, std::string expected, std::string next = "") {
    if (problems_.size() < most)
      problems_.push_back({{"problem"}, std::move(found), std::move(expected), std::move(next)});
  }
  bool none() const { return problems_.empty(); }
  Problems take() { return std::move(problems_); }

 private:
  static constexpr std::size_t most = 20;
  Problems problems_;
};

bool in_range(int value) {
  return value >= 0 && value < latest_time;
}

bool counts_fit(const BatchProblem& problem, Faults& faults) {
  const auto within = [&](std::size_t count, int most, const char* of) {
    if (count < 1 || count > static_cast<std::size_t>(most))
      faults.add(format("{} {}", count, of), format("from 1 to {}", most));
  };
  within(problem.jobs.size(), most_batch_jobs, "jobs");
  within(problem.machines.size(), most_batch_machines, "machines");
  within(static_cast<std::size_t>(std::max(problem.families, 0)), most_families, "families");
  return faults.none();
}

bool tables_fit(const BatchProblem& problem, Faults& faults) {
  const auto families = static_cast<std::size_t>(problem.families);
  for (const auto* table : {&problem.setup_times, &problem.setup_costs}) {
    const char* name = table == &problem.setup_times ? "set-up times" : "set-up costs";
    if (table->size() != families) {
      faults.add(format("{} from {} families", name, table->size()), format("from {}", families));
      continue;
    }
    for (std::size_t f = 0; f < families; ++f) {
      if ((*table)[f].size() != families)
        faults.add(format("{} from family {} to {} families", name, f + 1, (*table)[f].size()),
                   format("to {}", families));
      for (const int one : (*table)[f]) {
        if (!in_range(one))
          faults.add(format("{} from family {}: {}", name, f + 1, one),
                     format("0 or more, below {}", latest_time));
      }
    }
  }
  const BatchWeights& w = problem.weights;
  if (std::min({w.run_time, w.late_jobs, w.setup_cost, w.setup_time}) < 0)
    faults.add("a weight below zero", "0 or more");
  if (problem.normalization < 1)
    faults.add(format("the weighted sum is divided by {}", problem.normalization), "1 or more");
  return faults.none();
}

void look_at_machine(const BatchProblem& problem, int m, Faults& faults) {
  const BatchMachine& machine = problem.machines[m];
  if (machine.capacity < 0)
    faults.add(format("machine {} has capacity {}", m + 1, machine.capacity), "0 or more");
  if (machine.initial_family < 0 || machine.initial_family >= problem.families)
    faults.add(format("machine {} is set up for family {}", m + 1, machine.initial_family + 1),
               format("a family from 1 to {}", problem.families));
  if (machine.open.size() > most_open_intervals)
    faults.add(format("machine {} has {} intervals", m + 1, machine.open.size()),
               format("at most {}", most_open_intervals));
  int end = 0;
  for (const OpenInterval& open : machine.open) {
    if (!in_range(open.from) || !in_range(open.to) || open.to < open.from) {
      faults.add(format("machine {} is open from {} to {}", m + 1, open.from, open.to),
                 format("0 or more, below {}, the end not before the start", latest_time));
    } else if (open.from < open.to) {
      if (open.from < end)
        faults.add(format("machine {} opens at {} before it has closed at {}", m + 1, open.from, end),
                   "intervals in time order that do not overlap");
      end = open.to;
    }
  }
}

bool some_interval_holds(const BatchProblem& problem, const BatchJob& job) {
  for (const int m : job.machines) {
    if (job.size > problem.machines[m].capacity) continue;
    for (const OpenInterval& open : problem.machines[m].open) {
      if (std::max(open.from, job.release) + job.min_time <= open.to && open.from < open.to) return true;
    }
  }
  return false;
}

void look_at_job(const BatchProblem& problem, int j, Faults& faults) {
  const BatchJob& job = problem.jobs[j];
  const int machines = static_cast<int>(problem.machines.size());
  if (job.family < 0 || job.family >= problem.families)
    faults.add(format("job {} is of family {}", j + 1, job.family + 1),
               format("a family from 1 to {}", problem.families));
  if (!in_range(job.size)) faults.add(format("job {} has size {}", j + 1, job.size), "0 or more");
  if (!in_range(job.release) || !in_range(job.due))
    faults.add(format("job {} may start at {} and is due at {}", j + 1, job.release, job.due),
               format("0 or more, below {}", latest_time));
  if (!in_range(job.min_time) || !in_range(job.max_time) || job.min_time > job.max_time)
    faults.add(format("job {} takes from {} to {}", j + 1, job.min_time, job.max_time),
               format("0 or more, below {}, the least not above the most", latest_time));
  std::vector<int> sorted = job.machines;
  std::sort(sorted.begin(), sorted.end());
  if (sorted.empty() || sorted.front() < 0 || sorted.back() >= machines ||
      std::adjacent_find(sorted.begin(), sorted.end()) != sorted.end()) {
    faults.add(format("job {} may go to {} machines, some unknown, twice, or none", j + 1, sorted.size()),
               format("one or more of 1 to {}, each once", machines));
    return;
  }
  int room = 0;
  for (const int m : sorted) room = std::max(room, problem.machines[m].capacity);
  if (job.size > room)
    faults.add(format("job {} has size {}", j + 1, job.size),
               format("at most {}, the largest of the machines it may go to", room),
               "No plan can hold it: correct its size, the machines' or the list of machines it may go to.");
  else if (!some_interval_holds(problem, job))
    faults.add(format("job {} takes {} from {} on, and no machine it may go to is open for that", j + 1,
                      job.min_time, job.release),
               "one interval that holds it", "No plan can hold it: correct its times or the intervals.");
}

// The dearest there could be, as far as it matters: every job a batch of its own, and what a job without a place counts.
double dearest(const BatchProblem& problem) {
  double cost = 0, slowest = 0, longest = 0;
  for (int f = 0; f < problem.families; ++f) {
    for (int g = 0; g < problem.families; ++g) {
      cost = std::max<double>(cost, problem.setup_costs[f][g]);
      slowest = std::max<double>(slowest, problem.setup_times[f][g]);
    }
  }
  for (const BatchJob& job : problem.jobs) longest = std::max<double>(longest, job.min_time);
  const BatchWeights& w = problem.weights;
  return 4 * static_cast<double>(problem.size()) *
         (w.late_jobs + w.run_time * longest + w.setup_cost * cost + w.setup_time * slowest + 1);
}

}  // namespace

Problems faults(const BatchProblem& problem) {
  Faults faults;
  if (!counts_fit(problem, faults) || !tables_fit(problem, faults)) return faults.take();
  for (int m = 0; m < static_cast<int>(problem.machines.size()); ++m) look_at_machine(problem, m, faults);
  if (!faults.none()) return faults.take();
  for (int j = 0; j < problem.size(); ++j) look_at_job(problem, j, faults);
  constexpr double most_cost = 1e18;
  if (faults.none() && dearest(problem) > most_cost)
    faults.add("weights and times that add up to more than can be counted", format("{} at most", most_cost));
  return faults.take();
}

}  // namespace dampward::solver
