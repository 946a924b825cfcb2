#include "core/solver/search.h"

#include <algorithm>
#include <array>

#include "core/solver/bounds.h"
#include "core/solver/detail/improver.h"
#include "core/solver/detail/prover.h"
#include "core/solver/temporal.h"

namespace dampward::solver {
namespace {

constexpr std::int64_t first_turn = 200'000, longest_turn = 8'000'000;
constexpr std::int64_t conflict_work = 400'000'000, conflict_work_of_each = 4'000'000;

void in_turn(std::span<const std::function<void()>> tasks) {
  for (const auto& task : tasks) task();
}

class Search {
 public:
  Search(const Problem& problem, const SearchOptions& options, const Starts& earliest)
      : options_(options),
        keep_going_(options.keep_going ? options.keep_going : [] { return true; }),
        improver_(problem, earliest, options.seed),
        prover_(problem, earliest) {
    outcome_.lower_bound = quick_lower_bound(problem, earliest);
  }

  Outcome run() {
    std::int64_t turn = first_turn;
    while (!closed() && !refuted_) {
      const std::int64_t left = options_.work - improver_.work() - prover_.work();
      if (left <= 0 || !keep_going_()) break;
      take_turns(std::max<std::int64_t>(1, std::min(turn, left / 2)));
      turn = std::min(longest_turn, turn + turn / 4);
    }
    outcome_.work = improver_.work() + prover_.work();
    outcome_.status = refuted_                  ? Status::infeasible
                      : outcome_.starts.empty() ? Status::unknown
                      : closed()                ? Status::optimal
                                                : Status::feasible;
    return outcome_;
  }

 private:
  bool closed() const { return !outcome_.starts.empty() && outcome_.starts.back() <= outcome_.lower_bound; }

  // Both search on by themselves; what they found is traded afterwards, whoever was done first.
  void take_turns(std::int64_t work) {
    const std::array<std::function<void()>, 2> tasks{
        [&] { improver_.run(work, keep_going_, outcome_.lower_bound); },
        [&] { prover_.run(work, keep_going_, outcome_.lower_bound); }};
    (options_.executor ? options_.executor : in_turn)(tasks);
    bool news = false;
    for (const Starts* found : {&improver_.best(), &prover_.best()}) {
      if (found->empty() || (!outcome_.starts.empty() && found->back() >= outcome_.starts.back())) continue;
      outcome_.starts = *found;
      news = true;
    }
    if (prover_.exhausted() && outcome_.starts.empty()) refuted_ = true;
    int bound = prover_.least_last();
    if (prover_.exhausted() && !outcome_.starts.empty()) bound = outcome_.starts.back();
    if (bound > outcome_.lower_bound) {
      outcome_.lower_bound = bound;
      news = true;
    }
    if (outcome_.starts.empty()) return;
    improver_.join(outcome_.starts);
    prover_.join(outcome_.starts);
    if (news && options_.on_progress) options_.on_progress(outcome_.starts, outcome_.lower_bound);
  }

  const SearchOptions& options_;
  const std::function<bool()> keep_going_;
  detail::Improver improver_;
  detail::Prover prover_;
  Outcome outcome_;
  bool refuted_ = false;
};

}  // namespace

Result<Outcome> solve(const Problem& problem, const SearchOptions& options) {
  Problems wrong = faults(problem);
  if (!wrong.empty()) return wrong;
  const EarliestStarts earliest = earliest_starts(problem);
  Outcome outcome;
  if (earliest.cycle.empty())
    outcome = Search(problem, options, earliest.starts).run();
  else
    outcome.status = Status::infeasible;
  if (outcome.status != Status::infeasible) return outcome;
  const auto keep_going = options.keep_going ? options.keep_going : [] { return true; };
  const std::int64_t left = std::min(conflict_work, options.work - outcome.work);
  outcome.conflict = least_conflict(problem, left, conflict_work_of_each, keep_going);
  return outcome;
}

}  // namespace dampward::solver
