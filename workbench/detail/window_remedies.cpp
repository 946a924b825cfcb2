#include "workbench/detail/window_remedies.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/moist_air/humid_air.h"

namespace dampward::workbench {
namespace {

using coating::WarmWindow;

// No dryer of a workshop gets a room drier, nor a cooler one colder: estimates.
constexpr int driest_percent = 20, coldest_celsius = 18;

std::string minutes(Duration t) {
  return fixed(std::ceil(t.in(minute)), 0) + " min";
}
std::string degrees(Temperature t) {
  return fixed(t.celsius(), 0) + " °C";
}

// Drops a last full stop: the sentence goes on.
std::string open_ended(std::string sentence) {
  if (sentence.ends_with('.')) sentence.pop_back();
  return sentence;
}

WindowRemedy helps(std::string way, const WarmWindow& window, Duration before, std::string words,
                   std::string occupies) {
  WindowRemedy remedy{std::move(way),        true,         std::move(words),
                      before + window.opens, std::nullopt, std::move(occupies)};
  if (window.closes) remedy.open_for = *window.closes - window.opens;
  return remedy;
}
WindowRemedy no_help(std::string way, const std::string& why) {
  return {std::move(way), false, why, std::nullopt, std::nullopt, ""};
}
WindowRemedy no_help(std::string way, const std::string& what, const WarmWindow& window,
                     const coating::CoatingWork& work) {
  return no_help(std::move(way), what + " does not help. " + coating::words(window, work));
}

WindowCase case_in(const Windowless& unit, const LoadDraft* load, const RulingAir& air) {
  return window_case(unit.kind, load, unit.coat, unit.paint, air);
}

WindowRemedy by_step_down(const Windowless& unit, const drying::StepDownAnswer& answer) {
  if (const auto* no = std::get_if<drying::NoStepDown>(&answer)) {
    return no_help("step_down",
                   format("The {} cannot be stepped down: {}.", unit.load->oven->name, no->reason));
  }
  const drying::StepDown& down = std::get<drying::StepDown>(answer);
  LoadDraft held = *unit.load;
  held.held = LoadDraft::Held{down, longest_held(held.bake, down, {&unit.kind})};
  const WarmWindow window = case_in(unit, &held, unit.air).window();
  const std::string what = format("Holding the load at {} in the {}", degrees(down.set), held.oven->name);
  if (!window.usable()) return no_help("step_down", what, window, unit.coat.work);
  return helps(
      "step_down", window, down.takes,
      format("Step the {} down to {}; {} later shut its vent and take units out one by one, within {}, from "
             "air of {} % humidity.",
             held.oven->name, degrees(down.set), minutes(down.takes), minutes(held.held->at_most),
             fixed(std::ceil(down.humidity.percent()), 0)),
      format("the {}, until the last unit is out", held.oven->name));
}

WindowRemedy by_cabinet(const Windowless& unit) {
  WindowCase in_cabinet = case_in(unit, unit.load, unit.air);
  const WarmWindow now = in_cabinet.window();
  const Temperature hottest = in_cabinet.rules.hottest;
  const Temperature cabinet = now.floor + 0.5 * (hottest - now.floor);
  if (cabinet <= unit.air.warmest) {
    return no_help("warm_cabinet",
                   format("A cabinet at {} would be no warmer than the shop.", degrees(cabinet)));
  }
  // The heaviest iron falls towards the cabinet's air as it would towards the shop's.
  const drying::PieceBake& piece = piece_in(unit.load->bake, unit.kind.kind->id);
  const Temperature hot = unit.load->bake.set + unit.load->bake.excess.sum();
  const coating::Surface iron{"", coating::LumpedCooling{hot, cabinet, piece.heavy_cooling.high}};
  const Duration takes = iron.at_or_below(hottest).value_or(Duration{});
  in_cabinet.surfaces = cooling_surfaces(piece, hottest, cabinet, unit.air);
  const WarmWindow window = in_cabinet.window();
  const std::string what = format("A dry cabinet at {}", degrees(cabinet));
  if (!window.usable()) return no_help("warm_cabinet", what, window, unit.coat.work);
  return helps("warm_cabinet", window, takes,
               format("{}, with desiccant, for {} from the oven, then the gun.", what, minutes(takes)),
               format("a cabinet apart from the oven, {} for each unit", minutes(takes)));
}

// The unit's case were the air no damper than this humidity at this temperature, and no hotter or damper than it is.
RulingAir air_at(const RulingAir& now, Temperature warmest, RelativeHumidity humidity, Pressure pressure) {
  RulingAir air = now;
  air.warmest = std::min(now.warmest, warmest);
  air.temperature = std::min(now.temperature, warmest);
  air.coolest = std::min(now.coolest, warmest);
  air.dew_point = std::min(now.dew_point, moist_air::dew_point({air.warmest, humidity, pressure}));
  air.humidity = std::min(RelativeHumidity::percent(100),
                          moist_air::from_dew_point(air.temperature, air.dew_point, pressure).humidity);
  return air;
}

// The dampest air of this temperature that leaves a window, to a whole per cent; none: not even the driest.
struct DampEnough {
  int percent = 0;
  WarmWindow window;
};
std::optional<DampEnough> dampest_with_window(const Windowless& unit, Temperature place) {
  std::optional<DampEnough> found;
  int dry = driest_percent, damp = 100;
  while (dry <= damp) {
    const int percent = (dry + damp) / 2;
    const RulingAir air = air_at(unit.air, place, RelativeHumidity::percent(percent), unit.pressure);
    const WarmWindow window = case_in(unit, unit.load, air).window();
    if (window.usable()) found = DampEnough{percent, window};
    (window.usable() ? dry : damp) = window.usable() ? percent + 1 : percent - 1;
  }
  return found;
}

WindowRemedy by_dried_air(const Windowless& unit) {
  if (const auto found = dampest_with_window(unit, unit.air.warmest)) {
    return helps("dried_air", found->window, Duration{},
                 format("Cool and coat it in air of {} % humidity or less at {}.", found->percent,
                        degrees(unit.air.warmest)),
                 "a room with a dryer, until the last flash is over");
  }
  const RulingAir driest =
      air_at(unit.air, unit.air.warmest, RelativeHumidity::percent(driest_percent), unit.pressure);
  return no_help("dried_air", format("Air of {} %", driest_percent),
                 case_in(unit, unit.load, driest).window(), unit.coat.work);
}

// The warmest place, to a whole degree, in which some humidity leaves a window: no drier than it must be.
WindowRemedy by_cooler_place(const Windowless& unit) {
  for (int celsius = static_cast<int>(std::ceil(unit.air.warmest.celsius())) - 1; celsius >= coldest_celsius;
       --celsius) {
    const Temperature place = Temperature::celsius(celsius);
    const auto found = dampest_with_window(unit, place);
    if (!found) continue;
    const std::string damp = found->percent >= 100 ? std::string("no damper than now")
                                                   : format("has {} % humidity or less", found->percent);
    return helps("cooler_place", found->window, Duration{},
                 format("Coat where, or when, the air is no hotter than {} and {}.", degrees(place), damp),
                 "a cooled room, or the cool dry hours of the day");
  }
  return no_help("cooler_place",
                 format("No air down to {} °C and {} % leaves a window.", coldest_celsius, driest_percent));
}

WindowRemedy by_two_passes(const Windowless& unit) {
  const WindowCase whole = case_in(unit, unit.load, unit.air);
  WarmWindow first, second;
  for (std::size_t i = 0; i < whole.surfaces.size(); ++i) {
    WindowCase alone = whole;
    alone.surfaces = {whole.surfaces[i]};
    const WarmWindow window = alone.window();
    if (!window.usable()) {
      return no_help("two_passes", "Coating light and heavy surfaces apart", window, whole.work);
    }
    (i == 0 ? second : first) = window;
  }
  const Duration begins = std::max(second.opens, first.opens + whole.work.whole());
  if (second.closes && begins + whole.work.whole() > *second.closes) {
    return no_help("two_passes",
                   "Coating light and heavy surfaces apart does not help: one pass after the other "
                   "takes longer than the heavy ones stay warm.");
  }
  return helps(
      "two_passes", first, Duration{},
      format(
          "Coat the light surfaces from {} on, the heavy ones covered; uncover them, cover what is coated, "
          "and coat them from {} on.",
          minutes(first.opens), minutes(begins)),
      format("the gun twice, and hands for fresh masks; {} from the oven to the last flash",
             minutes(begins + whole.work.whole())));
}

}  // namespace

std::vector<WindowRemedy> window_remedies(const Windowless& unit, const drying::StepDownAnswer& down) {
  std::vector<WindowRemedy> remedies;
  if (unit.load != nullptr) {
    remedies = {by_step_down(unit, down), by_cabinet(unit), by_two_passes(unit)};
  }
  remedies.push_back(by_dried_air(unit));
  remedies.push_back(by_cooler_place(unit));
  std::stable_sort(remedies.begin(), remedies.end(), [](const WindowRemedy& a, const WindowRemedy& b) {
    if (a.opens != b.opens) return a.opens;
    return a.opens && *a.first_coat_after < *b.first_coat_after;
  });
  return remedies;
}

std::string settled_by(const std::vector<WindowRemedy>& remedies) {
  std::string told;
  for (const WindowRemedy& remedy : remedies) {
    if (!remedy.opens) continue;
    told += (told.empty() ? "" : "; or: ") + open_ended(remedy.words);
  }
  return told.empty() ? "Nothing a shop can do to its air or oven opens one: take another lacquer, or ask "
                        "less of the part that "
                        "dries last."
                      : told + ".";
}

}  // namespace dampward::workbench
