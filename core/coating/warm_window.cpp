#include "core/coating/warm_window.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/promise.h"

namespace dampward::coating {
namespace {

std::string minutes(Duration t) {
  return fixed(t.in(minute), 0) + " min";
}
std::string degrees(Temperature t) {
  return fixed(t.celsius(), 1) + " °C";
}

// What ends a window that ends.
std::string end_of(const WarmWindow& window) {
  switch (window.closed) {
    case Closes::never:
      break;
    case Closes::dew_margin:
      return format("{} is down to {} (dew point plus margin)", window.closed_by, degrees(window.floor));
    case Closes::coldest_surface:
      return format("{} is down to {} (the lacquer's coldest surface)", window.closed_by,
                    degrees(window.floor));
    case Closes::damp_back:
      return format("too much damp is back in {}", window.closed_by);
  }
  return "it ends";
}

void open(WarmWindow& window, const Surface& surface, Temperature hottest) {
  const std::optional<Duration> cooled = surface.at_or_below(hottest);
  if (!cooled) {
    window.shut = Shut::room_too_hot;
    window.shut_by = surface.name;
    return;
  }
  if (*cooled > window.opens) {
    window.opens = *cooled;
    window.opened = Opens::hottest_surface;
    window.opened_by = surface.name;
  }
}

void close(WarmWindow& window, const Surface& surface, Closes reason) {
  // From leaving the oven on: a surface that has ever lost its margin may be wet.
  const std::optional<Duration> lost = surface.colder_than(window.floor, Duration{});
  if (lost && (!window.closes || *lost < *window.closes)) {
    window.closes = lost;
    window.closed = reason;
    window.closed_by = surface.name;
  }
}

void close(WarmWindow& window, const DampBack& damp_back) {
  if (window.closes && *window.closes <= damp_back.too_much) return;
  window.closes = damp_back.too_much;
  window.closed = Closes::damp_back;
  window.closed_by = damp_back.part;
}

void warn(WarmWindow& window, const ShopAir& air, const WindowRules& rules) {
  if (rules.hottest_assumed) {
    window.warnings.push_back("The lacquer names no hottest surface: 32 °C of general painting is used.");
  } else if (rules.hottest > general_hottest_surface) {
    window.warnings.push_back(
        format("The lacquer allows surfaces up to {}; general painting manuals stop at 32 °C.",
               degrees(rules.hottest)));
  }
  if (rules.humidity_top && air.humidity > rules.humidity_top->low) {
    const char* advice =
        air.humidity > rules.humidity_top->high
            ? " It is above them all: expect blush and slow drying; dry the air, or wait for a drier hour."
            : "";
    window.warnings.push_back(
        format("The air is at {} % humidity; published ceilings for this lacquer run from {} to {} %.{}",
               fixed(air.humidity.percent(), 0), fixed(rules.humidity_top->low.percent(), 0),
               fixed(rules.humidity_top->high.percent(), 0), advice));
  }
}

}  // namespace

WindowRules window_rules(const materials::Lacquer& lacquer) {
  WindowRules rules;
  rules.hottest = lacquer.hottest_surface.value_or(general_hottest_surface);
  rules.hottest_assumed = !lacquer.hottest_surface;
  rules.dew_margin = lacquer.dew_margin;
  rules.coldest = lacquer.coldest_surface;
  rules.humidity_top = lacquer.humidity_top;
  return rules;
}

std::optional<CoatingWork> coating_work(const materials::Lacquer& lacquer, materials::Method method,
                                        Duration one_coat) {
  for (const materials::CoatRule& rule : lacquer.coats) {
    if (rule.method == method) return CoatingWork{rule.coats, one_coat, rule.flash.high};
  }
  return std::nullopt;
}

WarmWindow warm_window(std::span<const Surface> surfaces, const ShopAir& air, const WindowRules& rules,
                       const CoatingWork& work, const std::optional<DampBack>& damp_back) {
  DAMPWARD_PROMISE(!surfaces.empty(), "a unit to coat has a surface");
  WarmWindow window;
  window.floor = air.dew_point + rules.dew_margin;
  Closes reason = Closes::dew_margin;
  if (rules.coldest && *rules.coldest > window.floor) {
    window.floor = *rules.coldest;
    reason = Closes::coldest_surface;
  }
  warn(window, air, rules);
  for (const Surface& surface : surfaces) {
    open(window, surface, rules.hottest);
    close(window, surface, reason);
    if (!window.usable()) break;
  }
  window.margin_lasts = window.usable() && !window.closes;
  if (damp_back) close(window, *damp_back);
  if (window.floor >= rules.hottest) {
    window.shut = Shut::dew_too_high;
    window.shut_by.clear();
  }
  if (!window.usable() || !window.closes) return window;
  if (*window.closes <= window.opens) {
    window.shut = *window.closes > Duration{} ? Shut::surfaces_disagree : Shut::surface_too_cold;
    window.shut_by = window.closed_by;
    return window;
  }
  window.latest_start = *window.closes - work.whole();
  if (*window.latest_start < window.opens) {
    window.shut = Shut::work_too_long;
    window.shut_by = window.closed_by;
  }
  return window;
}

WarmCoatViews warm_coat_views(std::span<const Surface> surfaces, const WindowRules& rules) {
  DAMPWARD_PROMISE(!surfaces.empty(), "a unit to coat has a surface");
  WarmCoatViews views;
  views.at_once = surfaces.front().at(Duration{});
  views.published_begins = Duration{};
  for (const Surface& surface : surfaces) {
    views.at_once = std::max(views.at_once, surface.at(Duration{}));
    const std::optional<Duration> cooled = surface.at_or_below(rules.hottest);
    if (!cooled || !views.published_begins) {
      views.published_begins.reset();
    } else {
      views.published_begins = std::max(*views.published_begins, *cooled);
    }
  }
  views.disagree = !views.published_begins || *views.published_begins > Duration{};
  if (!views.disagree) {
    views.view = "The unit is under the published limit when it leaves the oven: practice and manual agree.";
    return views;
  }
  const std::string later =
      views.published_begins ? "after " + minutes(*views.published_begins) : "never in this air";
  views.view = format(
      "Common practice coats warm from the oven (at {}); the limit of {} opens the window {}. The limit is "
      "kept.",
      degrees(views.at_once), degrees(rules.hottest), later);
  return views;
}

std::string words(const WarmWindow& window, const CoatingWork& work) {
  const std::string by = window.shut_by.empty() ? "" : " (" + window.shut_by + ")";
  switch (window.shut) {
    case Shut::room_too_hot:
      return "No window: the surface" + by + " never cools to the hottest the lacquer allows.";
    case Shut::dew_too_high:
      return format(
          "No window: a surface would have to stay above {}, dew point plus margin, which is as warm as the "
          "lacquer allows.",
          degrees(window.floor));
    case Shut::surface_too_cold:
      return format(
          "No window: the surface{} is colder than {}, the dew point with its margin, from the start.", by,
          degrees(window.floor));
    case Shut::surfaces_disagree:
      return format("No window in common: {} after {}, while {} may be coated only from {}.", end_of(window),
                    minutes(*window.closes), window.opened_by, minutes(window.opens));
    case Shut::work_too_long:
      return format("The window from {} to {}, when {}, is too short for {} coats with their flashes ({}).",
                    minutes(window.opens), minutes(*window.closes), end_of(window), work.coats,
                    minutes(work.whole()));
    case Shut::no:
      break;
  }
  const std::string from =
      window.opened == Opens::hottest_surface
          ? format("Opens after {}, when {} has cooled to the limit", minutes(window.opens), window.opened_by)
          : std::string("Opens on leaving the oven");
  if (!window.closes) return from + "; the margin over the dew point never runs out in this air.";
  return from + format("; closes after {}, when {}.", minutes(*window.closes), end_of(window));
}

}  // namespace dampward::coating
