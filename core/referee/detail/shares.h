#pragma once

#include <string_view>
#include <utility>
#include <vector>

#include "core/referee/detail/spans.h"

// Who takes how much of something, and when. What is fixed may be in the way of others, never of itself.

namespace dampward::referee {

struct Share {
  Span when;
  std::int64_t amount = 1;
  bool fixed = false;
  std::string_view who;
};

// Two that hold at once what only one may hold; at least one of them is not fixed. Each share is named with one other at most.
struct Clash {
  std::string_view first, second;
  Span when;
};
std::vector<Clash> clashes(std::vector<Share> shares);

// A stretch in which more is taken than there is, something not fixed among it.
struct Excess {
  Span when;                          // from its first minute to where it ends
  std::int64_t taken = 0, there = 0;  // in its first minute
  std::vector<std::string_view> who;  // in its first minute
};
// `steps` in order of time; before the first there is nothing.
std::vector<Excess> excesses(const std::vector<Share>& shares, const std::vector<Step>& steps);

}  // namespace dampward::referee
