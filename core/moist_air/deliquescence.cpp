#include "core/moist_air/deliquescence.h"

#include <algorithm>
#include <cmath>

#include "core/base/promise.h"

namespace dampward::moist_air {
namespace {

struct Row {
  double a;         // %
  double b;         // K
  double from, to;  // °C
};

constexpr Row row_of(Salt salt) {
  switch (salt) {
    case Salt::lithium_chloride:
      return {14.53, -75, 20, 65};
    case Salt::magnesium_chloride:
      return {29.26, 34, 5, 45};
    case Salt::sodium_chloride:
      return {69.20, 25, 10, 40};
    case Salt::potassium_chloride:
      return {49.38, 159, 5, 25};
    case Salt::potassium_nitrate:
      return {43.22, 225, 0, 50};
    case Salt::potassium_sulphate:
      return {86.75, 34, 10, 50};
  }
  broken_promise("every salt has a row");
}

}  // namespace

RelativeHumidity deliquescence(Salt salt, Temperature temperature) {
  const Row row = row_of(salt);
  const double t = std::clamp(temperature.celsius(), row.from, row.to) + 273.15;
  return RelativeHumidity::percent(row.a * std::exp(row.b / t));
}

}  // namespace dampward::moist_air
