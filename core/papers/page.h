#pragma once

#include <memory>
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

// The side of a printed code, and what it may hold before its dark squares become too small for a copier (0.6 mm).
inline constexpr double code_size = 29;
inline constexpr std::size_t longest_code = 60;

enum class Side { left, middle, right };

struct Type {
  double points = reading;
  int weight = 400;  // 400 to 700
  Ink ink = Ink::black;
  bool columns = false;  // figures of one width, where they stand under one another
  double pitch = 0;      // from baseline to baseline; 0: as its size asks
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

// A ground without an outline.
struct Area {
  double x = 0, y = 0, width = 0, height = 0;
  Ink ink = Ink::tint;
};

// A QR code (ISO/IEC 18004, level Q) in a square with its quiet zone inside. Text: at most `longest_code` bytes.
struct Code {
  double x = 0, y = 0, size = code_size;
  std::string text;
};

// A drawing or photograph, stretched into its box.
struct Image {
  double x = 0, y = 0, width = 0, height = 0;
  std::shared_ptr<const std::string> bytes;  // SVG, PNG or JPEG that `Measure` knows the shape of
};

using Mark = std::variant<Text, Stroke, Disc, Hatch, Area, Code, Image>;

struct Paper {
  double width = 210, height = 297;
};
inline constexpr Paper a4{210, 297}, us_letter{215.9, 279.4};
// The same paper on its long side.
constexpr Paper landscape(const Paper& paper) {
  return {paper.height, paper.width};
}

struct Page {
  Paper paper;
  std::vector<Mark> marks;
};

using Pages = std::vector<Page>;

// All that stands on the pages, as text: the same for the same marks, and only for them.
std::string content_of(const Pages& pages);

// Distance from baseline to baseline, as a size of type asks for, or as the type says.
double lead(double points);
double lead(const Type& type);

}  // namespace dampward::papers
