#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/coating/cooling.h"
#include "core/materials/liquid.h"
#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::coating {

// The air of the place where the coat goes on, taken as steady while the window lasts.
struct ShopAir {
  Temperature temperature;
  Temperature dew_point;
  RelativeHumidity humidity;
};

// Between which temperatures a surface may be coated.
struct WindowRules {
  Temperature hottest;
  bool hottest_assumed = false;  // the lacquer names none: the 32 °C of general painting manuals stands in
  TemperatureStep dew_margin;
  std::optional<Temperature> coldest;
  std::optional<Range<RelativeHumidity>>
      humidity_top;  // published ceilings: they disagree, so air above them warns and the dew point decides
};
// Hottest surface of general painting. Source: MIL-HDBK-1110 and TM 55-1500-345-23, 90 °F (read).
inline constexpr Temperature general_hottest_surface = Temperature::celsius(32);
WindowRules window_rules(const materials::Lacquer& lacquer);

// What must fit inside: every coat and the flash after each, the last one too.
struct CoatingWork {
  int coats = 1;
  Duration one_coat;  // hands-on
  Duration one_flash;
  Duration whole() const { return coats * (one_coat + one_flash); }
};
// The work by a method with the longest flash of its rule; none: the lacquer is not meant for that method.
std::optional<CoatingWork> coating_work(const materials::Lacquer& lacquer, materials::Method method,
                                        Duration one_coat);

enum class Opens {
  on_leaving_the_oven,  // already at or under the hottest surface
  hottest_surface,      // as soon as this surface has cooled to it
};
enum class Closes {
  never,            // the margin never runs out: the air itself lies above dew point plus margin
  dew_margin,       // this surface comes down to dew point plus margin
  coldest_surface,  // this surface comes down to the lacquer's coldest
  damp_back,        // so much damp is back in this part that the drying would have been for little
};
enum class Shut {
  no,
  room_too_hot,      // this surface never cools to the hottest allowed: the air is not below it
  dew_too_high,      // dew point plus margin lies at or above the hottest surface: no temperature fits
  surface_too_cold,  // this surface lacks the margin from the start: bring it in warm
  surfaces_disagree,  // the light one has lost its margin, or a part its dryness, before the heavy one has cooled
  work_too_long,      // a window, but too short for all coats and flashes
};

// The slow part that takes damp back first, where one does: the last flash must be over before too much of it is back.
struct DampBack {
  std::string part;
  Duration too_much;  // after leaving the oven
};

// Times count from leaving the oven. Every coat and flash must lie between `opens` and `closes`.
struct WarmWindow {
  Shut shut = Shut::no;
  std::string shut_by;  // surface that shuts it; empty where none is to blame
  Duration opens;
  Opens opened = Opens::on_leaving_the_oven;
  std::string opened_by;           // surface that set it
  std::optional<Duration> closes;  // none: never runs out
  Closes closed = Closes::never;
  std::string closed_by;                 // surface or part that set it
  bool margin_lasts = false;             // no surface ever comes down to `floor` in this air
  std::optional<Duration> latest_start;  // last moment for the first coat that leaves room for all the work
  Temperature floor;  // dew point plus margin, or the lacquer's coldest where that is higher
  std::vector<std::string> warnings;
  bool usable() const { return shut == Shut::no; }
};

// Promise: at least one surface.
WarmWindow warm_window(std::span<const Surface> surfaces, const ShopAir& air, const WindowRules& rules,
                       const CoatingWork& work, const std::optional<DampBack>& damp_back = {});

// Common practice coats while the unit is warm from the oven; the published limit makes it wait. Both are shown, the window
// keeps the published one.
struct WarmCoatViews {
  Temperature at_once;    // hottest surface on leaving the oven, where the trade would begin
  Duration trade_begins;  // at once
  std::optional<Duration> published_begins;  // none: never, in this air
  bool disagree = false;
  std::string view;  // both in one sentence
};
WarmCoatViews warm_coat_views(std::span<const Surface> surfaces, const WindowRules& rules);

// The window, or what shuts it, in a sentence or two.
std::string words(const WarmWindow& window, const CoatingWork& work);

}  // namespace dampward::coating
