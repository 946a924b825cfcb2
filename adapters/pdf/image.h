#pragma once

#include <cairo.h>

#include <string>

namespace dampward::pdf {

struct ImageSize {
  double width = 0, height = 0;  // in its own units; zero: it cannot be drawn
};

// Of an SVG drawing, a PNG or a JPEG. A drawing that names other files is drawn without them.
ImageSize size_of(const std::string& image);

// Stretched into that box. What cannot be drawn is left out.
void draw_image(cairo_t* cairo, const std::string& image, double x, double y, double width, double height);

}  // namespace dampward::pdf
