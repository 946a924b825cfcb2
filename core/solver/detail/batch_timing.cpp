// What a change of a BatchState means for the ends of its batches, and what it costs.
#include <algorithm>

#include "core/solver/detail/batch_state.h"

namespace dampward::solver::detail {

std::int64_t BatchState::batch_cost(const Batch& batch, int before, int end) const {
  const BatchWeights& w = problem_.weights;
  if (end == never) return no_place_ * static_cast<std::int64_t>(batch.jobs.size());
  std::int64_t cost = std::int64_t{w.run_time} * batch.length +
                      std::int64_t{w.setup_cost} * problem_.setup_costs[before][batch.family] +
                      std::int64_t{w.setup_time} * problem_.setup_times[before][batch.family];
  if (end > batch.latest_due) return cost + w.late_jobs * static_cast<std::int64_t>(batch.jobs.size());
  if (end <= batch.earliest_due) return cost;
  for (const int job : batch.jobs) cost += end > problem_.jobs[job].due ? w.late_jobs : 0;
  return cost;
}

// As far as the last change, or from there on until a batch ends when it did before.
void BatchState::retime(Touched& touched, bool to_the_end) {
  const auto& order = order_[touched.machine];
  const auto& open = open_[touched.machine];
  const int batches = static_cast<int>(order.size()), intervals = static_cast<int>(open.size());
  const int stop = to_the_end ? batches : std::min(touched.last + 1, batches);
  int before = problem_.machines[touched.machine].initial_family, free = 0, interval = 0;
  if (touched.next > 0) {
    const Batch& ahead = batches_[order[touched.next - 1]];
    before = ahead.family;
    free = ahead.end;
    interval = ahead.interval;
  }
  for (int k = touched.next; k < stop; ++k) {
    Batch& batch = batches_[order[k]];
    const int setup = problem_.setup_times[before][batch.family];
    int end = never;
    for (; free != never && interval < intervals; ++interval) {
      const int start = std::max(batch.release, std::max(free, open[interval].from) + setup);
      if (start + batch.length > open[interval].to) continue;
      end = start + batch.length;
      break;
    }
    const std::int64_t cost = batch_cost(batch, before, end);
    const bool same_end = end == batch.end;
    if (k >= touched.last) touched.earlier = end < batch.end;
    if (!same_end || cost != batch.cost || interval != batch.interval) {
      timing_.push_back({order[k], batch.end, batch.interval, batch.cost});
      cost_ += cost - batch.cost;
      without_place_ += (end == never) - (batch.end == never);
      batch.end = end;
      batch.cost = cost;
      batch.interval = interval;
    }
    if (same_end && k >= touched.last) {
      touched.next = batches;
      return;
    }
    before = batch.family;
    free = end;
  }
  touched.next = stop;
}

// Whether batches behind the last change could come to cost less: only if they begin earlier, and something can be on time.
bool BatchState::may_gain(const Touched& touched) const {
  if (!touched.earlier) return false;
  const auto& order = order_[touched.machine];
  for (std::size_t k = static_cast<std::size_t>(touched.next); k < order.size(); ++k) {
    if (batches_[order[k]].hopeful) return true;
  }
  return false;
}

bool BatchState::retime(std::int64_t most) {
  bool gain = old_without_place_ > 0;
  for (Touched& it : touched_) {
    it.next = it.first;
    retime(it, false);
    gain = gain || may_gain(it);
  }
  if (!gain && cost_ - old_cost_ > most) return false;
  for (Touched& it : touched_) retime(it, true);
  return true;
}

}  // namespace dampward::solver::detail
