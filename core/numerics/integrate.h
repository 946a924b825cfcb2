#pragma once

namespace dampward::numerics {

// Area under a function from a to b by three-point Gauss-Legendre: exact for polynomials up to degree 5.
// Meant for stretches short enough that the function bends gently; cut a longer one into pieces.
// Source: Abramowitz and Stegun 1964 table 25.4 (from memory; exactness tested).
template <class Function>
double integral(Function&& f, double a, double b) {
  constexpr double node = 0.7745966692414834;  // √(3/5)
  const double middle = 0.5 * (a + b), half = 0.5 * (b - a);
  return half / 9 * (5 * f(middle - node * half) + 8 * f(middle) + 5 * f(middle + node * half));
}

}  // namespace dampward::numerics
