#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/papers/measure.h"

namespace dampward::pdf {

// Text as the fonts of this machine set it (Inter, else what fontconfig takes for it). Not to be shared between threads.
std::unique_ptr<papers::Measure> measure();

// Whether an SVG drawing, a PNG or a JPEG comes out at all.
bool can_draw(const std::string& image);

// What the document says of itself beside its pages.
struct About {
  std::string title;
  Instant
      made;  // printed into the file instead of the hour it is written at: the same pages give the same bytes
};

// The pages as one PDF.
std::string pdf_of(const std::vector<papers::Page>& pages, const About& about);

}  // namespace dampward::pdf
