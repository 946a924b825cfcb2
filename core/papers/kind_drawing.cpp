#include "core/papers/kind_drawing.h"

#include <algorithm>

namespace dampward::papers {
namespace {

constexpr double most_width = right_edge - left_edge, most_height = 84, column = 93;

const char* sentence_of(PinKind kind) {
  switch (kind) {
    case PinKind::mask:
      return "pin_mask";
    case PinKind::damp:
      return "pin_damp";
    case PinKind::weak:
      return "pin_weak";
    case PinKind::brush:
      return "pin_brush";
    case PinKind::bare:
      break;
  }
  return "pin_never_coat";
}

// The picture as large as its room lets it, in the middle, its pins upon it.
double picture(Pen& pen, double y, const KindDrawing& drawing) {
  const double shape = pen.shape_of(*drawing.image);
  if (shape <= 0) return y;
  const double width = std::min(most_width, most_height * shape), height = width / shape;
  const double x = left_edge + 0.5 * (most_width - width);
  pen.image({x, y + 2, width, height, drawing.image});
  for (const KindDrawing::Pin& each : drawing.pins)
    pin(pen, each.kind, x + each.across * width, y + 2 + each.down * height, each.mark);
  return y + height + 5;
}

double named(Pen& pen, double x, double y, const KindDrawing::Pin& each, const Words& words) {
  constexpr double indent = 8, room = column - indent - 6;
  pin(pen, each.kind, x + 3, y + 3, each.mark);
  return pen.text(x + indent, y + 4.4, words(sentence_of(each.kind), {each.part}), {reading, 400}, Side::left,
                  room) +
         1.4;
}

}  // namespace

void kind_drawing_rows(const KindDrawing& drawing, const Words& words, std::vector<Row>& rows) {
  rows.push_back({[&drawing](Pen& pen, double y) { return picture(pen, y, drawing); }, true, nullptr});
  std::vector<const KindDrawing::Pin*> care;
  for (const KindDrawing::Pin& each : drawing.pins) {
    if (each.kind != PinKind::mask) care.push_back(&each);
  }
  for (std::size_t i = 0; i < care.size(); i += 2) {
    rows.push_back({[i, care, &words](Pen& pen, double y) {
                      double height = named(pen, left_edge, y, *care[i], words);
                      if (i + 1 < care.size())
                        height = std::max(height, named(pen, left_edge + column, y, *care[i + 1], words));
                      return y + height;
                    },
                    true, nullptr});
  }
}

}  // namespace dampward::papers
