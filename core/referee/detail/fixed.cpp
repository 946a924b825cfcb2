#include <algorithm>

#include "core/referee/detail/rules.h"

namespace dampward::referee {
namespace {

std::vector<std::string> in_order(std::vector<std::string> ids) {
  std::sort(ids.begin(), ids.end());
  return ids;
}

}  // namespace

void judge_fixed(const Case& open, Violations& found) {
  for (const Fixed& fixed : open.problem.fixed) {
    const Placement* at = open.placement(fixed.operation);
    const auto say = [&](const std::string& what) {
      found.push_back(
          {"fixed", {fixed.operation}, format("\"{}\" is fixed, but {}.", fixed.operation, what)});
    };
    if (!at) {
      say("it is not in the answer");
    } else if (at->start != fixed.start || at->end != fixed.end) {
      say(format("it runs from minute {} to {} instead of {} to {}", at->start, at->end, fixed.start,
                 fixed.end));
    } else if (in_order(at->people) != in_order(fixed.people)) {
      say("other people work on it");
    } else if (at->station != fixed.station) {
      say("it is at another place");
    }
  }
}

}  // namespace dampward::referee
