#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/quantity/shares.h"
#include "workbench/plan.h"

namespace dampward::workbench {

struct Workshop;

// The air of the shop.
struct AskedAir {
  Temperature temperature;
  RelativeHumidity humidity;
};

// One load. Either units of the queue, or so many of one kind.
struct BakeQuestion {
  std::vector<UnitId> units;
  KindId kind;
  int count = 1;
  std::optional<OvenId> oven;   // none: every oven of the shop
  std::optional<AskedAir> air;  // none: what the shop's records let expect
};

// What one oven does with the load.
struct OvenBake {
  OvenId oven;
  std::string name;
  bool bakes = false;
  std::string reason, settle;  // why it does not, and what would help; empty where it does
  Temperature set_point;
  Duration warm_up;              // until the slowest asked part is at temperature, wet surfaces first
  Duration hold, hold_nominal;   // on the safe side of every range; with typical figures
  std::optional<Duration> rule;  // the trade's linear rule; none outside 49 to 71 °C
  std::string weakest,
      slowest;             // the part that allows least; that sets the hold (empty: nothing is waited for)
  TemperatureStep excess;  // of the hottest place over the setting: evenness, swing, lamps
  std::vector<PartInOven> parts;
  RelativeHumidity dampest, at_end;  // of the oven's air
  Mass water;                        // driven off surfaces at most
  Energy energy;                     // typical
  std::optional<Duration>
      watched;  // longest stretch with power and somebody within call; none: no crew to ask
  std::vector<std::string> warnings;
  Duration in_oven() const { return warm_up + hold; }
  bool in_time() const { return !watched || in_oven() <= *watched; }
};

struct BakeAnswer {
  std::string basis;
  AskedAir air;
  struct Line {
    std::string kind_name;
    int count = 0;
  };
  std::vector<Line> load;
  std::vector<OvenBake> ovens;    // quickest first, then those that do not bake it
  std::vector<Refusal> left_out;  // what may not be heated at all
  std::vector<Caution> cautions;
  bool any() const;
};

// One load in each oven asked for, with the bake a plan would reckon for the same units. `records` (null: none) name the queue's
// units and the air.
// Problems: an unknown oven, kind or unit; a shop without ovens; nothing known of the air.
Result<BakeAnswer> bake_answer(const Workshop& workshop, const records::RecordStore* records,
                               const BakeQuestion& question);

}  // namespace dampward::workbench
