#include "core/exposure/mould.h"

#include <algorithm>
#include <cmath>

namespace dampward::exposure {
namespace {

struct Row {
  double k1_below_1, k1_from_1;
  double a, b, c;
  double least_humidity;  // %
};

constexpr std::array<Row, 4> rows = {{{1, 2, 1, 7, 2, 80},
                                      {0.578, 0.386, 0.3, 6, 1, 80},
                                      {0.072, 0.097, 0, 5, 1.5, 85},
                                      {0.033, 0.014, 0, 3, 1, 85}}};

constexpr double coldest_growth = 0.1, hottest_growth = 50;  // °C

const Row& row_of(MouldClass mould_class) {
  return rows[static_cast<std::size_t>(mould_class)];
}

// %, from 0.1 °C up.
double critical_percent(double t, double least) {
  if (t > 20) return least;
  return std::max(-0.00267 * t * t * t + 0.160 * t * t - 3.13 * t + 100, least);
}

bool can_grow(double t) {
  return t >= coldest_growth && t < hottest_growth;
}

double limit_of(const Row& row, double critical, double humidity) {
  const double x = (critical - humidity) / (critical - 100);
  return row.a + row.b * x - row.c * x * x;
}

}  // namespace

RelativeHumidity critical_humidity(MouldClass mould_class, Temperature surface) {
  const double t = surface.celsius();
  return RelativeHumidity::percent(can_grow(t) ? critical_percent(t, row_of(mould_class).least_humidity)
                                               : 100);
}

double highest_index(MouldClass mould_class, Temperature surface, RelativeHumidity humidity) {
  const double t = surface.celsius(), rh = std::min(humidity.percent(), 100.0);
  const Row& row = row_of(mould_class);
  const double critical = critical_percent(t, row.least_humidity);
  return can_grow(t) && rh >= critical ? limit_of(row, critical, rh) : 0;
}

void MouldGrowth::hour(Temperature surface, RelativeHumidity humidity) {
  const double t = surface.celsius(), rh = std::min(humidity.percent(), 100.0);
  const bool warm = can_grow(t);
  // Index points per day of a class with k1 = k2 = 1. ln RH wants percent.
  const double rate = warm && rh >= 79 ? std::exp(0.68 * std::log(t) + 13.9 * std::log(rh) - 66.02) / 7 : 0;
  grow_or_fall(0, 2, critical_percent(t, 80), rate, warm, rh);
  grow_or_fall(2, 4, critical_percent(t, 85), rate, warm, rh);
}

// Two classes share a critical humidity, and with it the hours since growth stopped.
void MouldGrowth::grow_or_fall(int first, int last, double critical, double rate, bool warm,
                               double humidity) {
  int& dry = dry_hours_[static_cast<std::size_t>(first / 2)];
  if (warm && humidity >= critical) {
    dry = 0;
    for (int i = first; i < last; ++i) {
      const Row& row = rows[static_cast<std::size_t>(i)];
      double& index = indices_[static_cast<std::size_t>(i)];
      const double room = index - limit_of(row, critical, humidity);
      if (room >= 0) continue;
      index += rate / 24 * (index < 1 ? row.k1_below_1 : row.k1_from_1) * (1 - std::exp(2.3 * room));
    }
    return;
  }
  ++dry;
  const double fall = dry <= 6 ? 0.032 / 24 : dry <= 24 ? 0 : 0.016 / 24;
  for (int i = first; i < last; ++i) {
    double& index = indices_[static_cast<std::size_t>(i)];
    index = std::max(index - decline_ * fall, 0.0);
  }
}

std::string_view name(MouldClass mould_class) {
  constexpr std::array<std::string_view, 4> names = {"very_sensitive", "sensitive", "medium_resistant",
                                                     "resistant"};
  return names[static_cast<std::size_t>(mould_class)];
}

}  // namespace dampward::exposure
