#include "core/papers/detail/mask_rows.h"

#include <algorithm>

#include "core/papers/parts.h"

namespace dampward::papers {
namespace {

constexpr double column = 93, width = 87, words = 8, on = width - 18, off = width - 8.5;
constexpr Type read{reading, 400};

double item(Pen& pen, double x, double y, std::size_t number, const std::string& text) {
  pin(pen, PinKind::mask, x + 3, y + 4, std::to_string(number));
  const double room = on - 3 - words, height = pen.height_of(text, read, room), more = height - lead(reading);
  pen.text(x + words, y + 5.6 - std::min(more, lead(reading)) / 2, text, read, Side::left, room);
  for (const double at : {on, off}) tick(pen, x + at, y);
  return std::max(tick_pitch, height + 2.6);
}

}  // namespace

void mask_rows(const std::vector<std::string>& items, const OnOff& names, std::vector<Row>& rows) {
  if (items.empty()) return;
  rows.push_back({[names, two = items.size() > 1](Pen& pen, double y) {
                    for (const double x : {left_edge, left_edge + column}) {
                      if (x > left_edge && !two) continue;
                      pen.text(x + on + tick_side, y + 3, names.on, {tiny, 600}, Side::right);
                      pen.text(x + off, y + 3, names.off, {tiny, 600});
                    }
                    return y + 4.5;
                  },
                  true, nullptr});
  for (std::size_t i = 0; i < items.size(); i += 2) {
    rows.push_back({[i, items](Pen& pen, double y) {
                      double height = item(pen, left_edge, y, i + 1, items[i]);
                      if (i + 1 < items.size())
                        height = std::max(height, item(pen, left_edge + column, y, i + 2, items[i + 1]));
                      return y + height;
                    },
                    false, nullptr});
  }
}

}  // namespace dampward::papers
