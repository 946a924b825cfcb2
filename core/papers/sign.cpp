#include <cmath>

#include "core/papers/pen.h"

namespace dampward::papers {
namespace {

Stroke open_line(std::vector<std::pair<double, double>> points, double width) {
  return {std::move(points), width, Ink::black, false, false, false};
}

}  // namespace

void Pen::sign(double x, double y, Danger danger, double side) {
  const double height = side * 0.88, middle = x + side / 2, unit = side / 8;
  stroke({{{x, y}, {x + side, y}, {middle, y - height}}, 0.09 * side, Ink::black, true, false, true});
  const auto at = [&](double across, double up) { return std::pair(middle + across * unit, y - up * unit); };
  switch (danger) {
    case Danger::any:
      stroke(open_line({at(0, 4.7), at(0, 2.4)}, 0.85 * unit));
      disc(middle, y - 1.35 * unit, 0.45 * unit);
      return;
    case Danger::volt:
      stroke(open_line({at(0.6, 5), at(-0.8, 2.7), at(0.7, 2.9), at(-0.5, 0.9)}, 0.5 * unit));
      return;
    case Danger::hot:
      for (const double across : {-1.2, 0.0, 1.2}) {
        std::vector<std::pair<double, double>> wave;
        for (double t = 0; t < (across == 0 ? 6.4 : 4.0); t += 0.3)
          wave.push_back(at(across + 0.35 * std::sin(1.6 * t), 1 + 0.42 * t));
        stroke(open_line(std::move(wave), 0.45 * unit));
      }
      return;
    case Danger::fire: {
      // A drop that leans, its tip at the top.
      constexpr double half_turn = 3.14159;
      std::vector<std::pair<double, double>> flame;
      for (double t = -1; t < 1; t += 0.05) {
        const double up = 1 - std::abs(t), half = 1.5 * std::sin(half_turn * 0.86 * std::pow(1 - up, 1.6));
        flame.push_back(at((t < 0 ? 1 : -1) * half + 0.5 * up, 1.2 + 4 * up));
      }
      stroke({std::move(flame), 0.5 * unit, Ink::black, true, false, false});
      disc(middle, y - 2.2 * unit, 0.4 * unit);
      return;
    }
  }
}

}  // namespace dampward::papers
