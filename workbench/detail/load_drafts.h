#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drying/step_down.h"
#include "core/moist_air/humid_air.h"
#include "workbench/detail/kind_case.h"

namespace dampward::workbench {

// Units that go into one oven together.
struct LoadDraft {
  // The oven stepped down after the bake, and the load held there until its units are called for.
  struct Held {
    drying::StepDown down;
    Duration at_most;  // until too much damp is back
  };

  std::string id;
  const shop::Oven* oven = nullptr;
  std::vector<std::size_t> units;  // places in the list of units handed in
  drying::BakePlan bake;
  std::optional<Held> held = {};  // none: units leave hot

  // From closing the door until the first unit may leave.
  Duration in_oven() const { return bake.in_oven() + (held ? held->down.takes : Duration{}); }
};

// A unit joins a load only while nobody in it waits more than so much longer than alone: an estimate of a lead's patience.
inline constexpr double longest_wait = 1.25;
// The gun takes the units of a load one after another while the others wait warm: more than these are a second load.
inline constexpr std::size_t most_units = 6;

// Groups units, first due first, into loads. `cases` holds the kind case of each unit; every one has an oven. Ovens are
// shared out so that none is given much more baking time than the others. Units of a load keep their order.
std::vector<LoadDraft> draft_loads(const std::vector<const KindCase*>& cases, const Workshop& workshop,
                                   const moist_air::HumidAir& air);

// The same units as loads of half the size, for a load that found no time in the day.
std::vector<LoadDraft> halved(const LoadDraft& load, const std::vector<const KindCase*>& cases,
                              const Workshop& workshop, const moist_air::HumidAir& air);

// What stepping the load's oven down to the hottest the lacquer allows would do.
drying::StepDownAnswer stepped_down(const LoadDraft& load, const std::vector<const KindCase*>& cases,
                                    const Workshop& workshop, const moist_air::HumidAir& air,
                                    Temperature hottest);

// These units (places in `cases`) together in one oven, as somebody has put them there; nothing where it does not bake them.
std::optional<LoadDraft> load_in(const std::string& id, const shop::Oven& oven,
                                 std::vector<std::size_t> units, const std::vector<const KindCase*>& cases,
                                 const Workshop& workshop, const moist_air::HumidAir& air);

}  // namespace dampward::workbench
