#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/equipment/kind.h"
#include "core/route/step.h"

namespace dampward::route::detail {

// Steps in their order, with the gaps between them, under one route version.
class StepList {
 public:
  explicit StepList(int version) : version_(version) {}

  // Adds a step that follows the last one added; `labour` gives minutes, people and how they are known.
  Step& add(StepCode code, std::string title, std::string reason, std::string skill, std::string hazard_step,
            const equipment::Labour& labour, int turn = 0);
  // A step nobody's hands are needed for.
  Step& wait(StepCode code, std::string title, std::string reason, std::string hazard_step,
             Range<Duration> time, Attendance attendance, int turn = 0);
  // The last step has no place of its own.
  void in_no_place() { steps_.back().station_skill.clear(); }
  // The next step follows this one instead of the last.
  void continue_from(std::string id) { follows_ = std::move(id); }

  void gap(GapKind kind, const std::string& from, const std::string& to, Duration shortest,
           std::optional<Duration> longest, std::string reason, bool to_end = false);
  // How the last order gap is told: another kind, or a longest time.
  StepGap& last_order() { return gaps_[last_order_]; }

  const std::string& last() const { return steps_.back().id; }
  std::vector<Step> take_steps() { return std::move(steps_); }
  std::vector<StepGap> take_gaps() { return std::move(gaps_); }

 private:
  Step& put(Step step);

  int version_;
  std::vector<Step> steps_;
  std::vector<StepGap> gaps_;
  std::string follows_;
  std::size_t last_order_ = 0;
};

}  // namespace dampward::route::detail
