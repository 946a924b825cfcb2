#pragma once

#include <string>
#include <utility>
#include <variant>
#include <vector>

// A printed page as marks at places. Places and sizes are millimetres from the top left corner, type is in points (1/72 inch): the
// two units a printer's trade uses, bare because nothing else stands here.
namespace dampward::papers {

// Black, one colour that survives a grey copier, a quiet grey for names, the ground of a strip.
enum class Ink { black, petrol, plain, tint, white };

// Widths of lines that survive a copier; thinner ones do not.
inline constexpr double hair = 0.2, line_width = 0.35, thick = 0.8, wall_width = 1.2;

// The sizes of type there are.
inline constexpr double tiny = 10, reading = 12, doing = 14, value_size = 18, clock_size = 24, name_size = 32,
                        huge = 56;

enum class Side { left, middle, right };

struct Type {
  double points = reading;
  int weight = 400;  // 400 to 700
  Ink ink = Ink::black;
  bool columns = false;  // figures of one width, where they stand under one another
};

// A stretch of text in one weight. `unit` is set smaller and never parted from what stands before it.
struct Run {
  std::string text;
  int weight = 0;  // 0: the type's own
  bool unit = false;
};
using Runs = std::vector<Run>;

// Text from its first baseline on; with a width it is broken at blanks, line under line.
struct Text {
  double x = 0, y = 0;
  Runs runs;
  Type type;
  Side side = Side::left;
  double width = 0;  // 0: one line
  double halo = 0;   // white ground about it, over lines
};

struct Stroke {
  std::vector<std::pair<double, double>> points;
  double width = line_width;
  Ink ink = Ink::black;
  bool closed = false, dashed = false, filled = false;  // filled: with white
};

struct Disc {
  double x = 0, y = 0, radius = 0;
  Ink ink = Ink::black;
};

// Strokes at 45 degrees inside a box: not here.
struct Hatch {
  double x = 0, y = 0, width = 0, height = 0, step = 1.6;
};

using Mark = std::variant<Text, Stroke, Disc, Hatch>;

struct Paper {
  double width = 210, height = 297;
};
inline constexpr Paper a4{210, 297}, us_letter{215.9, 279.4};

struct Page {
  Paper paper;
  std::vector<Mark> marks;
};

// Distance from baseline to baseline.
double lead(double points);

}  // namespace dampward::papers
