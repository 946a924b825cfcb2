#include "core/papers/detail/time_axis.h"

#include <algorithm>

namespace dampward::papers {
namespace {

double seconds(Instant from, Instant to) {
  return std::chrono::duration<double>(to - from).count();
}

}  // namespace

TimeAxis::TimeAxis(std::vector<Day> days, double left, double right) : days_(std::move(days)), left_(left) {
  double work = 0;
  for (const Day& day : days_) work += seconds(day.from, day.to);
  const double nights = night * static_cast<double>(days_.size() - 1);
  per_second_ = (right - left - nights) / std::max(1.0, work);
}

double TimeAxis::at(Instant time) const {
  double x = left_;
  for (std::size_t i = 0; i < days_.size(); ++i) {
    const Day& day = days_[i];
    if (time <= day.from) return x;
    if (time <= day.to) return x + seconds(day.from, time) * per_second_;
    x += seconds(day.from, day.to) * per_second_;
    if (i + 1 == days_.size()) return x;
    const Instant next = days_[i + 1].from;
    if (time < next) return x + night * seconds(day.to, time) / seconds(day.to, next);
    x += night;
  }
  return x;
}

}  // namespace dampward::papers
