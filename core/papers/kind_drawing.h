#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/papers/flow.h"
#include "core/papers/parts.h"

namespace dampward::papers {

// What a kind looks like, with pins where its masks go and where care is due.
struct KindDrawing {
  std::shared_ptr<const std::string> image;
  struct Pin {
    PinKind kind = PinKind::mask;
    double across = 0, down = 0;  // shares of the picture's width and height
    std::string mark;             // a mask's number on its list; a letter else
    std::string part;
  };
  std::vector<Pin> pins;
};

// The picture with its pins, then a line for each pin that is no mask's: those stand with their numbers in the list below.
// Nothing where it cannot be drawn.
void kind_drawing_rows(const KindDrawing& drawing, const Words& words, std::vector<Row>& rows);

}  // namespace dampward::papers
