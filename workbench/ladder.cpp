#include "workbench/ladder.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/base/format.h"
#include "workbench/detail/ladder_candidates.h"

namespace dampward::workbench {
namespace {

// The records with one unit in the queue.
class OneUnit final : public records::RecordStore {
 public:
  OneUnit(const records::RecordStore& all, UnitId unit) : all_(all), unit_(std::move(unit)) {}
  Result<records::Queue> queue() const override {
    auto queue = all_.queue();
    if (!queue) return queue.problems();
    records::Queue one = *queue;
    std::erase_if(one.units, [&](const records::QueuedUnit& queued) { return queued.serial != unit_; });
    return one;
  }
  Result<std::vector<records::StockLot>> stock() const override { return all_.stock(); }
  Result<std::vector<records::AirReading>> air() const override { return all_.air(); }

 private:
  const records::RecordStore& all_;
  UnitId unit_;
};

template <class Rows>
auto row_of(const Rows& rows, const UnitId& unit) -> decltype(&rows.front()) {
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.unit == unit; });
  return found == rows.end() ? nullptr : &*found;
}

// A shop as changed, and the plan of it.
struct Tried {
  Workshop workshop;
  Plan plan;
};

// Plans changed shops, each once.
class Trial {
 public:
  Trial(const records::RecordStore& records, const PlanOptions& options, const WorkshopWith& with,
        const LadderLimits& limits, bool short_queue)
      : records_(records),
        options_(options),
        with_(with),
        alone_left_(limits.alone),
        whole_left_(short_queue ? limits.whole : 0) {
    options_.progress = [](const std::string&) {};
  }

  bool goes_on() const { return alone_left_ > 0 && options_.keep_going(); }

  // With one unit alone. Null where the files cannot hold the change.
  const Tried* alone(const std::string& change, const UnitId& unit) {
    return tried(alone_[unit.text + ": " + change], change, OneUnit(records_, unit), alone_left_);
  }
  // With the whole queue. Null too where no more such plans are to be made.
  const Tried* whole(const std::string& change) {
    return tried(whole_[change], change, records_, whole_left_);
  }

 private:
  // A trial that was made; nothing in it where the files cannot hold the change.
  using Kept = std::optional<std::optional<Tried>>;

  const Tried* tried(Kept& kept, const std::string& change, const records::RecordStore& records,
                     std::size_t& left) {
    if (!kept) {
      if (left == 0) return nullptr;
      --left;
      kept.emplace();
      auto workshop = with_(change);
      if (!workshop) return nullptr;
      auto plan = make_plan(*workshop, records, options_);
      if (plan) *kept = Tried{std::move(workshop).value(), std::move(plan).value()};
    }
    return *kept ? &**kept : nullptr;
  }

  const records::RecordStore& records_;
  PlanOptions options_;
  const WorkshopWith& with_;
  std::size_t alone_left_, whole_left_;
  std::map<std::string, Kept> alone_, whole_;
};

// Changes on top of one another, and what they cost together.
struct Step {
  double cost = 0;
  bool estimated = false;
  std::vector<Piece> pieces;
  std::string words;
  std::set<std::string> families;
};

std::string change_of(const Step& step) {
  std::string all;
  for (const Piece& piece : step.pieces) all += (all.empty() ? "" : "; ") + piece.path + "=" + piece.value;
  return all;
}

// A later value for the same path takes the place of the earlier one, which it was made from.
Step on_top(const Step& below, const Candidate& candidate, const shop::Costs& costs) {
  Step step = below;
  step.cost += costs.of(candidate.cost) * candidate.amount;
  step.estimated = step.estimated || costs.is_estimate(candidate.cost);
  for (const Piece& piece : candidate.pieces) {
    std::erase_if(step.pieces, [&](const Piece& old) { return old.path == piece.path; });
    step.pieces.push_back(piece);
  }
  step.words += (step.words.empty() ? "" : "; then ") + candidate.words;
  step.families.insert(candidate.family);
  return step;
}

std::vector<UnitId> lost(const Plan& before, const Plan& after) {
  std::vector<UnitId> units;
  for (const UnitPlan& unit : before.units) {
    if (row_of(after.units, unit.unit) == nullptr) units.push_back(unit.unit);
  }
  return units;
}

