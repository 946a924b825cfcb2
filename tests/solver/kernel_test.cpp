#include <doctest/doctest.h>

#include "adapters/files/project_judged.h"
#include "core/solver/detail/kernel.h"
#include "core/solver/temporal.h"
#include "tests/solver/tiny.h"

using namespace dampward::solver;
using namespace dampward::solver::detail;
using namespace dampward::solver::test;
using dampward::files::judged;

namespace {

Windows all_windows(const Problem& problem) {
  Windows windows(problem.operations.size(), {0, horizon(problem)});
  windows.front() = {0, 0};
  return windows;
}

// The least last start by branch and bound, each plan on the way judged; none: proved that there is none.
std::optional<int> best_last(const Problem& problem) {
  if (!earliest_starts(problem).cycle.empty()) return std::nullopt;
  Kernel kernel(problem, all_windows(problem));
  std::optional<int> best;
  while (kernel.search(1'000'000'000) == Kernel::Verdict::plan) {
    CHECK(judged(problem, kernel.starts()).empty());
    best = kernel.starts().back();
    kernel.require_last_by(*best - 1);
  }
  return best;
}

// The same from below: one time after another is refuted.
std::optional<int> best_from_below(const Problem& problem) {
  if (!earliest_starts(problem).cycle.empty()) return std::nullopt;
  Kernel kernel(problem, all_windows(problem));
  for (int last = earliest_starts(problem).starts.back();; ++last) {
    const auto verdict = kernel.search(1'000'000'000, last);
    if (verdict == Kernel::Verdict::none) return std::nullopt;
    if (verdict == Kernel::Verdict::plan) {
      CHECK(judged(problem, kernel.starts()).empty());
      CHECK(kernel.starts().back() == last);
      return last;
    }
    CHECK(verdict == Kernel::Verdict::refuted);
    CHECK(kernel.least_last() > last);
    last = kernel.least_last() - 1;
  }
}

}  // namespace

TEST_CASE("tiny problems: the kernel's best is that of trying every start, from above and from below") {
  int none = 0;
  for (std::uint32_t seed = 0; seed < 1500; ++seed) {
    INFO("seed ", seed);
    const Problem problem = tiny(seed);
    const std::optional<int> right = TimeStepModel(problem).best();
    CHECK(best_last(problem) == right);
    CHECK(best_from_below(problem) == right);
    none += !right;
  }
  CHECK(none > 50);
}
