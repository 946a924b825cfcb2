#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/papers/measure.h"
#include "core/papers/step_words.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::papers {

// The whole line on the wall: every unit against one axis of time.
struct WallBoard {
  std::string shop;
  Temperature air, dew_point;
  RelativeHumidity humidity;

  enum class Place { bench, oven, box, lacquer, airing };
  struct Bar {
    Place place = Place::bench;
    Instant from, to;
    std::string load;  // of an oven
  };
  struct Next {
    StepKey key;
    Instant starts;
  };
  struct Unit {
    std::string unit, kind;
    std::vector<Bar> bars;                // in order of time
    std::vector<Next> steps;              // all of them, in order of time
    std::vector<Instant> coats;           // when each begins
    std::optional<Instant> opens, shuts;  // the warm window; the last flash must be over by its end
    Instant done;
    std::optional<Date> due;
    bool late = false;
  };
  std::vector<Unit> units;
  struct Refused {
    std::string unit, kind, reason, opens_with;
  };
  std::vector<Refused> refused;
  struct Load {
    std::string id;
    Instant in, out;
  };
  std::vector<Load> loads;
  struct Day {
    Instant from, to;  // first hand in, last hand out
  };
  std::vector<Day> days;  // on which somebody has a hand in the plan
  WallClock clock{std::chrono::seconds(0)};
  std::string plan;  // id and time, as the foot shows it
};

// On the long side, the whole line on one page: in full where there is room, closer where not. What does not fit even so stands in full
// on as many pages as the units take, a week at a time, each with the same axis. Rows are never split.
Pages wall_board(const WallBoard& board, const Paper& paper, const Words& words, const Measure& measure);

}  // namespace dampward::papers
