#include "core/papers/detail/room_sketch.h"

#include <algorithm>

#include "core/papers/figures.h"

namespace dampward::papers {
namespace {

constexpr Type small{tiny, 500}, small_name{tiny, 600};

}  // namespace

double room_sketch(Pen& pen, double y, const SafetySheet& sheet, const Words& words) {
  constexpr double room = sketch_width, deepest = 44;
  const double length = std::max(sheet.length.in(metre), 0.1), across = std::max(sheet.width.in(metre), 0.1);
  const double depth = std::clamp(room * std::min(across, length) / std::max(across, length), 30.0, deepest);
  const double x = left_edge;
  pen.box(x, y, room, depth, thick);
  // Ways out: gaps in the wall, an arrow through each.
  const auto arrow = [&](std::vector<std::pair<double, double>> way,
                         std::vector<std::pair<double, double>> tip) {
    pen.stroke({std::move(way), 0.5, Ink::petrol, false, true, false});
    pen.stroke({std::move(tip), 0.5, Ink::petrol, false, false, false});
  };
  const double gun_x = x + 38, gun_y = y + depth * 0.56;
  if (sheet.ways_out >= 1) {
    pen.line(x + 12, y, x + 24, y, 1.8, Ink::white);
    arrow({{gun_x - 4, gun_y - 3}, {x + 18, y + 10}, {x + 18, y + 1}},
          {{x + 16.7, y + 3}, {x + 18, y + 0.6}, {x + 19.3, y + 3}});
    pen.text(x + 26, y + 6, words("safety_door", {"1"}), small_name);
  }
  if (sheet.ways_out >= 2) {
    const double door = y + depth - 13;
    pen.line(x + room, door, x + room, door + 10, 1.8, Ink::white);
    arrow({{gun_x + 4, gun_y + 1}, {x + 58, door + 5}, {x + room - 1, door + 5}},
          {{x + room - 3, door + 3.7}, {x + room - 0.6, door + 5}, {x + room - 3, door + 6.3}});
    pen.text(x + room - 3, door + 1, words("safety_door", {"2"}), small_name, Side::right);
  }
  pen.disc(gun_x, gun_y, 3);
  pen.disc(gun_x, gun_y, 2.5, Ink::white);
  pen.text(gun_x, gun_y + 7.5, words("safety_here"), small, Side::middle);
  pen.hatch(x, y + depth - 14, 4, 11, 1.6);
  pen.box(x, y + depth - 14, 4, 11, 0.5);
  pen.text(x + 6, y + depth - 3, words("safety_fan_low"), small);
  const double low = y + depth + 4.5;
  const std::string a = with_unit(std::max(length, across), 1, "m"),
                    b = with_unit(std::min(length, across), 1, "m");
  return low - 3 + pen.text(x, low, words("safety_room_size", {a, b}), {reading, 500}, Side::left, room);
}

}  // namespace dampward::papers
