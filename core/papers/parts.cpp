#include "core/papers/parts.h"

#include <algorithm>

namespace dampward::papers {
namespace {

constexpr Type small{tiny, 500}, small_name{tiny, 600}, read{reading, 400};

}  // namespace

double tick(Pen& pen, double x, double y, const std::string& words, double width) {
  pen.box(x, y, tick_side, tick_side, 0.4);
  if (words.empty()) return tick_side;
  const double height = pen.height_of(words, read, width), more = height - lead(reading);
  // Two lines centre on the square; more run on below it.
  pen.text(x + 11, y + 5.6 - std::min(more, lead(reading)) / 2, words, read, Side::left, width);
  return std::max(tick_side, height + 2);
}

double reading_box(Pen& pen, double x, double y, double width, const Reading& r) {
  const Type expected{reading, 600};  // a decimal point must outlive a copy of a copy
  const double side_by_side = pen.width_of(r.label, small_name) + pen.width_of(r.expect, expected) + 2;
  double base = y + 3;
  if (!r.label.empty()) {
    const double height = pen.text(x, base, r.label, small_name, Side::left, width);
    if (side_by_side > width) base += height - (r.expect.empty() ? lead(tiny) : 0.2);
  }
  if (!r.expect.empty()) {
    const double height = pen.text(x + width, base, r.expect, expected, Side::right, width);
    base += height - lead(reading);
  }
  const double top = r.label.empty() && r.expect.empty() ? y + 1 : base + 1.4;
  pen.box(x, top, width, 8.6, hair);
  pen.line(x, top + 8.6, x + width, top + 8.6, 0.4);
  if (r.unit == ":")
    pen.text(x + width / 2, top + 6, r.unit, {value_size, 600}, Side::middle);
  else
    pen.text(x + width - 1.5, top + 5.8, r.unit, small, Side::right);
  return top + 9.6 - y;
}

void pin(Pen& pen, PinKind kind, double x, double y, const std::string& mark, double radius) {
  const auto outline = [&](std::vector<std::pair<double, double>> points) {
    pen.stroke({std::move(points), 0.4, Ink::black, true, false, true});
  };
  const double half = radius * 0.88, tip = radius * 1.25;
  switch (kind) {
    case PinKind::mask:
      pen.disc(x, y, radius);
      break;
    case PinKind::bare:
      outline({{x - half, y - half}, {x + half, y - half}, {x + half, y + half}, {x - half, y + half}});
      break;
    case PinKind::weak:
      outline({{x, y - tip}, {x + tip, y}, {x, y + tip}, {x - tip, y}});
      break;
    case PinKind::brush:
      outline({{x - tip, y},
               {x - tip / 2, y - half},
               {x + tip / 2, y - half},
               {x + tip, y},
               {x + tip / 2, y + half},
               {x - tip / 2, y + half}});
      break;
    case PinKind::damp:

      pen.disc(x, y, radius + 0.2);
      pen.disc(x, y, radius - 0.2, Ink::white);
      break;
  }
  pen.text(x, y + 1.3, mark, {tiny, 700, kind == PinKind::mask ? Ink::white : Ink::black}, Side::middle);
}

double step(Pen& pen, double y, const Step& s) {
  const double right = pen.right();
  pen.line(left_edge, y, left_edge + 25, y, thick, Ink::petrol);
  pen.line(left_edge + 25, y, right, y);
  pen.text(left_edge, y + 8.5, s.clock, {clock_size, 700});
  double side = y + (s.who.empty() ? 12 : 14.5);
  if (!s.who.empty())
    side += pen.text(left_edge, side, s.who, small, Side::left, words_column - left_edge - 3);

  const double room = (s.readings.empty() ? right - (s.ticks > 0 ? 13 : 0) : hand_column - 4) - words_column;
  double at = y + 8.5;
  at += pen.text(words_column, at, s.title, {doing, 600}, Side::left, room);
  for (const Warning& warning : s.warnings) {
    const double height = pen.caution(words_column, at + 0.5, room, warning.words, warning.danger);
    at += std::max(height, 8.0) + 0.5;  // clear of the triangle
  }
  if (!s.warnings.empty()) at += 1;
  for (const std::string& words : s.body) at += pen.text(words_column, at, words, read, Side::left, room);

  if (s.inside) at = s.inside(pen, at - 2.5) + 1.2;

  double hand = y + 1.5;
  for (std::size_t i = 0; i < s.readings.size(); ++i) {
    const double width = right - hand_column - (i == 0 && s.ticks > 0 ? 11 : 0);
    hand += reading_box(pen, hand_column, hand, width, s.readings[i]);
  }
  for (int i = 0; i < s.ticks; ++i) tick(pen, right - tick_side, y + 2.5 + i * 10);
  const double ticked = s.ticks > 0 ? y + 3 + s.ticks * 10 : y;
  double end = std::max({at - 1.2, side - 1.2, hand + 0.5, ticked});
  if (s.more) end = s.more(pen, end + 0.5);
  if (s.masked) pen.line(left_edge - 3, y + 1, left_edge - 3, end - 1, wall_width, Ink::petrol);
  return end;
}

}  // namespace dampward::papers
