#pragma once

#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "core/base/problem.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"

namespace dampward::files {

using Json = nlohmann::ordered_json;

// A number with so many digits after the point: what is printed is what is known, not what the processor holds.
inline double rounded(double value, int digits) {
  const double scale = std::pow(10.0, digits);
  return std::round(value * scale) / scale + 0.0;  // + 0.0: never -0
}

// The next tenth or hundredth up: a vapour is never told thinner than it is.
inline double rounded_up(double value, int digits) {
  const double unit = std::pow(10.0, -digits);
  return rounded(std::ceil(value / unit - 1e-9) * unit, digits);
}

// {"low": …, "typical": …, "high": …} in `unit`.
template <class Q>
Json range_json(const Range<Q>& range, Q unit, int digits) {
  return {{"low", rounded(range.low.in(unit), digits)},
          {"typical", rounded(range.typical.in(unit), digits)},
          {"high", rounded(range.high.in(unit), digits)}};
}

template <class Tag>
std::vector<std::string> texts(const std::vector<Tag>& ids) {
  std::vector<std::string> out;
  for (const auto& id : ids) out.push_back(id.text);
  return out;
}

inline Json problems_json(const Problems& problems) {
  Json list = Json::array();
  for (const Problem& problem : problems) {
    list.push_back({{"file", problem.place.file},
                    {"line", problem.place.line > 0 ? Json(problem.place.line) : Json(nullptr)},
                    {"column", problem.place.column > 0 ? Json(problem.place.column) : Json(nullptr)},
                    {"found", problem.found},
                    {"expected", problem.expected},
                    {"next", problem.next}});
  }
  return list;
}

// The document as text: two spaces deep, bytes that are no UTF-8 replaced rather than refused.
inline std::string document(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace dampward::files
