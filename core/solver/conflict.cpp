#include "core/solver/conflict.h"

#include <algorithm>
#include <numeric>

#include "core/solver/detail/kernel.h"
#include "core/solver/temporal.h"

namespace dampward::solver {
namespace {

using detail::Kernel;

// Members count arcs first, then resources.
class Shrinking {
 public:
  Shrinking(const Problem& problem, std::int64_t work, std::int64_t work_of_each,
            const std::function<bool()>& keep_going)
      : problem_(problem),
        members_(problem.arcs.size() + problem.capacities.size()),
        work_left_(work),
        work_of_each_(work_of_each),
        keep_going_(keep_going) {
    std::iota(members_.begin(), members_.end(), 0);
  }

  Conflict shrink() {
    std::size_t group = std::max<std::size_t>(members_.size() / 2, 1);
    while (!pass(group) || group > 1) group = std::max<std::size_t>(group / 2, 1);
    Conflict conflict;
    const int arcs = static_cast<int>(problem_.arcs.size());
    for (const int member : members_) {
      if (member < arcs)
        conflict.arcs.push_back(member);
      else
        conflict.resources.push_back(member - arcs);
    }
    conflict.minimal = !unsure_;
    return conflict;
  }

 private:
  // Tries to drop each group in turn. True: none could be dropped.
  bool pass(std::size_t group) {
    bool kept_all = true;
    unsure_ = false;
    for (std::size_t from = 0; from < members_.size();) {
      std::vector<int> rest = members_;
      const auto begin = rest.begin() + static_cast<std::ptrdiff_t>(from);
      rest.erase(begin, begin + static_cast<std::ptrdiff_t>(std::min(group, rest.size() - from)));
      const Kernel::Verdict verdict = judge(rest);
      if (verdict == Kernel::Verdict::none) {
        members_ = std::move(rest);
        kept_all = false;
      } else {
        unsure_ = unsure_ || verdict == Kernel::Verdict::stopped;
        from += group;
      }
    }
    return kept_all || unsure_;
  }

  Kernel::Verdict judge(const std::vector<int>& members) {
    if (work_left_ <= 0 || !keep_going_()) return Kernel::Verdict::stopped;
    Problem part;
    part.capacities = problem_.capacities;
    const int arcs = static_cast<int>(problem_.arcs.size());
    std::vector<char> limited(problem_.capacities.size(), 0);
    for (const int member : members) {
      if (member < arcs)
        part.arcs.push_back(problem_.arcs[member]);
      else
        limited[member - arcs] = 1;
    }
    part.operations = problem_.operations;
    for (Operation& op : part.operations)
      std::erase_if(op.demands, [&](const Demand& demand) { return !limited[demand.resource]; });
    const EarliestStarts earliest = earliest_starts(part);
    work_left_ -= part.size();
    if (!earliest.cycle.empty()) return Kernel::Verdict::none;
    Kernel kernel(part, detail::widest_windows(part, earliest.starts));
    kernel.settle_orders(part, detail::BlockDistances(part, earliest.starts, detail::widest_blocks(part)));
    kernel.ask(&keep_going_);
    const Kernel::Verdict verdict = kernel.search(std::min(work_left_, work_of_each_));
    work_left_ -= kernel.work();
    return verdict;
  }

  const Problem& problem_;
  std::vector<int> members_;
  std::int64_t work_left_, work_of_each_;
  const std::function<bool()>& keep_going_;
  bool unsure_ = false;
};

}  // namespace

Conflict least_conflict(const Problem& problem, std::int64_t work, std::int64_t work_of_each,
                        const std::function<bool()>& keep_going) {
  // A ring of arcs is minimal as it is: without one of them it is a path.
  const EarliestStarts earliest = earliest_starts(problem);
  if (!earliest.cycle.empty()) return {earliest.cycle, {}, true};
  return Shrinking(problem, work, work_of_each, keep_going).shrink();
}

}  // namespace dampward::solver
