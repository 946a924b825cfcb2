#include "core/referee/detail/spans.h"

#include <algorithm>

namespace dampward::referee {
namespace {

// The first span of the list that ends after the minute.
std::vector<Span>::const_iterator ending_after(const std::vector<Span>& list, Minute minute) {
  return std::upper_bound(list.begin(), list.end(), minute,
                          [](Minute at, const Span& span) { return at < span.to; });
}

}  // namespace

Span common(Span a, Span b) {
  return {std::max(a.from, b.from), std::min(a.to, b.to)};
}

std::vector<Span> merged(std::vector<Span> spans) {
  std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) { return a.from < b.from; });
  std::vector<Span> out;
  for (const Span& span : spans) {
    if (empty(span)) continue;
    if (!out.empty() && span.from <= out.back().to) {
      out.back().to = std::max(out.back().to, span.to);
    } else {
      out.push_back(span);
    }
  }
  return out;
}

std::vector<Span> without(Span span, const std::optional<Span>& part) {
  if (!part || !overlap(span, *part)) return empty(span) ? std::vector<Span>{} : std::vector<Span>{span};
  std::vector<Span> out;
  if (span.from < part->from) out.push_back({span.from, part->from});
  if (part->to < span.to) out.push_back({part->to, span.to});
  return out;
}

std::vector<Span> common(const std::vector<Span>& a, const std::vector<Span>& b) {
  std::vector<Span> out;
  for (const Span& span : a) {
    for (auto other = ending_after(b, span.from); other != b.end() && other->from < span.to; ++other)
      out.push_back(common(span, *other));
  }
  return out;
}

Minute minutes_within(Span span, const std::vector<Span>& list) {
  Minute sum = 0;
  for (auto other = ending_after(list, span.from); other != list.end() && other->from < span.to; ++other) {
    const Span both = common(span, *other);
    sum += both.to - both.from;
  }
  return sum;
}

std::optional<Minute> first_uncovered(Span span, const std::vector<Span>& list) {
  Minute at = span.from;
  for (auto other = ending_after(list, at); at < span.to; ++other) {
    if (other == list.end() || other->from > at) return at;
    at = other->to;
  }
  return {};
}

std::optional<Minute> first_covered(Span span, const std::vector<Span>& list) {
  const auto other = ending_after(list, span.from);
  if (empty(span) || other == list.end() || other->from >= span.to) return {};
  return std::max(span.from, other->from);
}

}  // namespace dampward::referee
