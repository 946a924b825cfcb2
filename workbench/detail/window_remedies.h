#pragma once

#include <string>
#include <vector>

#include "core/drying/step_down.h"
#include "workbench/detail/unit_window.h"
#include "workbench/window_remedy.h"

namespace dampward::workbench {

// What is known of a unit that found no window.
struct Windowless {
  const KindCase& kind;
  const LoadDraft* load;  // none: dried without heat
  const CoatCase& coat;
  const PaintShop& paint;
  const RulingAir& air;
  Pressure pressure;
};

// Every way to make a window, each reckoned: those that help first, soonest first. `down` is what stepping the load's oven down
// would do; for a unit without load it is not asked.
//   step_down     the load waits in the oven at the hottest the lacquer allows, vent shut, and damp back is counted
//   warm_cabinet  the unit cools in a dry cabinet halfway between the hottest allowed and dew point plus margin
//   dried_air     it cools and is coated in air so dry that all its surfaces keep the margin
//   cooler_place  the same place as cool as it must be, no drier
//   two_passes    the light surfaces in their own window, the heavy ones in theirs, fresh masks between
std::vector<WindowRemedy> window_remedies(const Windowless& unit, const drying::StepDownAnswer& down);

// What the lead is told to do: the remedies that help, in a sentence each; or that none does.
std::string settled_by(const std::vector<WindowRemedy>& remedies);

}  // namespace dampward::workbench
