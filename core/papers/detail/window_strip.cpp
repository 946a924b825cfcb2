#include "core/papers/detail/window_strip.h"

#include <algorithm>
#include <cmath>

#include "core/papers/step_words.h"

namespace dampward::papers {
namespace {

constexpr double bar = 7, side = 23;
constexpr Type name{tiny, 600}, when{value_size, 700}, spared{tiny, 700, Ink::petrol};

}  // namespace

double window_strip(Pen& pen, double x, double y, double width, const StripTimes& t, const StripWords& words,
                    const WallClock& clock) {
  const double from = x + side, to = x + width - side, top = y + 6, under = top + 14.5;
  const auto minutes = [&](Instant time) {
    return std::chrono::duration<double>(time - t.opens).count() / 60;
  };
  const double whole = std::max(1.0, minutes(t.shuts));
  const auto at = [&](Instant time) {
    return from + std::clamp(minutes(time) / whole, 0.0, 1.0) * (to - from);
  };

  pen.area(from, top, to - from, bar);
  pen.line(from, top, to, top);
  pen.line(from, top + bar, to, top + bar);
  pen.wall(from, top + bar / 2, 9, false);
  pen.wall(to, top + bar / 2, 9);

  const double flash = at(t.flash_ends);
  const double spare = std::max(0.0, std::floor(minutes(t.shuts) - minutes(t.flash_ends) + 1e-6));
  const std::string told = words.spare + " " + std::to_string(static_cast<int>(spare)) + thin_space + "min";
  const bool inside = pen.width_of(told, spared) < to - flash - 2;
  if (inside)
    pen.text((flash + to) / 2, top + 4.8, told, spared, Side::middle);
  else
    pen.text(to - 1, y + 4.2, told, spared, Side::right);

  // Names and clocks of coats that stand too close are left to the boxes of the coats themselves.
  double free_from = from;
  const double free_to = inside ? to - 2 : to - 3 - pen.width_of(told, spared);
  for (std::size_t i = 0; i < t.starts.size(); ++i) {
    const double start = at(t.starts[i]);
    pen.area(start, top, std::max(1.2, at(t.ends[i]) - start), bar, Ink::petrol);
    const std::string clock_words = clock_of(t.starts[i], clock), coat = words.coat(static_cast<int>(i) + 1);
    const double room = std::max(pen.width_of(clock_words, when), pen.width_of(coat, name));
    if (start < free_from || start + room > free_to) continue;
    pen.text(start, under, clock_words, when);
    pen.text(start, y + 4.2, coat, name);
    free_from = start + room + 3;
  }
  if (!t.ends.empty()) {
    const double last = at(t.ends.back());
    pen.area(last + 0.2, top + 0.3, std::max(0.0, flash - last - 0.2), bar - 0.6, Ink::white);
    if (pen.width_of(words.flash_off, name) < flash - last - 2)
      pen.text((last + flash) / 2, top + 4.8, words.flash_off, name, Side::middle);
    pen.line(flash, top, flash, top + bar, line_width);
  }
  pen.text(x, y + 4.2, words.opens, name);
  pen.text(x, under, clock_of(t.opens, clock), when);
  pen.text(x + width, y + 4.2, words.shuts, name, Side::right);
  pen.text(x + width, under, clock_of(t.shuts, clock), when, Side::right);
  return under + 2.5;
}

}  // namespace dampward::papers
