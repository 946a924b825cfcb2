#pragma once

#include <functional>
#include <optional>

namespace dampward::charts {

// A place on the paper: millimetres from the top left corner.
struct Place {
  double x = 0, y = 0;
};

// The part of a page that a chart is given.
struct Frame {
  double left = 0, top = 0, width = 0, height = 0;
  double right() const { return left + width; }
  double foot() const { return top + height; }
};

// A line along which figures are printed, straight or bent. Figures are bare and in the unit they are printed in: this is paper.
class Scale {
 public:
  // `at` is continuous, and goes one way along the line as the figure rises. Promise: low below high.
  Scale(double low, double high, std::function<Place(double)> at);

  double low() const { return low_; }
  double high() const { return high_; }
  Place at(double figure) const { return at_(figure); }
  // Millimetres of paper that one unit takes at this figure.
  double stretch(double figure) const;
  // The place so far along the scale from this figure, on its tangent; towards higher figures.
  Place beside(double figure, double millimetres) const;
  // The figure at which a ruler through two places crosses the scale; none: it misses it.
  std::optional<double> crossed_by(const Place& a, const Place& b) const;
  // The figure at a height of the paper; none: the scale does not reach there.
  std::optional<double> at_height(double y) const { return crossed_by({0, y}, {1, y}); }
  // The figure straight across from a place beside the line; past an end, as the end's stretch goes on.
  double across_from(const Place& place, double near_figure) const;

 private:
  double low_, high_;
  std::function<Place(double)> at_;
};

// A quantity as the bare figure a scale prints, and back.
template <class T>
struct Printed {
  double (*figure)(const T&);
  T (*value)(double);
};

// A scale for values of one kind.
template <class T>
struct ScaleOf {
  Scale scale;
  Printed<T> printed;

  Place at(const T& value) const { return scale.at(printed.figure(value)); }
  T value(double figure) const { return printed.value(figure); }
  std::optional<T> crossed_by(const Place& a, const Place& b) const {
    const auto figure = scale.crossed_by(a, b);
    return figure ? std::optional(printed.value(*figure)) : std::nullopt;
  }
  std::optional<T> at_height(double y) const { return crossed_by({0, y}, {1, y}); }
};

}  // namespace dampward::charts
