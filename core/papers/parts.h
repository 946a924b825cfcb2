#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/papers/pen.h"

// The parts a hand writes or ticks in, and the step row they stand in. Each gives the height it took, or the y it ends at.
namespace dampward::papers {

inline constexpr double tick_side = 8, tick_pitch = 9.6;

// A square for a gloved hand, with words at its right, centred on its height. Gives the height.
double tick(Pen& pen, double x, double y, const std::string& words = "", double width = 60);

// A pencil box with its unit inside; what is expected stands over it. The unit ":" is a clock time.
struct Reading {
  std::string label, unit, expect;
};
double reading_box(Pen& pen, double x, double y, double width, const Reading& reading);

// What a pin on a drawing or a line of a list stands for, told by its shape.
enum class PinKind { mask, damp, weak, brush, bare };
void pin(Pen& pen, PinKind kind, double x, double y, const std::string& mark, double radius = 2.7);

struct Warning {
  Danger danger = Danger::any;
  std::string words;
};

// One step: when and who at the left, then what, danger, how and why, and the pencil at the right.
struct Step {
  std::string clock, who;  // `who` may hold line breaks
  std::string title;
  std::vector<Warning> warnings;
  std::vector<std::string> body;  // paragraphs; <b> allowed
  std::vector<Reading> readings;
  int ticks = 1;
  bool masked = false;  // a bar beside the clock: the mask is on over this row
  std::function<double(Pen&, double)> inside = nullptr;  // drawn after the words, right of WORDS
  std::function<double(Pen&, double)> more = nullptr;    // drawn below all, from y; both give where they end
};
// Draws from the row's rule at y and gives where it ends.
double step(Pen& pen, double y, const Step& step);

}  // namespace dampward::papers
