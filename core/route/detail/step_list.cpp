#include "core/route/detail/step_list.h"

#include <utility>

namespace dampward::route::detail {

Step& StepList::put(Step step) {
  const std::string from = follows_.empty() ? (steps_.empty() ? "" : last()) : std::exchange(follows_, "");
  if (!from.empty()) {
    last_order_ = gaps_.size();
    gap(GapKind::order, from, step.id, Duration{}, std::nullopt, "");
  }
  steps_.push_back(std::move(step));
  return steps_.back();
}

Step& StepList::add(StepCode code, std::string title, std::string reason, std::string skill,
                    std::string hazard_step, const equipment::Labour& labour, int turn) {
  Step step;
  step.id = step_id(version_, code, turn);
  step.code = code;
  step.turn = turn;
  step.title = std::move(title);
  step.reason = std::move(reason);
  step.station_skill = skill;
  step.skill = std::move(skill);
  step.minutes = labour.hands_on;
  step.people = labour.people;
  step.hazard_step = std::move(hazard_step);
  step.mark = labour.mark;
  step.settle = labour.settle;
  return put(std::move(step));
}

Step& StepList::wait(StepCode code, std::string title, std::string reason, std::string hazard_step,
                     Range<Duration> time, Attendance attendance, int turn) {
  Step step;
  step.id = step_id(version_, code, turn);
  step.code = code;
  step.turn = turn;
  step.title = std::move(title);
  step.reason = std::move(reason);
  step.skill = attendance == Attendance::watched ? "oven" : "";
  step.minutes = time;
  step.people = attendance == Attendance::watched ? 1 : 0;
  step.attendance = attendance;
  step.hazard_step = std::move(hazard_step);
  return put(std::move(step));
}

void StepList::gap(GapKind kind, const std::string& from, const std::string& to, Duration shortest,
                   std::optional<Duration> longest, std::string reason, bool to_end) {
  gaps_.push_back({kind, from, to, shortest, longest, to_end, std::move(reason)});
}

}  // namespace dampward::route::detail
