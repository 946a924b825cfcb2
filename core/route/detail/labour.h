#pragma once

#include <string>

#include "core/equipment/kind.h"
#include "core/quantity/figure.h"
#include "core/quantity/range.h"

namespace dampward::route::detail {

// The kind's own figure for an operation, or an estimate that says so.
equipment::Labour labour_of(const equipment::Kind& kind, equipment::Operation operation);

Range<Duration> minutes(double low, double typical, double high);
Range<Duration> plus(const Range<Duration>& a, const Range<Duration>& b);
Range<Duration> times(double factor, const Range<Duration>& a);
// "23 min (12 to 45)"
std::string words(const Range<Duration>& time);

}  // namespace dampward::route::detail
