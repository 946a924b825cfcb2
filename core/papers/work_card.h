#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/papers/kind_drawing.h"
#include "core/papers/measure.h"
#include "core/papers/step_words.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"
#include "core/quantity/temperature.h"

namespace dampward::papers {

// What goes with one unit from bench to case.
struct WorkCard {
  std::string unit, kind, shop;
  bool stripped = true;               // and sprayed; else brushed assembled
  Duration spray_hands, brush_hands;  // hands-on time of this way and the other
  std::string way_reason;             // the kind's own, as it was written
  std::vector<std::string> findings;  // as the queue names them
  std::string lacquer;
  int coats = 1;
  Range<Length> wet_coat;  // of each
  Volume amount;           // of lacquer as supplied, all coats
  std::vector<std::string> pots;
  std::string respirator;
  bool transmits = false, semiconductors = false;

  struct Item {
    std::string name, what;
    int count = 1;
  };
  std::vector<Item> removed, mask, tighten, loosen, touch_up, brush, bare;
  std::optional<KindDrawing> drawing;

  struct Line {
    std::string id;  // "r1.coat2"
    StepKey key;
    Instant starts, ends;
    bool hands = true;  // somebody's are needed
    std::vector<std::string> people;
    std::string station;
    std::vector<std::string> hazards;  // ids, each at its first step
  };
  std::vector<Line> lines;  // in order of time

  struct Bake {
    std::string load, oven, weakest;
    Temperature set, peak, limit, holds_from;  // limit: the part's own, before the margin
    Duration hold;
    Instant hold_starts, leaves;
    std::optional<Temperature> stepped_to;
    std::string stays_damp;
  };
  std::optional<Bake> bake;  // none: the dry box

  // From leaving the oven to the end of the last flash.
  struct Warm {
    Instant leaves, opens, shuts, flash_ends;
    std::vector<Instant> starts, ends;  // of the coats
    Instant last_start;                 // no first coat after it
  };
  std::optional<Warm> warm;
  Instant close_from;  // the case, after airing
  Instant done;
  WallClock clock{std::chrono::seconds(0)};
  std::string plan;  // id and time, as the foot shows it
};

// Bench on the first page, oven and lacquer on the next, then what follows; as many pages as that takes.
Pages work_card(const WorkCard& card, const Paper& paper, const Words& words, const Measure& measure);

}  // namespace dampward::papers
