#include "core/solver/detail/kernel.h"

#include <algorithm>

namespace dampward::solver::detail {
namespace {

// Luby, Sinclair and Zuckerman 1993: 1 1 2 1 1 2 4 …
std::int64_t luby(int index) {
  int size = 1, sequence = 0;
  while (size < index + 1) {
    ++sequence;
    size = 2 * size + 1;
  }
  while (size - 1 != index) {
    size = (size - 1) / 2;
    --sequence;
    index %= size;
  }
  return std::int64_t{1} << sequence;
}

constexpr std::int64_t restart_unit = 100;    // conflicts
constexpr std::int64_t first_by_start = 300;  // conflicts during which choices go by start time
constexpr std::size_t most_orders = 20'000;   // pairs of operations whose order is a variable of its own

}  // namespace

Windows widest_windows(const Problem& problem, const Starts& earliest) {
  Windows windows;
  const int latest = horizon(problem);
  for (const int start : earliest) windows.push_back({start, latest});
  windows.front().second = 0;
  return windows;
}

Kernel::Kernel(const Problem& problem, const Windows& windows, const std::vector<char>* free)
    : learner_(trail_, clauses_, gaps_, activity_), operations_(problem.size()), last_(problem.size() - 1) {
  for (const auto& [low, high] : windows) {
    if (low > high) contradiction_ = true;
    trail_.new_variable(low, std::max(low, high));
    leaning_.push_back(low);
  }
  add_arcs(problem);
  add_resources(problem);
  add_orders(problem, free);
  tables_of_.resize(trail_.variables());
}

void Kernel::add_arcs(const Problem& problem) {
  for (const Arc& arc : problem.arcs) gaps_.add(arc.from, arc.to, arc.lag);
}

void Kernel::add_resources(const Problem& problem) {
  tables_of_.resize(problem.operations.size());
  for (int r = 0; r < static_cast<int>(problem.capacities.size()); ++r) {
    std::vector<TimeTable::Task> tasks;
    std::int64_t sum = 0;
    for (int i = 0; i < problem.size(); ++i) {
      const Operation& op = problem.operations[i];
      for (const Demand& demand : op.demands) {
        if (demand.resource != r || demand.amount == 0 || op.duration == 0) continue;
        tasks.push_back({i, op.duration, demand.amount});
        sum += demand.amount;
      }
    }
    if (sum <= problem.capacities[r]) continue;
    const int table = static_cast<int>(tables_.size());
    for (int k = 0; k < static_cast<int>(tasks.size()); ++k)
      tables_of_[tasks[k].variable].push_back({table, k});
    is_due_.push_back(1);
    due_.push_back(table);
    check_is_due_.push_back(1);
    checks_.emplace_back(problem.capacities[r], tasks);
    tables_.emplace_back(problem.capacities[r], std::move(tasks));
  }
}

// Of two operations that cannot run together, one is before the other: a variable of its own says which.
void Kernel::add_orders(const Problem& problem, const std::vector<char>* free) {
  std::vector<std::pair<int, int>> pairs;
  const int n = problem.size();
  std::vector<std::vector<int>> amounts(n, std::vector<int>(problem.capacities.size(), 0));
  for (int i = 0; i < n; ++i) {
    for (const Demand& demand : problem.operations[i].demands) amounts[i][demand.resource] = demand.amount;
  }
  for (int i = 0; i < n && pairs.size() <= most_orders; ++i) {
    if (problem.operations[i].duration == 0) continue;
    for (int j = i + 1; j < n; ++j) {
      if (problem.operations[j].duration == 0 || (free && !(*free)[i] && !(*free)[j])) continue;
      for (const Demand& demand : problem.operations[i].demands) {
        if (demand.amount + amounts[j][demand.resource] <= problem.capacities[demand.resource]) continue;
        pairs.push_back({i, j});
        break;
      }
    }
  }
  if (pairs.size() > most_orders) return;
  for (const auto& [i, j] : pairs) {
    const int order = trail_.new_variable(0, 1);
    leaning_.push_back(1);
    orders_.push_back({i, j, order});
    gaps_.add(i, j, problem.operations[i].duration, at_least(order, 1));
    gaps_.add(j, i, problem.operations[j].duration, at_most(order, 0));
  }
}

void Kernel::settle_orders(const Problem& problem, const BlockDistances& distances) {
  back_to(0);
  for (const Order& order : orders_) {
    if (distances.blocks().of[order.first] != distances.blocks().of[order.second]) continue;
    const int there = distances.from(order.first)[distances.place(order.second)];
    const int back = distances.to(order.first)[distances.place(order.second)];
    // An order whose wait, with the way back, makes a ring longer than zero.
    if (problem.operations[order.first].duration + back > 0 && !trail_.push(at_most(order.variable, 0), {}))
      contradiction_ = true;
    if (problem.operations[order.second].duration + there > 0 &&
        !trail_.push(at_least(order.variable, 1), {}))
      contradiction_ = true;
  }
}

std::int64_t Kernel::work() const {
  std::int64_t sum = steps_ + gaps_.work() + clauses_.work() + learner_.work();
  for (const TimeTable& table : tables_) sum += table.work();
  for (const EnergyCheck& check : checks_) sum += check.work();
  return sum;
}

void Kernel::require_last_by(int time) {
  back_to(0);
  if (!trail_.push(at_most(last_, time), {})) contradiction_ = true;
}

void Kernel::lean_to(const Starts& starts) {
  std::copy(starts.begin(), starts.end(), leaning_.begin());
  leans_to_plan_ = true;
}

bool Kernel::propagate() {
  for (;;) {
    while (head_ < trail_.size()) {
      const Trail::Entry entry = trail_.entry(head_++);
      ++steps_;
      for (const auto& [table, task] : tables_of_[entry.view / 2]) {
        tables_[table].note(trail_, task);
        check_is_due_[table] = 1;
        if (is_due_[table]) continue;
        is_due_[table] = 1;
        due_.push_back(table);
      }
      if (!gaps_.propagate(trail_, entry) || !clauses_.propagate(trail_, entry)) return false;
    }
    if (due_.empty()) return !from_below_ || check_energy();
    const int table = due_.back();
    due_.pop_back();
    is_due_[table] = 0;
    if (!tables_[table].propagate(trail_)) return false;
  }
}

// Where all else is still. It lifts nothing, and pays off where time is short: from below.
bool Kernel::check_energy() {
  for (std::size_t check = 0; check < checks_.size(); ++check) {
    if (!check_is_due_[check]) continue;
    check_is_due_[check] = 0;
    if (!checks_[check].propagate(trail_)) return false;
  }
  return true;
}

void Kernel::back_to(int level) {
  if (trail_.level() <= level) return;
  // Without a plan to lean to, choices lean to what held last.
  for (int index = trail_.end_of(level); !leans_to_plan_ && index < trail_.size(); ++index) {
    const int variable = trail_.entry(index).view / 2;
    leaning_[variable] = trail_.lower(view_of(variable));
  }
  activity_.back_to(level);
  trail_.back_to(level);
  for (TimeTable& table : tables_) table.forget();
  head_ = trail_.size();
}

// After a contradiction. False: the facts contradict each other.
bool Kernel::resolve() {
  ++conflicts_;
  const int certain = learner_.take_failure();
  if (certain == 0) return false;
  back_to(certain);
  learner_.learn();
  const std::vector<Literal>& clause = learner_.clause();
  back_to(learner_.level());
  if (clause.size() == 1) return trail_.push(clause[0], {});
  const int number = clauses_.add(clause, learner_.distinct_levels(), trail_.variables());
  return trail_.push(clause[0], {Because::clause, number});
}

void Kernel::restart() {
  back_to(0);
  restart_at_ = conflicts_ + restart_unit * luby(restarts_++);
}

bool Kernel::leans(int variable, int bound) const {
  return leaning_[variable] >= bound;
}

// The operation that can start first does so now (ties: the one with the least time left to start).
Literal Kernel::by_start_time() {
  int best = -1;
  for (int i = 0; i < operations_; ++i) {
    if (trail_.fixed(i)) continue;
    if (best < 0 || trail_.lower(view_of(i)) < trail_.lower(view_of(best)) ||
        (trail_.lower(view_of(i)) == trail_.lower(view_of(best)) &&
         trail_.upper(view_of(i)) < trail_.upper(view_of(best))))
      best = i;
  }
  return best < 0 ? Literal{-1, 0} : at_most(best, trail_.lower(view_of(best)));
}

std::optional<Literal> Kernel::by_activity() {
  // Before it has a plan of its own, every other stretch between restarts goes by start time, which often finds one sooner.
  const bool by_start = conflicts_ < first_by_start || (starts_.empty() && restarts_ % 2 == 0);
  if (by_start && !by_activity_alone_) return std::nullopt;
  const auto atom = activity_.pick(trail_);
  if (!atom || leans(atom->view / 2, atom->bound)) return atom;
  return opposite(*atom);
}

// False: everything is decided.
bool Kernel::decide() {
  const auto active = by_activity();
  const Literal choice = active ? *active : by_start_time();
  if (choice.view < 0) return false;
  trail_.new_level();
  trail_.push(choice, {});
  return true;
}

void Kernel::keep_plan() {
  starts_.resize(operations_);
  for (int i = 0; i < operations_; ++i) starts_[i] = trail_.lower(view_of(i));
  for (int x = 0; x < trail_.variables(); ++x) leaning_[x] = trail_.lower(view_of(x));
  leans_to_plan_ = true;
}

Kernel::Verdict Kernel::search(std::int64_t allowed, std::optional<int> try_last_by) {
  if (contradiction_) return Verdict::none;
  const std::int64_t work_end = work() + allowed;
  from_below_ = try_last_by.has_value();
  back_to(0);
  if (!started_) {
    started_ = true;
    if (!gaps_.start(trail_)) contradiction_ = true;
  }
  while (!contradiction_) {
    if (!propagate()) {
      if (!resolve()) contradiction_ = true;
      continue;
    }
    if (trail_.level() == 0) {
      trail_.settle();
      head_ = 0;
      least_last_ = trail_.lower(view_of(last_));
      if (!tidy_) {
        tidy_ = true;
        gaps_.tidy(trail_);
      }
      if (conflicts_ >= reduce_at_) {
        gaps_.tidy(trail_);
        clauses_.reduce(trail_);
        reduce_at_ = conflicts_ + 4000 + 200 * restarts_;
      }
      if (try_last_by && least_last_ > *try_last_by) return Verdict::refuted;
    }
    if (work() > work_end || (keep_going_ && !(*keep_going_)())) {
      back_to(0);
      return Verdict::stopped;
    }
    if (conflicts_ >= restart_at_) {
      restart();
      continue;
    }
    if (try_last_by && trail_.level() == 0 && trail_.upper(view_of(last_)) > *try_last_by) {
      trail_.new_level();
      trail_.push(at_most(last_, *try_last_by), {});
      continue;
    }
    if (decide()) continue;
    keep_plan();
    back_to(0);
    return Verdict::plan;
  }
  back_to(0);
  return Verdict::none;
}

}  // namespace dampward::solver::detail
