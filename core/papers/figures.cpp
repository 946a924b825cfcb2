#include "core/papers/figures.h"

#include <cmath>

#include "core/base/format.h"
#include "core/papers/words.h"

namespace dampward::papers {
namespace {

constexpr double slack = 1e-6;  // of the last digit: a figure that is whole but for its last bits stays so

}  // namespace

double up(double figure, int digits) {
  const double scale = std::pow(10.0, digits);
  return std::ceil(figure * scale - slack) / scale;
}

double down(double figure, int digits) {
  const double scale = std::pow(10.0, digits);
  return std::floor(figure * scale + slack) / scale;
}

double up(Temperature t) {
  return up(t.celsius(), 0);
}

double down(Temperature t) {
  return down(t.celsius(), 0);
}

std::string figure_text(double figure, int digits) {
  const bool whole = std::abs(figure - std::round(figure)) < slack;
  return fixed(figure, whole ? 0 : digits);
}

std::string with_unit(double figure, int digits, const std::string& unit) {
  return figure_text(figure, digits) + thin_space + unit;
}

std::string degrees(double figure) {
  return fixed(figure, 0) + thin_space + "°C";
}

Jug jug(Volume volume) {
  const bool small = volume < 0.1 * litre;
  return {fixed(up(volume.in(litre), small ? 3 : 2) * (small ? 1000 : 1), small ? 0 : 2), small ? "mL" : "L"};
}

std::string jugful(Volume volume) {
  const Jug told = jug(volume);
  return told.amount + thin_space + told.unit;
}

}  // namespace dampward::papers
