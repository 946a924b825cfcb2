#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/line/problem.h"

namespace dampward::line::detail {

// A whole number over time, constant between its steps: free places of a station, what is left of a capacity, whether a
// person is free. It holds its first value before minute 0 and its last for ever.
class Level {
 public:
  explicit Level(std::int64_t value);
  // One inside the spans, nought outside.
  explicit Level(const Calendar& spans);
  explicit Level(const Capacity& capacity);

  void add(Span span, std::int64_t amount);
  // The earliest minute at or after `from` from which the level is at least `need` for `length` minutes.
  std::optional<Minute> fit(Minute from, Minute length, std::int64_t need) const;
  // The first minute of the span at which the level is below `need`.
  std::optional<Minute> first_below(Span span, std::int64_t need) const;
  // The longest run of minutes with at least `need`, up to `horizon`.
  Minute longest_run(std::int64_t need, Minute horizon) const;

 private:
  struct Step {
    Minute from;
    std::int64_t value;
  };
  std::size_t step_at(Minute minute) const;
  std::size_t cut(Minute minute);

  std::vector<Step> steps_;
};

}  // namespace dampward::line::detail
