#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "core/papers/pen.h"

// Where the texts of a page stand, so that a test may see whether they lie over one another.
namespace dampward::papers::test {

struct Box {
  double left, right, top, bottom;
  std::string text;
};

inline std::string joined(const Runs& runs) {
  std::string text;
  for (const Run& run : runs) text += run.text;
  return text;
}

// Where every text of the page stands, by the fonts themselves.
inline std::vector<Box> boxes_of(const Page& page, const Measure& measure) {
  std::vector<Box> boxes;
  for (const Mark& mark : page.marks) {
    const auto* text = std::get_if<Text>(&mark);
    if (text == nullptr) continue;
    const double capitals = 0.26 * text->type.points;
    const int lines = text->width > 0 ? measure.lines(text->runs, text->type, text->width) : 1;
    const double whole = measure.width(text->runs, text->type);
    const double width = text->width > 0 ? std::min(whole, text->width) : whole;
    const double share = text->side == Side::left ? 0 : text->side == Side::middle ? 0.5 : 1;
    boxes.push_back({text->x - share * width, text->x + (1 - share) * width, text->y - capitals,
                     text->y + (lines - 1) * lead(text->type), joined(text->runs)});
  }
  return boxes;
}

inline bool overlap(const Box& a, const Box& b) {
  constexpr double touch = 0.2;
  return a.left < b.right - touch && b.left < a.right - touch && a.top < b.bottom - touch &&
         b.top < a.bottom - touch;
}

inline void check_page(const Page& page, const Measure& measure, bool within_margin = true) {
  const std::vector<Box> boxes = boxes_of(page, measure);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    INFO(boxes[i].text);
    CHECK(boxes[i].left >= left_edge - 8);
    if (within_margin) CHECK(boxes[i].right <= page.paper.width - 7);
    CHECK(boxes[i].top >= 7);
    CHECK(boxes[i].bottom <= page.paper.height - 4);
    for (std::size_t j = i + 1; j < boxes.size(); ++j) {
      INFO(boxes[j].text);
      CHECK_FALSE(overlap(boxes[i], boxes[j]));
    }
  }
}

inline void check_pages(const Pages& pages, const Measure& measure) {
  CHECK_FALSE(pages.empty());
  for (std::size_t i = 0; i < pages.size(); ++i) {
    INFO("page " << i + 1);
    check_page(pages[i], measure);
  }
}

// All that the pages say, a text a line.
inline std::string words_of(const Pages& pages) {
  std::string all;
  for (const Page& page : pages) {
    for (const Mark& mark : page.marks) {
      if (const auto* text = std::get_if<Text>(&mark)) all += joined(text->runs) + "\n";
    }
  }
  return all;
}

}  // namespace dampward::papers::test
