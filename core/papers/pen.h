#pragma once

#include <string>
#include <vector>

#include "core/papers/measure.h"
#include "core/papers/words.h"

namespace dampward::papers {

// The columns every portrait sheet shares: clock, words, hand.
inline constexpr double left_edge = 18, words_column = 47, hand_column = 152, right_edge = 198, top_edge = 12;

// One moment that must not slip.
struct Moment {
  std::string label, clock;
};

// A value, what is spare, and the limit: always the three together.
struct Triple {
  std::string value, spare, limit;
  std::string unit, spare_unit;
  std::string value_words, spare_words, limit_words;
  bool floor = false;  // the limit is the least allowed, not the most
};

// What the triangle before a caution shows.
enum class Danger { any, volt, hot, fire };

// Puts parts on a page. Each part gives the height it took.
class Pen {
 public:
  Pen(Page& page, const Measure& measure) : page_(page), measure_(measure) {}

  void line(double x1, double y1, double x2, double y2, double width = hair, Ink ink = Ink::black);
  void stroke(Stroke stroke) { page_.marks.emplace_back(std::move(stroke)); }
  void box(double x, double y, double width, double height, double stroke = line_width);
  void disc(double x, double y, double radius, Ink ink = Ink::black) {
    page_.marks.emplace_back(Disc{x, y, radius, ink});
  }
  void hatch(double x, double y, double width, double height, double step = 1.6);
  void area(double x, double y, double width, double height, Ink ink = Ink::tint) {
    page_.marks.emplace_back(Area{x, y, width, height, ink});
  }
  void code(double x, double y, const std::string& text) {
    page_.marks.emplace_back(Code{x, y, code_size, text});
  }
  void image(Image image) { page_.marks.emplace_back(std::move(image)); }
  double shape_of(const std::string& image) const { return measure_.shape(image); }

  // Text from baseline y on.
  double text(double x, double y, const Runs& runs, const Type& type, Side side = Side::left,
              double width = 0, double halo = 0);
  double text(double x, double y, const std::string& marked, const Type& type, Side side = Side::left,
              double width = 0, double halo = 0);
  double width_of(const std::string& marked, const Type& type) const;
  double height_of(const std::string& marked, const Type& type, double width) const;

  // A limit as a wall at the end of a bar, right or, for a least value, left; the three figures over it, their names below.
  double triple(double x, double y, double width, const Triple& triple);
  // A limit that stands, `height` high about y: forbidden at its right, or at its left.
  void wall(double x, double y, double height, bool right = true);
  // A limit lying down: a thick line hatched above, its words at its end.
  void wall_line(double x1, double x2, double y, const std::string& words);
  // The waterline, and the moments that hang from it.
  double moments(double y, const std::vector<Moment>& moments);
  // A triangle of our own, `side` wide, from the left end of its foot.
  void sign(double x, double y, Danger danger, double side = 7.5);
  // The triangle, with the danger and the act beside it.
  double caution(double x, double y, double width, const std::string& words, Danger danger = Danger::any);

  double page_width() const { return page_.paper.width; }
  double page_height() const { return page_.paper.height; }
  // Where the live width ends: A4 and Letter share it upright, each has its own on the long side.
  double right() const { return page_width() > page_height() ? page_width() - 12 : right_edge; }
  double bottom() const { return page_.paper.height - 15.5; }

 private:
  Page& page_;
  const Measure& measure_;
};

// Kind, house, name, the one figure to act on or a code, and why; gives the height of the waterline. A long name is set smaller,
// then broken, never cut.
struct Head {
  std::string kind, house, name, beside, why;
  std::string big_words, big, big_unit;
  std::string code = {};  // instead of the figure; empty: none
};
double head(Pen& pen, const Head& head);

// What stands under every page.
void foot(Pen& pen, const Words& words, const std::string& sheet, const std::string& plan, int number = 1,
          int last = 1);

// The rest of the page as ruled lines for a pencil.
void notes(Pen& pen, double y, const std::string& word);

}  // namespace dampward::papers
