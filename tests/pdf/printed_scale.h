#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "core/charts/scale.h"
#include "core/papers/page.h"
#include "tests/pdf/page_boxes.h"

// Reads the scales of a chart back from the marks of its page, as a person with a ruler would: figures beside long ticks, shorter
// ticks counted between them.
namespace dampward::papers::test {

using charts::Place;

struct PrintedTick {
  double figure = 0;
  Place place;
};

// One scale, its ticks in the order of its figures.
struct PrintedScale {
  std::vector<PrintedTick> ticks;
  double way_x = 0, way_y = 0;  // where its ticks point
  double low() const { return ticks.front().figure; }
  double high() const { return ticks.back().figure; }
  double x() const { return ticks.front().place.x; }

  // Where a figure stands, an eye parting the gap between two ticks.
  Place at(double figure) const {
    std::size_t i = 1;
    while (i + 1 < ticks.size() && ticks[i].figure < figure) ++i;
    const PrintedTick &a = ticks[i - 1], &b = ticks[i];
    const double share = (figure - a.figure) / (b.figure - a.figure);
    return {a.place.x + share * (b.place.x - a.place.x), a.place.y + share * (b.place.y - a.place.y)};
  }
  // So far along the scale from there.
  Place near(double figure, double millimetres) const {
    const Place here = at(figure);
    const Place a = ticks.front().place, b = ticks.back().place;
    const double length = std::hypot(b.x - a.x, b.y - a.y);
    return {here.x + millimetres * (b.x - a.x) / length, here.y + millimetres * (b.y - a.y) / length};
  }
  // The figure where a ruler through two places crosses it, moved along by so much.
  std::optional<double> read(const Place& a, const Place& b, double millimetres = 0) const {
    for (std::size_t i = 1; i < ticks.size(); ++i) {
      const auto side = [&](const Place& p) { return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x); };
      const double one = side(ticks[i - 1].place), two = side(ticks[i].place);
      if (one * two > 0) continue;
      const double share = one == two ? 0 : one / (one - two);
      const double figure = ticks[i - 1].figure + share * (ticks[i].figure - ticks[i - 1].figure);
      const double gap =
          std::hypot(ticks[i].place.x - ticks[i - 1].place.x, ticks[i].place.y - ticks[i - 1].place.y);
      return figure + millimetres * (ticks[i].figure - ticks[i - 1].figure) / gap;
    }
    return std::nullopt;
  }
};

inline std::optional<double> figure_of(std::string text) {
  if (const std::size_t gap = text.find("\u202f"); gap != std::string::npos) text.erase(gap, 3);
  char* end = nullptr;
  const double figure = std::strtod(text.c_str(), &end);
  return end == text.c_str() || *end != 0 ? std::nullopt : std::optional(figure);
}

// Every scale of the page, from left to right.
inline std::vector<PrintedScale> printed_scales(const Page& page) {
  struct Raw {
    Place place;
    double way_x, way_y;
    std::optional<double> figure;
  };
  std::vector<Raw> raw;
  for (const Mark& mark : page.marks) {
    const auto* stroke = std::get_if<Stroke>(&mark);
    if (stroke == nullptr || stroke->points.size() != 2 || stroke->dashed) continue;
    const auto [x1, y1] = stroke->points[0];
    const auto [x2, y2] = stroke->points[1];
    const double length = std::hypot(x2 - x1, y2 - y1);
    const bool tick =
        (std::abs(length - 4) < 1e-6 && stroke->width == line_width) ||
        ((std::abs(length - 2.8) < 1e-6 || std::abs(length - 1.6) < 1e-6) && stroke->width == hair);
    if (!tick || (x1 != x2 && y1 != y2)) continue;
    Raw one{{x1, y1}, (x2 - x1) / length, (y2 - y1) / length, {}};
    for (const Mark& other : page.marks) {
      const auto* text = std::get_if<Text>(&other);
      if (text == nullptr || length < 3.9) continue;
      const bool beside = one.way_y == 0 && std::abs(text->x - (x1 + 5.5 * one.way_x)) < 1e-6 &&
                          std::abs(text->y - (y1 + 1.6)) < 1e-6;
      const bool under =
          one.way_y > 0 && std::abs(text->x - x1) < 1e-6 && std::abs(text->y - (y1 + 8.2)) < 1e-6;
      if (beside || under) one.figure = figure_of(joined(text->runs));
    }
    raw.push_back(one);
  }
  // Ticks of one scale point one way and begin within a few millimetres of one line.
  std::vector<std::vector<Raw>> groups;
  for (const Raw& one : raw) {
    const auto group = std::find_if(groups.begin(), groups.end(), [&](const std::vector<Raw>& g) {
      const bool alike = g.front().way_x == one.way_x && g.front().way_y == one.way_y;
      return alike && (one.way_y > 0 ? std::abs(g.front().place.y - one.place.y) < 0.01
                                     : std::abs(g.front().place.x - one.place.x) < 5);
    });
    if (group == groups.end())
      groups.push_back({one});
    else
      group->push_back(one);
  }
  std::vector<PrintedScale> scales;
  for (std::vector<Raw>& group : groups) {
    std::sort(group.begin(), group.end(), [](const Raw& a, const Raw& b) {
      return a.way_y > 0 ? a.place.x < b.place.x : a.place.y < b.place.y;
    });
    REQUIRE(group.front().figure);
    REQUIRE(group.back().figure);
    PrintedScale scale;
    scale.way_x = group.front().way_x, scale.way_y = group.front().way_y;
    for (std::size_t i = 0; i + 1 < group.size();) {
      std::size_t next = i + 1;
      while (!group[next].figure) ++next;
      for (std::size_t k = i; k < next; ++k) {
        const double share = static_cast<double>(k - i) / static_cast<double>(next - i);
        scale.ticks.push_back(
            {*group[i].figure + share * (*group[next].figure - *group[i].figure), group[k].place});
      }
      i = next;
    }
    scale.ticks.push_back({*group.back().figure, group.back().place});
    if (scale.ticks.front().figure > scale.ticks.back().figure)
      std::reverse(scale.ticks.begin(), scale.ticks.end());
    for (std::size_t i = 1; i < scale.ticks.size(); ++i)
      CHECK(scale.ticks[i].figure > scale.ticks[i - 1].figure);
    scales.push_back(scale);
  }
  std::sort(scales.begin(), scales.end(), [](const PrintedScale& a, const PrintedScale& b) {
    return a.x() != b.x() ? a.x() < b.x() : a.way_x < b.way_x;
  });
  return scales;
}

// The first figure of the text that begins so: what the page says of its own error.
inline double told_error(const Page& page, const std::string& begins) {
  for (const Mark& mark : page.marks) {
    const auto* text = std::get_if<Text>(&mark);
    if (text == nullptr) continue;
    const std::string words = joined(text->runs);
    if (words.starts_with(begins)) return std::strtod(words.c_str() + begins.size(), nullptr);
  }
  FAIL("no text begins with ", begins);
  return 0;
}

// A hand that is off by up to half a millimetre.
class Hand {
 public:
  double slip() { return std::uniform_real_distribution<double>(-0.5, 0.5)(random_); }
  double figure(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }

 private:
  std::mt19937 random_{20270309};
};

}  // namespace dampward::papers::test
