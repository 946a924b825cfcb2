#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/result.h"
#include "core/coating/consumption.h"
#include "core/coating/mix_gate.h"
#include "core/coating/mixing.h"
#include "workbench/plan.h"

namespace dampward::workbench {

struct Workshop;

// Everything in the queue that the shop can treat.
struct WholeQueue {};
// So many units of one kind.
struct UnitsOfKind {
  KindId kind;
  int count = 1;
};
// A bare surface.
struct SomeArea {
  Range<Area> area;
};

// What to mix, and with what. Promise: a ratio of 0 or more; coats, film, area, efficiency and amounts above zero.
struct MixQuestion {
  std::variant<WholeQueue, UnitsOfKind, SomeArea> work = WholeQueue{};
  // How an area, or a kind without a shop, is coated; a shop's own queue and kinds go the way its plan sends them.
  materials::Method method = materials::Method::brush;
  std::optional<Range<TransferEfficiency>>
      efficiency;                       // none: of the shop's own gun of that sort, or a brush's
  std::optional<double> thinner_parts;  // to one part of lacquer, by volume; none: the lacquer's own
  std::optional<int> coats;
  std::optional<Range<Length>> film;  // dry, in all
  coating::Measured measured;         // of the mix in hand
};

// The work one stretch of the litres is for.
struct MixWork {
  std::string what;  // the kind's name, or "the area"
  int count = 1;
  materials::Method method = materials::Method::brush;
  Range<Area> area;  // of all of them
  Range<Volume> ready, lacquer, thinner;
};

// What holds for everything put on in one way.
struct MixWay {
  materials::Method method = materials::Method::brush;
  coating::Consumption film;     // coats, films and solids; its litres are those of one piece of the work
  coating::ThinningViews views;  // the mix in hand against the published minimum
  Range<MassShare> trade_non_volatile;  // of the trade's 2:1 mix
  coating::MixGate gate;
};

// How much lacquer and thinner some work takes.
struct MixAnswer {
  std::string basis;  // whose figures: the shop, or the shipped tables
  std::string lacquer, thinner;
  bool thinner_known =
      true;  // false: it is in no table, so its density is taken between those of all solvents
  std::vector<MixWork> works;
  Range<Volume> ready, lacquer_litres, thinner_litres;  // in all, lost overspray included
  std::vector<MixWay> ways;
  std::optional<Duration> pot_life;  // none: one part, it has none
  std::vector<Refusal> left_out;     // what of the queue the shop cannot treat
  std::vector<std::string> warnings;
  std::vector<Caution> cautions;
};

// The litres of a plan for a queue or a kind, so that `mix` and `plan` never differ; of a bare area the same balance. Without a
// shop's records (null) it answers for an area, or a kind's surface, alone.
// Problems: the lacquer in use, or the kind, is not known; the lacquer is not meant for the method; nobody knows what share
// lands; and whatever keeps a plan from being made. Nothing in `works`: the shop can treat none of it.
Result<MixAnswer> mix_answer(const Workshop& workshop, const records::RecordStore* records,
                             const MixQuestion& question);

}  // namespace dampward::workbench
