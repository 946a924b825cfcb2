#pragma once

#include "core/papers/page.h"

namespace dampward::papers {

// How wide text comes out: whoever owns the fonts answers, so that sheets are laid out without them.
class Measure {
 public:
  virtual ~Measure() = default;
  virtual double width(const Runs& runs, const Type& type) const = 0;  // mm, in one line
  virtual int lines(const Runs& runs, const Type& type,
                    double width) const = 0;  // broken at that width; at least 1
  // Width over height of a drawing or photograph; 0: it cannot be drawn.
  virtual double shape(const std::string& image) const = 0;
};

}  // namespace dampward::papers
