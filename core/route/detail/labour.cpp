#include "core/route/detail/labour.h"

#include "core/base/format.h"

namespace dampward::route::detail {
namespace {

using equipment::Operation;

// For a set of middling size; estimates all, in the spirit of the shipped archetypes' figures.
Range<Duration> guess(const equipment::Kind& kind, Operation operation) {
  switch (operation) {
    case Operation::test:
      return minutes(10, 20, 40);
    case Operation::strip:
      return minutes(10, 20, 40);
    case Operation::clean:
      return minutes(10, 20, 60);
    case Operation::mask:
      return kind.masking.value.high > Duration{} ? kind.masking.value : minutes(8, 20, 60);
    case Operation::load:
      return minutes(2, 4, 8);
    case Operation::unload:
      return minutes(1.5, 3, 6);
    case Operation::coat:
      return minutes(5, 9, 18);
    case Operation::unmask:
      return times(1.0 / 3, labour_of(kind, Operation::mask).hands_on);
    case Operation::touch_up:
      return minutes(3, 6, 15);
    case Operation::mark:
      return minutes(2, 4, 8);
    case Operation::reassemble:
      return times(1.3, labour_of(kind, Operation::strip).hands_on);
    case Operation::retest:
      return times(1.3, labour_of(kind, Operation::test).hands_on);
  }
  return {};
}

}  // namespace

equipment::Labour labour_of(const equipment::Kind& kind, Operation operation) {
  const auto given = kind.labour.find(operation);
  if (given != kind.labour.end()) return given->second;
  return {guess(kind, operation), 1, Mark::estimate, "a stopwatch on three units"};
}

Range<Duration> minutes(double low, double typical, double high) {
  return {low * minute, typical * minute, high * minute};
}

Range<Duration> plus(const Range<Duration>& a, const Range<Duration>& b) {
  return {a.low + b.low, a.typical + b.typical, a.high + b.high};
}

Range<Duration> times(double factor, const Range<Duration>& a) {
  return {factor * a.low, factor * a.typical, factor * a.high};
}

std::string words(const Range<Duration>& time) {
  if (time.exact()) return format("{} min", fixed(time.typical.in(minute), 0));
  return format("{} min ({} to {})", fixed(time.typical.in(minute), 0), fixed(time.low.in(minute), 0),
                fixed(time.high.in(minute), 0));
}

}  // namespace dampward::route::detail
