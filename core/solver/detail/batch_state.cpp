#include "core/solver/detail/batch_state.h"

#include <algorithm>

namespace dampward::solver::detail {

BatchState::BatchState(const BatchProblem& problem)
    : problem_(problem),
      members_(problem.families),
      batch_of_(problem.jobs.size(), -1),
      order_(problem.machines.size()) {
  for (const BatchMachine& machine : problem.machines) {
    auto& list = open_.emplace_back();
    for (const OpenInterval& interval : machine.open) {
      if (interval.from < interval.to) list.push_back(interval);
    }
  }
  int longest = 0, dearest = 0, slowest = 0;
  for (int j = 0; j < problem.size(); ++j) {
    const BatchJob& job = problem.jobs[j];
    std::uint64_t mask = 0;
    for (const int m : job.machines) {
      if (job.size <= problem.machines[m].capacity) mask |= std::uint64_t{1} << m;
    }
    machines_of_.push_back(mask);
    hopeful_.push_back(could_be_on_time(job));
    members_[job.family].push_back(j);
    longest = std::max(longest, job.min_time);
  }
  for (int f = 0; f < problem.families; ++f) {
    for (int g = 0; g < problem.families; ++g) {
      dearest = std::max(dearest, problem.setup_costs[f][g]);
      slowest = std::max(slowest, problem.setup_times[f][g]);
    }
  }
  const BatchWeights& w = problem.weights;
  no_place_ = 2 * (std::int64_t{w.late_jobs} + std::int64_t{w.run_time} * longest +
                   2 * (std::int64_t{w.setup_cost} * dearest + std::int64_t{w.setup_time} * slowest)) +
              1;
}

// Were there no other jobs and no set-ups.
bool BatchState::could_be_on_time(const BatchJob& job) const {
  for (const int m : job.machines) {
    for (const OpenInterval& open : open_[m]) {
      const int end = std::max(job.release, open.from) + job.min_time;
      if (end <= open.to && end <= job.due) return true;
    }
  }
  return false;
}

bool BatchState::fits(int b, int job, int leaving) const {
  const Batch& batch = batches_[b];
  const BatchJob& it = problem_.jobs[job];
  if ((machines_of_[job] >> batch.machine & 1) == 0) return false;
  const int freed = leaving < 0 ? 0 : problem_.jobs[leaving].size;
  if (batch.size - freed + it.size > problem_.machines[batch.machine].capacity) return false;
  int length = it.min_time, most = it.max_time;
  if (leaving < 0) {
    length = std::max(length, batch.length);
    most = std::min(most, batch.most_length);
  } else {
    for (const int other : batch.jobs) {
      if (other == leaving) continue;
      length = std::max(length, problem_.jobs[other].min_time);
      most = std::min(most, problem_.jobs[other].max_time);
    }
  }
  return length <= most;
}

int BatchState::unused() {
  if (unused_.empty()) {
    unused_.push_back(static_cast<int>(batches_.size()));
    batches_.emplace_back();
  }
  const int b = unused_.back();
  unused_.pop_back();
  return b;
}

void BatchState::touch(int machine, int position) {
  for (Touched& it : touched_) {
    if (it.machine != machine) continue;
    it.first = std::min(it.first, position);
    it.last = std::max(it.last, position);
    return;
  }
  touched_.push_back({machine, position, position});
}

void BatchState::measure(Batch& batch) const {
  batch.size = batch.release = batch.length = 0;
  batch.hopeful = false;
  batch.most_length = batch.earliest_due = std::numeric_limits<int>::max();
  batch.latest_due = std::numeric_limits<int>::min();
  batch.machines = ~std::uint64_t{0};
  for (const int j : batch.jobs) {
    const BatchJob& job = problem_.jobs[j];
    batch.size += job.size;
    batch.release = std::max(batch.release, job.release);
    batch.length = std::max(batch.length, job.min_time);
    batch.most_length = std::min(batch.most_length, job.max_time);
    batch.earliest_due = std::min(batch.earliest_due, job.due);
    batch.latest_due = std::max(batch.latest_due, job.due);
    batch.hopeful = batch.hopeful || hopeful_[j];
    batch.machines &= machines_of_[j];
  }
}

void BatchState::add(int b, int job) {
  Batch& batch = batches_[b];
  batch.jobs.push_back(job);
  batch.family = problem_.jobs[job].family;
  batch_of_[job] = b;
  measure(batch);
}

void BatchState::remove(int b, int job) {
  Batch& batch = batches_[b];
  *std::find(batch.jobs.begin(), batch.jobs.end(), job) = batch.jobs.back();
  batch.jobs.pop_back();
  batch_of_[job] = -1;
  measure(batch);
}

void BatchState::trade(int job, int other) {
  Batch &b = batches_[batch_of_[job]], &c = batches_[batch_of_[other]];
  *std::find(b.jobs.begin(), b.jobs.end(), job) = other;
  *std::find(c.jobs.begin(), c.jobs.end(), other) = job;
  std::swap(batch_of_[job], batch_of_[other]);
  measure(b);
  measure(c);
}

// A position in between is one more after an insertion before it and one less after an erasure: what is touched is widened by
// both, which costs a few looks and is never wrong.
void BatchState::insert(int b, int machine, int position) {
  auto& order = order_[machine];
  order.insert(order.begin() + position, b);
  Batch& batch = batches_[b];
  batch.machine = machine;
  for (int k = position; k < static_cast<int>(order.size()); ++k) batches_[order[k]].position = k;
  for (Touched& it : touched_) it.last += it.machine == machine && it.last >= position;
  touch(machine, position);
  touch(machine, position + 1);
}

void BatchState::erase(int b) {
  Batch& batch = batches_[b];
  auto& order = order_[batch.machine];
  order.erase(order.begin() + batch.position);
  for (int k = batch.position; k < static_cast<int>(order.size()); ++k) batches_[order[k]].position = k;
  touch(batch.machine, batch.position);
}

int BatchState::open(int machine, int position, int job) {
  const int b = unused();
  insert(b, machine, position);
  undo_.push_back({Undo::What::insert, b, -1, machine, position});
  batches_[b].end = -1;
  put(b, job);
  return b;
}

void BatchState::put(int b, int job) {
  add(b, job);
  touch(batches_[b].machine, batches_[b].position);
  undo_.push_back({Undo::What::put, b, job, -1, -1});
}

void BatchState::take(int job) {
  const int b = batch_of_[job];
  Batch& batch = batches_[b];
  remove(b, job);
  undo_.push_back({Undo::What::take, b, job, -1, -1});
  if (!batch.jobs.empty()) {
    touch(batch.machine, batch.position);
    return;
  }
  undo_.push_back({Undo::What::erase, b, -1, batch.machine, batch.position});
  erase(b);
  // Its cost goes with it; jobs without a place are counted by end.
  timing_.push_back({b, batch.end, batch.interval, batch.cost});
  cost_ -= batch.cost;
  without_place_ -= batch.end == never;
  batch.cost = 0;
  batch.end = -1;
  batch.machine = -1;
}

void BatchState::exchange(int job, int other) {
  trade(job, other);
  for (const int b : {batch_of_[job], batch_of_[other]}) touch(batches_[b].machine, batches_[b].position);
  undo_.push_back({Undo::What::exchange, other, job, -1, -1});
}

void BatchState::place(int b, int machine, int position) {
  Batch& batch = batches_[b];
  undo_.push_back({Undo::What::erase, b, -1, batch.machine, batch.position});
  erase(b);
  insert(b, machine, position);
  undo_.push_back({Undo::What::insert, b, -1, machine, position});
}

void BatchState::swap(int b, int c) {
  const int m = batches_[b].machine, p = batches_[b].position;
  const int n = batches_[c].machine, q = batches_[c].position;
  if (m == n && p > q) return swap(c, b);
  // The later one first, so that the earlier position still holds.
  place(c, m, p);
  place(b, n, q);
}

void BatchState::keep() {
  for (const Undo& it : undo_) {
    if (it.what == Undo::What::erase && batches_[it.b].machine < 0) unused_.push_back(it.b);
  }
  undo_.clear();
  timing_.clear();
  touched_.clear();
  old_cost_ = cost_;
  old_without_place_ = without_place_;
}

void BatchState::take_back() {
  for (auto it = timing_.rbegin(); it != timing_.rend(); ++it) {
    Batch& batch = batches_[it->b];
    batch.end = it->end;
    batch.interval = it->interval;
    batch.cost = it->cost;
  }
  for (auto it = undo_.rbegin(); it != undo_.rend(); ++it) {
    switch (it->what) {
      case Undo::What::put:
        remove(it->b, it->job);
        break;
      case Undo::What::take:
        add(it->b, it->job);
        break;
      case Undo::What::exchange:
        trade(it->job, it->b);
        break;
      case Undo::What::insert:
        erase(it->b);
        if (batches_[it->b].jobs.empty()) {
          batches_[it->b].machine = -1;
          unused_.push_back(it->b);
        }
        break;
      case Undo::What::erase:
        insert(it->b, it->machine, it->position);
        break;
    }
  }
  undo_.clear();
  timing_.clear();
  touched_.clear();
  cost_ = old_cost_;
  without_place_ = old_without_place_;
}

BatchPlan BatchState::plan() const {
  BatchPlan plan;
  for (const auto& order : order_) {
    for (const int b : order) {
      const Batch& it = batches_[b];
      plan.push_back({it.machine, it.end - it.length, it.length, it.jobs});
      std::sort(plan.back().jobs.begin(), plan.back().jobs.end());
    }
  }
  return plan;
}

void BatchState::load(const BatchPlan& plan) {
  for (int j = 0; j < problem_.size(); ++j) {
    if (batch_of_[j] >= 0) take(j);
  }
  for (const PlannedBatch& it : plan) {
    const int b = open(it.machine, static_cast<int>(order_[it.machine].size()), it.jobs.front());
    for (std::size_t k = 1; k < it.jobs.size(); ++k) put(b, it.jobs[k]);
  }
  retime();
  keep();
}

}  // namespace dampward::solver::detail
