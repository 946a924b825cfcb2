#include "core/solver/detail/batch_moves.h"

#include <bit>

namespace dampward::solver::detail {
namespace {

// One of the machines in the mask, which holds at least one.
int any_of(std::uint64_t mask, Random& random) {
  for (int skip = random.below(std::popcount(mask)); skip > 0; --skip) mask &= mask - 1;
  return std::countr_zero(mask);
}

int any_of(const std::vector<int>& list, Random& random) {
  return list[random.below(static_cast<int>(list.size()))];
}

int any_position(const BatchState& state, int machine, Random& random) {
  return random.below(static_cast<int>(state.order(machine).size()) + 1);
}

// A job of the same family in another batch; -1: none was drawn.
int companion(const BatchState& state, int job, Random& random) {
  const auto& family = state.family_members(state.problem().jobs[job].family);
  const int other = any_of(family, random);
  return state.batch_of(other) == state.batch_of(job) ? -1 : other;
}

bool to_another_batch(BatchState& state, int job, Random& random) {
  for (int tries = 0; tries < 4; ++tries) {
    const int other = companion(state, job, random);
    if (other < 0) continue;
    const int b = state.batch_of(other);
    if (!state.fits(b, job)) continue;
    state.take(job);
    state.put(b, job);
    return true;
  }
  return false;
}

bool to_a_batch_of_its_own(BatchState& state, int job, Random& random) {
  const int machine = any_of(state.machines_of(job), random);
  state.take(job);
  state.open(machine, any_position(state, machine, random), job);
  return true;
}

bool exchange_jobs(BatchState& state, int job, Random& random) {
  for (int tries = 0; tries < 4; ++tries) {
    const int other = companion(state, job, random);
    if (other < 0) continue;
    const int b = state.batch_of(job), c = state.batch_of(other);
    if (!state.fits(c, job, other) || !state.fits(b, other, job)) continue;
    state.exchange(job, other);
    return true;
  }
  return false;
}

bool may_go(const BatchState& state, int b, int machine) {
  const BatchState::Batch& batch = state.batch(b);
  return (batch.machines >> machine & 1) != 0 && batch.size <= state.problem().machines[machine].capacity;
}

bool batch_elsewhere(BatchState& state, int b, Random& random) {
  const int machine = any_of(state.batch(b).machines, random);
  if (!may_go(state, b, machine)) return false;
  const int from = state.batch(b).machine, at = state.batch(b).position;
  const int room = static_cast<int>(state.order(machine).size()) + (machine == from ? 0 : 1);
  const int to = random.below(room);
  if (machine == from && to == at) return false;
  state.place(b, machine, to);
  return true;
}

bool exchange_batches(BatchState& state, int b, Random& random) {
  const int c = state.batch_of(random.below(state.problem().size()));
  const int m = state.batch(b).machine, n = state.batch(c).machine;
  if (b == c || !may_go(state, b, n) || !may_go(state, c, m)) return false;
  state.swap(b, c);
  return true;
}

bool exchange_neighbours(BatchState& state, int b) {
  const auto& order = state.order(state.batch(b).machine);
  const std::size_t next = static_cast<std::size_t>(state.batch(b).position) + 1;
  if (next >= order.size()) return false;
  state.swap(b, order[next]);
  return true;
}

bool make_one(BatchState& state, int b, int job, Random& random) {
  const int other = companion(state, job, random);
  if (other < 0) return false;
  const BatchState::Batch &into = state.batch(state.batch_of(other)), &from = state.batch(b);
  if (into.size + from.size > state.problem().machines[into.machine].capacity ||
      (from.machines >> into.machine & 1) == 0 || from.length > into.most_length ||
      into.length > from.most_length)
    return false;
  const int target = state.batch_of(other);
  while (state.batch_of(job) != target) {
    const auto& left = state.batch(b).jobs;
    const int one = left.size() > 1 && left.back() == job ? left.front() : left.back();
    state.take(one);
    state.put(target, one);
  }
  return true;
}

}  // namespace

bool random_move(BatchState& state, Random& random) {
  const int job = random.below(state.problem().size());
  const int b = state.batch_of(job);
  const int draw = random.below(100);
  if (draw < 30) return to_another_batch(state, job, random);
  if (draw < 55) return exchange_jobs(state, job, random);
  if (draw < 65) return to_a_batch_of_its_own(state, job, random);
  if (draw < 80) return batch_elsewhere(state, b, random);
  if (draw < 88) return exchange_batches(state, b, random);
  if (draw < 94) return exchange_neighbours(state, b);
  return make_one(state, b, job, random);
}

}  // namespace dampward::solver::detail
