#include "core/referee/batches.h"

#include <algorithm>
#include <limits>
#include <string>

#include "core/base/format.h"

namespace dampward::referee {
namespace {

class Judge {
 public:
  Judge(const BatchCase& problem, const std::vector<BatchRun>& plan) : problem_(problem), plan_(plan) {}

  BatchVerdict verdict() {
    count_jobs();
    if (!verdict_.broken.empty()) return verdict_;
    for (const BatchRun& run : plan_) judge_run(run);
    for (std::size_t m = 0; m < problem_.machines.size(); ++m) judge_machine(m);
    verdict_.weighted =
        problem_.run_time_weight * verdict_.run_time + problem_.late_weight * verdict_.late_jobs +
        problem_.setup_cost_weight * verdict_.setup_cost + problem_.setup_time_weight * verdict_.setup_time;
    return verdict_;
  }

 private:
  void broken(const char* rule, std::size_t id, std::string sentence) {
    verdict_.broken.push_back({rule, {std::to_string(id)}, std::move(sentence)});
  }

  // Everything an index may point to is there, so that the rest can look it up.
  void count_jobs() {
    std::vector<int> seen(problem_.jobs.size(), 0);
    for (const BatchRun& run : plan_) {
      if (run.machine >= problem_.machines.size())
        broken("machine", run.machine, format("There is no machine {}.", run.machine));
      if (run.jobs.empty()) broken("job", run.machine, format("A batch at {} is empty.", run.start));
      for (const std::size_t job : run.jobs) {
        if (job >= seen.size())
          broken("job", job, format("There is no job {}.", job));
        else
          ++seen[job];
      }
    }
    for (std::size_t job = 0; job < seen.size(); ++job) {
      if (seen[job] != 1) broken("job", job, format("Job {} is in {} batches.", job, seen[job]));
    }
  }

  void judge_run(const BatchRun& run) {
    std::int64_t size = 0;
    const std::int64_t end = run.start + run.length;
    for (const std::size_t j : run.jobs) {
      const BatchItem& job = problem_.jobs[j];
      size += job.size;
      if (std::count(job.machines.begin(), job.machines.end(), run.machine) == 0)
        broken("machine", run.machine, format("Job {} may not go to machine {}.", j, run.machine));
      if (job.family != problem_.jobs[run.jobs.front()].family)
        broken("family", run.machine, format("Jobs {} and {} share a batch.", run.jobs.front(), j));
      if (run.start < job.release)
        broken("release", run.machine,
               format("Job {} starts at {}, but may only at {}.", j, run.start, job.release));
      if (run.length < job.min_time || run.length > job.max_time)
        broken("length", run.machine,
               format("The batch of job {} takes {}, but may from {} to {}.", j, run.length, job.min_time,
                      job.max_time));
      if (end > job.due) ++verdict_.late_jobs;
    }
    if (size > problem_.machines[run.machine].capacity)
      broken("capacity", run.machine,
             format("The batch at {} on machine {} holds {} of {}.", run.start, run.machine, size,
                    problem_.machines[run.machine].capacity));
    verdict_.run_time += run.length;
  }

  void judge_machine(std::size_t m) {
    const BatchSite& machine = problem_.machines[m];
    std::vector<const BatchRun*> order;
    for (const BatchRun& run : plan_) {
      if (run.machine == m) order.push_back(&run);
    }
    std::stable_sort(order.begin(), order.end(),
                     [](const BatchRun* a, const BatchRun* b) { return a->start < b->start; });
    std::size_t before = machine.initial_family;
    std::int64_t free = std::numeric_limits<std::int64_t>::min();
    for (const BatchRun* run : order) {
      const std::size_t family = problem_.jobs[run->jobs.front()].family;
      const std::int64_t setup = problem_.setup_times[before][family];
      const std::int64_t begins = run->start - setup, end = run->start + run->length;
      if (begins < free)
        broken("setup", m,
               format("The batch at {} on machine {} wants {} of set-up, but the one before ends at {}.",
                      run->start, m, setup, free));
      const bool held = std::any_of(machine.open.begin(), machine.open.end(), [&](const OpenTime& open) {
        return open.from < open.to && open.from <= begins && end <= open.to;
      });
      if (!held)
        broken("open", m,
               format("Machine {} is not open from {} to {} for a batch and its set-up.", m, begins, end));
      verdict_.setup_time += setup;
      verdict_.setup_cost += problem_.setup_costs[before][family];
      before = family;
      free = end;
    }
  }

  const BatchCase& problem_;
  const std::vector<BatchRun>& plan_;
  BatchVerdict verdict_;
};

}  // namespace

BatchVerdict judge_batches(const BatchCase& problem, const std::vector<BatchRun>& plan) {
  return Judge(problem, plan).verdict();
}

}  // namespace dampward::referee
