#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

namespace dampward::exposure::detail {

// The smallest value that at least `share` of all are at or below (nearest rank). Reorders `values`; they are not empty.
template <class T>
T percentile(std::vector<T>& values, double share) {
  const auto rank = static_cast<std::ptrdiff_t>(std::ceil(share * static_cast<double>(values.size())));
  const auto place = values.begin() + std::max<std::ptrdiff_t>(rank - 1, 0);
  std::nth_element(values.begin(), place, values.end());
  return *place;
}

}  // namespace dampward::exposure::detail
