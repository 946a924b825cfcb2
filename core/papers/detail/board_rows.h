#pragma once

#include <functional>

#include "core/papers/detail/time_axis.h"
#include "core/papers/pen.h"
#include "core/papers/wall_board.h"

namespace dampward::papers {

struct BoardRow {
  double height = 0;
  std::function<void(Pen&, double)> draw;
};

// The rows of a wall board against one axis. `tallest` units stand in full, with the window's times in words; lower ones are closer:
// one line a unit, so that the whole line fits one page.
class BoardRows {
 public:
  static constexpr double tallest = 15.2, lowest = 7.8;

  // Room at the right of the axis: for what comes next and, where rows are close, when the window shuts.
  static double next_width(bool close) { return close ? next_alone + 22 : 44; }
  static constexpr double next_alone = 35;

  // The axis must outlive it; `height` is of one unit's row.
  BoardRows(const WallBoard& board, const Words& words, const TimeAxis& axis, double right, double height)
      : board_(board), words_(words), axis_(axis), right_(right), height_(height) {}

  BoardRow unit(Pen& learning, const WallBoard::Unit& unit) const;
  BoardRow refused(Pen& learning, const WallBoard::Refused& refused) const;

 private:
  bool close() const { return height_ < tallest; }
  Instant begins() const { return axis_.days().front().from; }
  Instant ends() const { return axis_.days().back().to; }
  bool today(Instant time) const { return time >= begins() && time <= ends(); }
  std::string clock(Instant time) const { return clock_of(time, board_.clock); }
  std::string day(Instant time) const { return weekday_name(words_, time, board_.clock); }
  Date date(Instant time) const;
  double bar_height() const { return close() ? 0.52 * height_ : 5.6; }
  double bar_top() const { return close() ? 0.9 : 1.8; }

  double caption(Pen& pen, double y, const std::string& unit, const std::string& kind) const;
  double next(Pen& pen, double y, const WallBoard::Unit& unit) const;
  void bar(Pen& pen, double y, const WallBoard::Unit& unit, const WallBoard::Bar& bar) const;
  bool stands_free(const WallBoard::Unit& unit, double from, double to) const;
  void window(Pen& pen, double y, const WallBoard::Unit& unit) const;

  double refusal(Pen& pen, double y, const WallBoard::Refused& refused) const;

  const WallBoard& board_;
  const Words& words_;
  const TimeAxis& axis_;
  double right_, height_;
};

}  // namespace dampward::papers
