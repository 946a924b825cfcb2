#include <doctest/doctest.h>

#include <algorithm>
#include <optional>
#include <random>

#include "checker.h"
#include "core/line/objective.h"
#include "core/line/planner.h"

// Every start and every choice of people on tiny shops, against the planner.
namespace dampward::line::test {
namespace {

struct Tiny {
  Problem problem;
  std::vector<std::vector<std::vector<std::string>>> crews;  // by operation
};

Tiny tiny(std::uint32_t seed) {
  std::mt19937 random(seed);
  const auto between = [&](int low, int high) {
    return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
  };
  Tiny tiny;
  Problem& p = tiny.problem;
  p.horizon = 14;
  p.units.push_back({"u", std::nullopt, 0, 1, {}});
  const int people = between(1, 2);
  for (int i = 0; i < people; ++i) {
    const Minute pause = between(3, 9);
    p.people.push_back({"p" + std::to_string(i), {"a"}, {{0, between(10, 14)}}, {{pause, pause + 1}}});
    if (i == 0 || between(0, 1)) p.people.back().skills.push_back("b");
  }
  p.capacities = {{"room", {{0, 2}, {7, between(1, 2)}}}};
  const int count = between(2, 4);
  for (int i = 0; i < count; ++i) {
    Operation op;
    op.id = "o" + std::to_string(i);
    op.unit = "u";
    op.length = between(1, 3);
    op.attendance = between(0, 3) == 0 ? Attendance::unattended : Attendance::attended;
    op.skill = op.attendance == Attendance::unattended ? "" : between(0, 1) ? "a" : "b";
    if (between(0, 1)) op.demands = {{"room", between(1, 2), between(0, 1)}};
    p.operations.push_back(op);
    std::vector<std::vector<std::string>> crews;
    if (op.skill.empty()) crews.push_back({});
    for (const Person& person : p.people) {
      const auto& skills = person.skills;
      if (!op.skill.empty() && std::find(skills.begin(), skills.end(), op.skill) != skills.end())
        crews.push_back({person.id});
    }
    tiny.crews.push_back(crews);
    if (i > 0 && between(0, 3) > 0) {
      Gap gap{"g" + std::to_string(i), "o" + std::to_string(between(0, i - 1)), op.id, between(0, 2),
              std::nullopt};
      if (between(0, 1)) gap.longest = gap.shortest + between(0, 2);
      p.gaps.push_back(gap);
    }
  }
  return tiny;
}

// The earliest possible finish of the whole unit, trying everything.
class BruteForce {
 public:
  explicit BruteForce(const Tiny& tiny) : tiny_(tiny) { extend(0); }
  std::optional<Minute> best() const { return best_; }

 private:
  void extend(std::size_t i) {
    const Problem& p = tiny_.problem;
    if (i == p.operations.size()) {
      if (violations(p, answer_).empty()) best_ = std::min(best_.value_or(p.horizon), finish());
      return;
    }
    for (Minute start = 0; start + p.operations[i].length <= p.horizon; ++start) {
      if (best_ && start + p.operations[i].length >= *best_) break;
      if (!gaps_hold(i, start)) continue;
      for (const auto& crew : tiny_.crews[i]) {
        answer_.placements.push_back({p.operations[i].id, start, start + p.operations[i].length, crew, ""});
        extend(i + 1);
        answer_.placements.pop_back();
      }
    }
  }

  bool gaps_hold(std::size_t i, Minute start) const {
    for (const Gap& gap : tiny_.problem.gaps) {
      if (gap.to != tiny_.problem.operations[i].id) continue;
      const auto from = std::find_if(answer_.placements.begin(), answer_.placements.end(),
                                     [&](const Placement& p) { return p.operation == gap.from; });
      const Minute wait = start - from->end;
      if (wait < gap.shortest || (gap.longest && wait > *gap.longest)) return false;
    }
    return true;
  }

  Minute finish() const {
    Minute end = 0;
    for (const Placement& p : answer_.placements) end = std::max(end, p.end);
    return end;
  }

  const Tiny& tiny_;
  Answer answer_;
  std::optional<Minute> best_;
};

}  // namespace

TEST_CASE(
    "tiny shops: all that can be planned is planned, never sooner than the best of all plans and seldom "
    "later") {
  int feasible = 0, best = 0;
  for (std::uint32_t seed = 1; seed <= 400; ++seed) {
    const Tiny it = tiny(seed);
    const auto optimum = BruteForce(it).best();
    const auto answer = plan(it.problem);
    REQUIRE(answer.ok());
    const auto broken = violations(it.problem, *answer);
    CHECK_MESSAGE(broken.empty(), "seed ", seed, ": ", broken.empty() ? "" : broken.front());
    if (!optimum) {
      CHECK_MESSAGE(!answer->unplaced.empty(), "seed ", seed, " has a plan nobody should find");
      continue;
    }
    ++feasible;
    CHECK(at_best(it.problem).finish <= *optimum);

    CHECK_MESSAGE(answer->unplaced.empty(), "seed ", seed, " has a plan and none was found");
    if (!answer->unplaced.empty()) continue;
    CHECK(answer->finish >= *optimum);
    best += answer->finish == *optimum;
  }
  MESSAGE(feasible, " feasible, ", best, " at the best finish");
  CHECK(feasible > 250);
  // Regression value: a list scheduler looks no further than the next spot, and these shops last 14 minutes.
  CHECK(best * 100 >= feasible * 85);
}

}  // namespace dampward::line::test
