#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/charts/alignment.h"
#include "core/papers/pen.h"
#include "core/papers/wall_charts.h"

namespace dampward::papers {

// What stands about the scales of a wall chart.
struct ChartWords {
  std::string name, how;  // the question; how to lay the ruler
  std::string example;    // the worked example in a sentence
  struct Zone {
    std::string act, when;
  };
  std::array<Zone, 3> zones;  // what to do with the number: two walls between them
  std::vector<std::string> notes;
  std::string error;  // how near it reads
};

// The page of one chart. Every text that does not fit its place is remembered, and no page comes of it.
class ChartPage {
 public:
  ChartPage(const Paper& paper, const Words& words, const Measure& measure)
      : page_{paper, {}}, words_(words), pen_(page_, measure) {}

  // Head and foot of the page, and all words under the scales; gives what is left between.
  charts::Frame lay(const ChartWords& told, const ChartFor& of);

  // A name over a scale, in a slot about it, in up to three lines from this baseline on.
  void title(double x, double y, double half_slot, const std::string& words);
  // Marks and figures of a scale, on that side of its line; `bottom`: under it.
  enum class On { left, right, bottom };
  void scale(const charts::Scale& scale, On side, bool line = true);
  // The dashed ruler of the worked example through all three places, and dots on them. Dashes lie under whatever is drawn after
  // them, dots over everything.
  void ruler(const charts::Alignment& chart, double on_first, double on_second);
  void dot(const charts::Place& place);
  void dashes(const charts::Place& from, const charts::Place& to);
  // The answer of the example beside its dot.
  void answer(double x, double y, const std::string& number, const std::string& unit, Side side);
  // A limit across a scale that stands: thick, hatched towards the forbidden end; its words at one side.
  void wall(double x1, double x2, double y, bool above, double words_x, Side side, double width,
            const std::string& words);
  // A small text inside the chart that must stay within so many lines.
  void label(double x, double y, const std::string& words, const Type& type, Side side, double width,
             int lines, double halo = 0);

  Pen& pen() { return pen_; }
  const Words& words() const { return words_; }
  Result<Page> done() &&;

 private:
  // Whether the words keep to so many lines of that width.
  bool holds(const std::string& words, const Type& type, double width, int lines) const;
  // Remembers them where they do not.
  void fits(const std::string& words, const Type& type, double width, int lines);
  double strip(double y, const std::array<ChartWords::Zone, 3>& zones, bool draw);

  Page page_;
  const Words& words_;
  Pen pen_;
  Problems too_long_;
  std::vector<charts::Place> dots_;
};

// A figure as scales and examples print it: as many digits as it needs, three after the point at most.
std::string figure_text(double figure);
// With its unit, not to be parted.
std::string with_unit(double figure, const std::string& unit);
// To one digit after the point; up and down are the safe sides.
double up_to(double figure, double step);
double down_to(double figure, double step);

}  // namespace dampward::papers
