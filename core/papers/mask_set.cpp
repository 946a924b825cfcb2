#include "core/papers/mask_set.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/format.h"
#include "core/papers/flow.h"
#include "core/papers/parts.h"

namespace dampward::papers {
namespace {

using equipment::Cut;
using equipment::CutShape;

constexpr Type small_name{tiny, 600}, read{reading, 400}, firm{reading, 600};
constexpr double words_end = 98, shapes = 104, tallest = 150;

double mm(Length length) {
  return length.in(metre) * 1000;
}
std::string length_text(Length length) {
  const double size = mm(length);
  const bool whole = std::abs(size - std::round(size)) < 0.05;
  return fixed(size, whole ? 0 : 1) + thin_space + "mm";
}
bool round_one(const Cut& cut) {
  return cut.shape == CutShape::disc || cut.shape == CutShape::ring;
}
double height_of(const Cut& cut) {
  return mm(round_one(cut) ? cut.size : cut.width);
}

// Its outline in hundredths of a turn: the straight pieces between stray less than 0.1 % from the circle.
void circle(Pen& pen, double x, double y, double radius) {
  Stroke stroke;
  constexpr int sides = 120;
  for (int i = 0; i < sides; ++i) {
    const double turn = 2 * std::numbers::pi * i / sides;
    stroke.points.emplace_back(x + radius * std::cos(turn), y + radius * std::sin(turn));
  }
  stroke.closed = true;
  pen.stroke(std::move(stroke));
}

// True size, from its top left corner on.
void shape(Pen& pen, double x, double y, const Cut& cut) {
  const double size = mm(cut.size), width = mm(cut.width);
  if (!round_one(cut)) return pen.box(x, y, size, width);
  circle(pen, x + size / 2, y + size / 2, size / 2);
  if (cut.shape == CutShape::ring) circle(pen, x + size / 2, y + size / 2, width / 2);
}

class Drawing {
 public:
  Drawing(const MaskSet& set, const Words& words) : set_(set), words_(words) {}

  Flow flow() const {
    Flow flow;
    flow.head = [this](Pen& pen) { return first_head(pen); };
    flow.further = [this](Pen& pen) {
      const double y = top_edge + 3 +
                       pen.text(left_edge, top_edge + 3, words_("mask_set") + "   " + set_.kind,
                                {doing, 600, Ink::petrol}, Side::left, pen.right() - left_edge);
      return checked(pen, y);
    };
    flow.sheet = words_("mask_set") + "   " + set_.kind;
    flow.plan = set_.plan;
    flow.notes = words_("notes");
    for (std::size_t i = 0; i < set_.pieces.size(); ++i)
      flow.rows.push_back({[this, i](Pen& pen, double y) { return row(pen, y, i); }, false, nullptr});
    return flow;
  }

 private:
  double first_head(Pen& pen) const {
    double y = head(pen, {words_("mask_set"), set_.shop, set_.kind, "",
                          words_("mask_why", {std::to_string(set_.units)}), "", "", "", ""});
    pen.line(left_edge, y, pen.right(), y, wall_width, Ink::petrol);
    const bool guessed = std::any_of(set_.pieces.begin(), set_.pieces.end(),
                                     [](const auto& piece) { return piece.cut && !piece.cut->measured; });
    y += 8;
    if (guessed)
      y += std::max(8.0, pen.caution(left_edge, y, pen.right() - left_edge, words_("mask_guessed"))) + 1;
    return checked(pen, y);
  }

  // The line with its words beside it.
  double checked(Pen& pen, double y) const {
    const double x = left_edge, words = x + check_line + 4;
    pen.line(x, y, x + check_line, y, line_width);
    for (const double end : {x, x + check_line}) pen.line(end, y - 2, end, y + 2, line_width);
    y += pen.text(words, y + 1.2, words_("mask_check"), firm, Side::left, pen.right() - words);
    return y + 1;
  }

  double row(Pen& pen, double y, std::size_t i) const {
    const MaskSet::Piece& piece = set_.pieces[i];
    pen.line(left_edge, y, left_edge + 25, y, thick, Ink::petrol);
    pen.line(left_edge + 25, y, pen.right(), y);
    // Long words take the whole width, and the shape stands below them.
    const bool wordy =
        piece.cut && piece.part.size() + piece.covers.size() + piece.cut->material.size() > 200;
    const bool beside = !piece.cut || (!wordy && mm(piece.cut->size) <= right_edge - shapes - 1);
    const double x = left_edge + 27, room = (beside ? words_end : right_edge - 12) - x;
    const int count = piece.cut ? piece.cut->count : piece.count;
    pin(pen, PinKind::mask, left_edge + 3, y + 7, std::to_string(i + 1));
    pen.text(left_edge + 8, y + 8.5, std::to_string(count) + " ×", {value_size, 700});
    double at = y + 8;
    at += pen.text(x, at, piece.part, {doing, 600}, Side::left, room);
    if (!piece.covers.empty()) at += pen.text(x, at, piece.covers, read, Side::left, room);
    if (set_.units > 1)
      at += pen.text(x, at,
                     words_("mask_units", {std::to_string(set_.units), std::to_string(set_.units * count)}),
                     read, Side::left, room);
    if (!piece.cut) return std::max(at, unknown(pen, y + 3) + 3);
    at += pen.text(x, at, measures(*piece.cut), firm, Side::left, room);
    if (!piece.cut->measured) at += pen.text(x, at, words_("mask_measure"), firm, Side::left, room);
    return drawn(pen, y, at, *piece.cut, beside);
  }

  // The shape at the right of the words, or below them; gives where both end.
  double drawn(Pen& pen, double y, double at, const Cut& cut, bool beside) const {
    const double height = height_of(cut);
    if (mm(cut.size) > right_edge - left_edge || height > tallest)
      return at + pen.text(left_edge + 27, at, words_("mask_too_large"), firm, Side::left,
                           right_edge - left_edge - 27);
    if (beside) {
      shape(pen, shapes, y + 3, cut);
      return std::max(at, y + height + 6);
    }
    shape(pen, left_edge, at - 2, cut);
    return at + height + 1;
  }

  std::string measures(const Cut& cut) const {
    const std::string size = length_text(cut.size), width = length_text(cut.width);
    switch (cut.shape) {
      case CutShape::disc:
        return words_("mask_disc", {size, cut.material});
      case CutShape::ring:
        return words_("mask_ring", {size, width, cut.material});
      case CutShape::rectangle:
        return words_("mask_rectangle", {size, width, cut.material});
      case CutShape::strip:
        break;
    }
    return words_("mask_strip", {size, width, cut.material});
  }

  // A box to lay the part in.
  double unknown(Pen& pen, double y) const {
    const double words =
        pen.text(shapes, y + 3, words_("mask_draw"), small_name, Side::left, right_edge - shapes);
    pen.box(shapes, y + words, right_edge - shapes, 32, hair);
    return y + words + 32;
  }

  const MaskSet& set_;
  const Words& words_;
};

}  // namespace

Pages mask_set(const MaskSet& set, const Paper& paper, const Words& words, const Measure& measure) {
  const Drawing drawing(set, words);
  return pages_of(drawing.flow(), paper, words, measure);
}

}  // namespace dampward::papers
