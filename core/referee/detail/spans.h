#pragma once

#include <optional>
#include <vector>

#include "core/referee/problem.h"

namespace dampward::referee {

inline bool empty(Span span) {
  return span.from >= span.to;
}
// The minutes in both; empty where there are none.
Span common(Span a, Span b);
inline bool overlap(Span a, Span b) {
  return !empty(common(a, b));
}

// The same minutes, in order and apart.
std::vector<Span> merged(std::vector<Span> spans);
// The minutes of `span` that are not in `part`.
std::vector<Span> without(Span span, const std::optional<Span>& part);
// The minutes in both lists. Both are in order and apart.
std::vector<Span> common(const std::vector<Span>& a, const std::vector<Span>& b);
// The minutes of `span` that lie in the list, counted. The list is in order and apart.
Minute minutes_within(Span span, const std::vector<Span>& list);
// The first minute of `span` that is not in the list; none: it is covered. The list is in order and apart.
std::optional<Minute> first_uncovered(Span span, const std::vector<Span>& list);
// The first minute of `span` that is in the list. The list is in order and apart.
std::optional<Minute> first_covered(Span span, const std::vector<Span>& list);

}  // namespace dampward::referee
