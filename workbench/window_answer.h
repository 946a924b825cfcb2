#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/coating/cooling.h"
#include "core/coating/warm_window.h"
#include "core/quantity/shares.h"
#include "workbench/plan.h"

namespace dampward::workbench {

struct Workshop;

// Which window, and in what air.
struct WindowQuestion {
  std::optional<UnitId> unit;  // of the queue
  std::optional<KindId> kind;  // one unit of it instead; neither: every unit of the queue
  struct Air {
    Temperature temperature;
    RelativeHumidity humidity;
  };
  std::optional<Air> air;  // that lasts; none: what the records let expect
};

// The same from bare figures: surfaces as they leave the oven, and how they are coated. Promise: at least one surface.
struct SurfaceQuestion {
  struct Leaving {
    std::string name;
    Temperature hot;
    Duration time_constant;
  };
  std::vector<Leaving> surfaces;
  materials::Method method = materials::Method::brush;
  Duration one_coat;  // hands-on
  WindowQuestion::Air air;
};

// When one unit may meet lacquer, counted from leaving the oven.
struct UnitWindow {
  std::string what;  // serial or kind, or "the surfaces"
  bool usable = false;
  std::string reason, settle;  // why there is none, or why it dries cold; empty: there is one after an oven
  std::optional<Duration> opens,
      closes;  // the last flash is over by then; none: there is no window, or no oven
  std::string opened_by, closed_by;
  std::optional<Duration> latest_start;  // of the first coat
  std::optional<Duration> trade_opens;   // where "coat while warm" would begin
  int coats = 0;
  std::optional<Duration> work;  // every coat and flash, the last one too
  std::vector<DampBackIn> damp_back;
  std::optional<StepDownHold> held;  // the oven is stepped down first, and times count from leaving it then
  std::vector<WindowRemedy> remedies;
  std::optional<RelativeHumidity>
      dry_enough;  // bare surfaces: the dampest air that gives a window, if this does not
};

struct WindowAnswer {
  std::string basis, lacquer;
  WindowQuestion::Air air;
  Temperature dew_point, floor,
      hottest;                   // surfaces stay between `floor` (dew point plus margin) and `hottest`
  bool hottest_assumed = false;  // the lacquer names none
  std::vector<UnitWindow> windows;
  std::vector<std::string> warnings;
  std::vector<Caution> cautions;
  bool any() const;
};

// The windows of a plan for the same queue, or for one unit of a kind.
// Problems: an unknown kind or unit, and whatever keeps a plan from being made.
Result<WindowAnswer> window_answer(const Workshop& workshop, const records::RecordStore& records,
                                   const WindowQuestion& question);

// Problems: an unknown lacquer, or one not meant for the method.
Result<WindowAnswer> window_answer(const Workshop& workshop, const SurfaceQuestion& question);

}  // namespace dampward::workbench
