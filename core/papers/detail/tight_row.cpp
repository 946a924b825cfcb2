#include "core/papers/detail/tight_row.h"

#include <algorithm>

namespace dampward::papers {
namespace {

constexpr Type small{tiny, 500}, small_name{tiny, 600};
constexpr double side = 7, tick_room = side + 3;  // never under 7 mm

void reading_line(Pen& pen, double x, double y, const Reading& reading) {
  pen.text(x - 2, y + 5, reading.label, small_name, Side::right);
  pen.box(x, y, tight_hand, side, hair);
  pen.line(x, y + side, x + tight_hand, y + side, 0.4);
  if (reading.unit == ":")
    pen.text(x + tight_hand / 2, y + 5.4, reading.unit, {value_size, 600}, Side::middle);
  else
    pen.text(x + tight_hand - 1.5, y + 5, reading.unit, small, Side::right);
}

}  // namespace

double tight_row(Pen& pen, double y, const TightRow& row) {
  constexpr double sign = 5.8, indent = 8.5, room = right_edge - tight_words;
  pen.line(left_edge, y, left_edge + 25, y, thick, Ink::petrol);
  pen.line(left_edge + 25, y, right_edge, y);
  pen.text(left_edge, y + 6.2, std::to_string(row.number), {value_size, 700});
  pen.box(right_edge - side, y + 0.6, side, side, 0.4);
  double hand = right_edge - tick_room;
  if (row.reading) {
    hand -= tight_hand;
    reading_line(pen, hand, y + 0.6, *row.reading);
    hand -= pen.width_of(row.reading->label, small_name) + 5;
  }

  double at = y + 6.2;
  at += pen.text(tight_words, at, row.title, {doing, 600}, Side::left, hand - tight_words) - 0.8;
  for (const Warning& warning : row.warnings) {
    pen.sign(tight_words, at + 1.6, warning.danger, sign);
    at += std::max(5.6, pen.text(tight_words + indent, at, warning.words, tight_strong, Side::left,
                                 room - indent)) +
          0.3;
  }
  for (const std::string& line : row.body)
    at += pen.text(tight_words, at, line, tight_text, Side::left, room);
  at -= 3.2;
  if (row.inside) at = row.inside(pen, at + 0.5);
  return std::max(at + 0.8, y + side + 2);
}

}  // namespace dampward::papers
