#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>

namespace dampward::shop {

// What a change of the shop may cost it.
enum class Cost {
  measuring,   // finding out what one part stands, on a hot plate
  thinning,    // mixing a lacquer otherwise
  moving,      // something hot moved elsewhere
  lamp,        // one lamp more
  setting,     // a thermostat that reaches further
  power_hour,  // an oven an hour longer under power each day
  shift_hour,  // one person an hour longer each working day
  person,      // one more person
  training,    // somebody who learns a skill
  station,     // one more place for a kind of work
  fan,         // 1 m³/min of fresh air more
  lifting,     // a lifting aid that takes 10 kg more
  kilowatt,    // a generator that gives 1 kW more
  dry_air,     // dried air for the spray place
  nozzle,      // a smaller nozzle for a gun
  brush,       // a brush
  cleaner,     // a cleaner
  lacquer,     // another lacquer with its thinner
  way_out,     // a second door
};

struct CostRow {
  Cost cost;
  std::string_view word;  // its key under [costs]
  double usual;           // in hours of work; an estimate of this project, to set one change before another
  std::string_view what;  // "one lamp more"
};
// All of them, in the order of the enumeration.
std::span<const CostRow> cost_rows();

// What changes cost this shop, in a unit of its own. What it does not say is the usual figure, an estimate, which only fits the
// usual unit: a shop that keeps its books in another one says all it wants compared.
struct Costs {
  std::string unit = "hours of work";
  std::map<Cost, double> own;

  double of(Cost cost) const;
  bool is_estimate(Cost cost) const { return !own.contains(cost); }
};

}  // namespace dampward::shop