// The cheapest combination of changes first. One that leads to a barrier not met on the way there is built upon.
class Climb {
 public:
  Climb(const Plan& as_is, const shop::Costs& costs, const LadderLimits& limits, Trial& trial)
      : as_is_(as_is), costs_(costs), limits_(limits), trial_(trial) {}

  void operator()(Refusal& refusal, const Workshop& workshop) {
    open_.clear();
    expand({}, refusal, workshop);
    const bool nothing_to_try = open_.empty();
    std::set<std::set<std::string>> found;
    std::set<std::string> met = {barrier(refusal)};
    std::string next;  // what stands behind the first barrier
    std::size_t tries = 0;
    while (!open_.empty() && trial_.goes_on() && tries < limits_.tries &&
           refusal.ladder.size() < limits_.rungs) {
      const Step step = open_.begin()->second;
      open_.erase(open_.begin());
      if (std::any_of(found.begin(), found.end(), [&](const auto& families) {
            return std::includes(step.families.begin(), step.families.end(), families.begin(),
                                 families.end());
          }))
        continue;
      ++tries;
      const std::string change = change_of(step);
      const Tried* tried = trial_.alone(change, refusal.unit);
      if (tried == nullptr) continue;
      const Tried* whole =
          row_of(tried->plan.units, refusal.unit) == nullptr ? nullptr : trial_.whole(change);
      if (whole != nullptr) tried = whole;
      if (const UnitPlan* unit = row_of(tried->plan.units, refusal.unit)) {
        found.insert(step.families);
        refusal.ladder.push_back({change, step.words, step.cost, step.estimated, whole != nullptr, unit->done,
                                  whole != nullptr ? lost(as_is_, whole->plan) : std::vector<UnitId>{}});
      } else if (const Refusal* again = row_of(tried->plan.refused, refusal.unit)) {
        if (!met.insert(barrier(*again)).second) continue;
        if (next.empty()) next = again->reason;
        expand(step, *again, tried->workshop);
      }
    }
    if (!refusal.ladder.empty()) return;
    refusal.ladder_reason = nothing_to_try ? "no change of the shop's files is known that would open this"
                            : tries == 0   ? "not tried: other units came first"
                                           : format("none of the {} changes tried opens it", tries) +
                                               (next.empty() ? "" : "; behind this stands: " + next);
  }

 private:
  static std::string barrier(const Refusal& refusal) {
    return std::string(word(refusal.rule)) + " " + refusal.what;
  }

  void expand(const Step& below, const Refusal& refusal, const Workshop& workshop) {
    for (const Candidate& candidate : ladder_candidates(refusal, workshop)) {
      Step step = on_top(below, candidate, costs_);
      open_.emplace(step.cost, std::move(step));
    }
  }

  const Plan& as_is_;
  const shop::Costs& costs_;
  const LadderLimits& limits_;
  Trial& trial_;
  std::multimap<double, Step> open_;
};

}  // namespace

void add_ladders(Plan& plan, const Workshop& workshop, const records::RecordStore& records,
                 const PlanOptions& options, const WorkshopWith& with, const LadderLimits& limits) {
  if (plan.refused.empty()) return;
  const Plan as_is = plan;
  const bool short_queue = plan.queued <= limits.whole_queue;
  PlanOptions trials = options;
  trials.effort = 0;  // asked is only who gets in
  Trial trial(records, trials, with, limits, short_queue);
  Climb climb(as_is, workshop.shop.costs, limits, trial);
  std::vector<const Refusal*> climbed;
  for (Refusal& refusal : plan.refused) {
    // Of a long queue the units of one kind share what was found for the first of them.
    const auto same = std::find_if(climbed.begin(), climbed.end(), [&](const Refusal* other) {
      return !short_queue && other->kind == refusal.kind && other->rule == refusal.rule &&
             other->what == refusal.what;
    });
    if (same != climbed.end()) {
      refusal.ladder = (*same)->ladder;
      refusal.ladder_reason = (*same)->ladder_reason;
      continue;
    }
    options.progress("looking for what would let " + refusal.unit.text + " in");
    climb(refusal, workshop);
    climbed.push_back(&refusal);
  }
}

}  // namespace dampward::workbench
