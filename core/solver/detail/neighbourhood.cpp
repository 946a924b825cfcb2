#include "core/solver/detail/neighbourhood.h"

#include <algorithm>
#include <numeric>

namespace dampward::solver::detail {
namespace {

std::int64_t work_of_a_piece(int operations) {
  return 200'000 + std::int64_t{2'000} * operations;
}

}  // namespace

Neighbourhood::Neighbourhood(const Problem& problem, const Starts& earliest, std::uint64_t seed)
    : problem_(problem),
      earliest_(earliest),
      distances_(problem, earliest, widest_blocks(problem)),
      blocks_(blocks_of(problem)),
      random_(seed),
      free_(problem.operations.size()) {}

bool Neighbourhood::run(Starts& starts, std::int64_t work, const std::function<bool()>& keep_going,
                        int good_enough) {
  const std::int64_t end = work_ + work;
  bool better = false;
  while (work_ < end && keep_going() && starts.back() > good_enough) better |= try_piece(starts, keep_going);
  return better;
}

// Frees what runs nearest to a random moment.
void Neighbourhood::free_stretch(const Starts& starts) {
  const int n = problem_.size();
  const int moment = random_.between(0, starts.back());
  std::vector<int> order(n);
  std::iota(order.begin(), order.end(), 0);
  const auto away = [&](int i) {
    return std::max({0, starts[i] - moment, moment - starts[i] - problem_.operations[i].duration});
  };
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return away(a) < away(b); });
  std::fill(free_.begin(), free_.end(), 0);
  const int count = std::clamp(static_cast<int>(share_ * n), 2, n);
  for (int k = 0; k < count; ++k) free_[order[k]] = 1;
}

// Frees random blocks of two operations or more.
void Neighbourhood::free_blocks() {
  const int n = problem_.size();
  std::fill(free_.begin(), free_.end(), 0);
  int left = std::clamp(static_cast<int>(share_ * n), 2, n);
  for (int tries = 0; tries < 50 && left > 0; ++tries) {
    const int chosen = random_.below(n);
    const auto& members = blocks_.members[blocks_.of[chosen]];
    if (members.size() < 2 || free_[chosen]) continue;
    for (const int i : members) free_[i] = 1;
    left -= static_cast<int>(members.size());
  }
}

// Each unit of a resource goes from one kept operation to the next: an arc between them.
void Neighbourhood::keep_order(const Starts& starts, Problem& piece) const {
  std::vector<int> order;
  for (int i = 0; i < problem_.size(); ++i) {
    if (!free_[i] && problem_.operations[i].duration > 0) order.push_back(i);
  }
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return starts[a] < starts[b]; });
  struct Holder {
    int operation, end, amount;
  };
  for (int r = 0; r < static_cast<int>(problem_.capacities.size()); ++r) {
    std::vector<Holder> holders{{-1, 0, problem_.capacities[r]}};
    for (const int i : order) {
      const Operation& op = problem_.operations[i];
      const auto demand = std::find_if(op.demands.begin(), op.demands.end(),
                                       [&](const Demand& d) { return d.resource == r && d.amount > 0; });
      if (demand == op.demands.end()) continue;
      int wanted = demand->amount;
      // From whoever ended last: few arcs, each of little slack.
      for (std::size_t k = holders.size(); k-- > 0 && wanted > 0;) {
        Holder& holder = holders[k];
        if (holder.end > starts[i]) continue;
        const int given = std::min(wanted, holder.amount);
        wanted -= given;
        holder.amount -= given;
        if (holder.operation >= 0)
          piece.arcs.push_back({holder.operation, i, problem_.operations[holder.operation].duration});
      }
      std::erase_if(holders, [](const Holder& h) { return h.amount == 0; });
      const Holder fresh{i, starts[i] + op.duration, demand->amount};
      const auto place = std::upper_bound(holders.begin(), holders.end(), fresh.end,
                                          [](int end, const Holder& h) { return end < h.end; });
      holders.insert(place, fresh);
    }
  }
}

bool Neighbourhood::try_piece(Starts& starts, const std::function<bool()>& keep_going) {
  const bool has_blocks = blocks_.members.size() < problem_.operations.size();
  if (has_blocks && random_.below(3) == 0)
    free_blocks();
  else
    free_stretch(starts);
  Problem piece = problem_;
  keep_order(starts, piece);
  // Kept operations only ever move earlier, or as much later as the arcs allow.
  Windows windows(problem_.operations.size());
  const int last = starts.back();
  for (std::size_t i = 0; i < windows.size(); ++i) windows[i] = {earliest_[i], std::max(starts[i], last)};
  windows.front() = {0, 0};
  Kernel kernel(piece, windows, &free_);
  kernel.settle_orders(problem_, distances_);
  kernel.ask(&keep_going);
  kernel.lean_to(starts);
  kernel.require_last_by(last - 1);
  auto verdict = kernel.search(work_of_a_piece(problem_.size()));
  const bool better = verdict == Kernel::Verdict::plan;
  // A piece that gives way is pressed on.
  while (verdict == Kernel::Verdict::plan) {
    starts = kernel.starts();
    kernel.require_last_by(starts.back() - 1);
    verdict = kernel.search(work_of_a_piece(problem_.size()) / 4);
  }
  work_ += kernel.work() + 20 * problem_.size();
  if (better) return true;
  share_ = verdict == Kernel::Verdict::stopped ? std::max(share_ * 0.97, 2.0 / problem_.size())
                                               : std::min(share_ * 1.02, 1.0);
  return false;
}

}  // namespace dampward::solver::detail
