#pragma once

#include <string>

#include "core/quantity/quantity.h"
#include "core/quantity/temperature.h"

// Figures as sheets print them: what must not be passed is rounded down, what must be reached or kept at hand up.
namespace dampward::papers {

double up(double figure, int digits = 0);
double down(double figure, int digits = 0);

// Whole degrees Celsius.
double up(Temperature t);
double down(Temperature t);

// So many digits after the point, none where the figure is whole; and with its unit, not to be parted.
std::string figure_text(double figure, int digits);
std::string with_unit(double figure, int digits, const std::string& unit);
// "12 °C" of whole degrees.
std::string degrees(double figure);
// For a measuring jug, rounded up: running short in mid-coat is worse than a spoonful left. Under 0.1 L in millilitres.
struct Jug {
  std::string amount, unit;
};
Jug jug(Volume volume);
std::string jugful(Volume volume);

}  // namespace dampward::papers
