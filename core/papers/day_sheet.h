#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/papers/measure.h"
#include "core/papers/step_words.h"
#include "core/quantity/quantity.h"

namespace dampward::papers {

// What one person does and where, day by day.
struct DaySheet {
  std::string person, role, shop;  // id and name

  // Of the warm window, for who takes a unit out or coats it.
  struct Window {
    Instant opens, shuts;   // the last flash must be over by then
    Instant no_coat_after;  // this coat and all that follow it still fit
  };
  struct Row {
    StepKey key;  // its code empty: mixing a pot
    Instant starts, ends;
    std::string unit, kind, station;
    std::vector<std::string> others;   // who is at it too
    std::vector<std::string> hazards;  // ids, each at its first row of the day
    bool masked = false;
    std::optional<Window> window = {};
    std::string pot = {};
    Volume mix = {};  // of the pot
  };
  // Hands are free.
  struct Gap {
    enum class Kind { meal, nothing, call };  // a break, nothing planned, within call of an oven
    Instant from, to;
    Kind kind = Kind::nothing;
    bool masked = false;
  };
  // What the person breathes, as times the limit without a respirator.
  struct Air {
    std::optional<double> whole_day, worst_quarter;  // none: not known
    std::optional<double> factor;                    // of the respirator; none: none is needed for vapour
    bool supplied = false;
    bool against_mist = false;
  };
  struct Day {
    Instant begins, ends;
    std::optional<Instant> mask_on, mask_off;  // first and last of the day
    std::vector<Row> rows;                     // in order of time
    std::vector<Gap> gaps;
    std::optional<Air> air;  // none: nobody has reckoned it
  };
  std::vector<Day> days;
  WallClock clock{std::chrono::seconds(0)};
  std::string plan;  // id and time, as the foot shows it
};

// A page or more for each day, in order.
Pages day_sheet(const DaySheet& sheet, const Paper& paper, const Words& words, const Measure& measure);

}  // namespace dampward::papers
