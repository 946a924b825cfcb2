#include "core/charts/ticks.h"

#include <cmath>
#include <optional>

namespace dampward::charts {
namespace {

bool near_whole(double number) {
  return std::abs(number - std::round(number)) < 1e-6;
}

double between(const Scale& scale, double a, double b) {
  const Place one = scale.at(a), two = scale.at(b);
  return std::hypot(two.x - one.x, two.y - one.y);
}

// The finest step of 1, 2 or 5 that parts a cell evenly with no two marks nearer than that; none: none does. A step that does not
// itself stand on its own multiples is none either: 10 to 15 in twos.
std::optional<double> step_within(const Scale& scale, double from, double to, double apart) {
  const double top = std::pow(10, std::ceil(std::log10(to - from)));
  std::optional<double> best;
  for (const double share : {0.5, 0.2, 0.1, 0.05, 0.02, 0.01}) {
    const double step = share * top;
    if (step >= (to - from) * (1 - 1e-9) || !near_whole((to - from) / step) || !near_whole(from / step))
      continue;
    bool wide = true;
    for (double at = from; wide && at < to - 0.5 * step; at += step)
      wide = between(scale, at, at + step) >= apart;
    if (wide) best = step;
  }
  return best;
}

// Cells between figures that surely are named: ends, and round figures of the scale's own size.
std::vector<double> coarse(const Scale& scale, double apart) {
  std::vector<double> all = {scale.low()};
  const bool many_sizes = scale.low() > 0 && scale.high() / scale.low() > 8;
  if (many_sizes) {
    for (double ten = std::pow(10, std::floor(std::log10(scale.low()))); ten < scale.high(); ten *= 10) {
      for (const double figure : {ten, 2 * ten, 5 * ten}) {
        const bool inside = figure > scale.low() * (1 + 1e-9) && figure < scale.high() * (1 - 1e-9);
        const bool room = figure == ten || between(scale, ten, 2 * ten) >= apart;
        if (inside && room) all.push_back(figure);
      }
    }
  } else {
    const double ten = std::pow(10, std::floor(std::log10(scale.high() - scale.low())));
    for (double at = ten * std::ceil(scale.low() / ten + 1e-9); at < scale.high() - 1e-9 * ten; at += ten)
      all.push_back(at);
  }
  all.push_back(scale.high());
  return all;
}

std::vector<double> parted(const Scale& scale, const std::vector<double>& cells, double apart) {
  std::vector<double> all;
  for (std::size_t i = 0; i + 1 < cells.size(); ++i) {
    all.push_back(cells[i]);
    const auto step = step_within(scale, cells[i], cells[i + 1], apart);
    if (!step) continue;
    for (double at = cells[i] + *step; at < cells[i + 1] - 0.5 * *step; at += *step) all.push_back(at);
  }
  all.push_back(cells.back());
  return all;
}

}  // namespace

std::vector<Tick> ticks_of(const Scale& scale, double apart, double small) {
  std::vector<double> named = coarse(scale, apart);
  // Cells are parted into ones, twos or fives, and the parts once more where there is room.
  named = parted(scale, named, apart);
  named = parted(scale, named, apart);
  std::vector<Tick> ticks;
  for (std::size_t i = 0; i + 1 < named.size(); ++i) {
    ticks.push_back({named[i], TickKind::named});
    const auto step = step_within(scale, named[i], named[i + 1], small);
    if (!step) continue;
    const int steps = static_cast<int>(std::round((named[i + 1] - named[i]) / *step));
    for (int k = 1; k < steps; ++k) {
      const bool half = steps % 2 == 0 && k == steps / 2 && steps > 2;
      ticks.push_back({named[i] + k * *step, half ? TickKind::half : TickKind::small});
    }
  }
  ticks.push_back({named.back(), TickKind::named});
  return ticks;
}

}  // namespace dampward::charts
