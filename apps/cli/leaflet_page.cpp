#include "apps/cli/leaflet_page.h"

#include <cmath>

#include "apps/cli/answer_page.h"
#include "core/base/text.h"

namespace dampward::cli {
namespace {

using workbench::HomeHeat;
using workbench::Leaflet;

std::string hours(Duration time, const UnitText& units) {
  return time < 10 * hour ? units.hours(time) : fixed(std::ceil(time.in(hour)), 0) + " h";
}

std::string from_to(Duration low, Duration high, const UnitText& units) {
  if (high < 72 * hour) return format("{} to {}", hours(low, units), hours(high, units));
  const auto days = [](Duration t) { return fixed(std::ceil(t.in(day)), 0); };
  return format("{} to {} days", days(low), days(high));
}

// One line of things, each with its own commas.
std::string in_a_row(const std::vector<std::string>& things) {
  std::string row;
  for (const std::string& thing : things) row += (row.empty() ? "" : "; ") + thing;
  return row.empty() ? "nothing" : row;
}

std::string sides(const workbench::BoxSize& box, const UnitText& units) {
  return format("{} x {} x {}", units.side(box.length), units.side(box.width), units.side(box.height));
}

void say_box(AnswerPage& page, const Leaflet& leaflet, const UnitText& units) {
  const workbench::HomeDrying& drying = leaflet.drying;
  const std::string box = "A metal box, " + sides(drying.box, units) + " inside";
  switch (leaflet.heat) {
    case HomeHeat::lamp_box:
      page.say(format(" - {}, closed, one lamp of {} W in it, never more than {} W.", box,
                      fixed(drying.heat.in(watt), 0), fixed(std::floor(drying.strongest.in(watt)), 0)));
      page.say(
          " - A bent tin sheet between lamp and set: its light must not fall on the set. Nothing touches the "
          "lamp. Box on bricks, clear of cloth, paper and curtains.");
      break;
    case HomeHeat::sun_box:
      page.say(format(" - {}, in full sun. Blacken {} of its lid, no more; cover the rest with white cloth.",
                      box, units.area(*drying.black_lid)));
      page.say(" - Close and cover it with a mat when the sun has gone, or damp goes back in.");
      break;
    case HomeHeat::dry_box:
      page.say(format(" - {}, lid taped all round. No lamp, no sun, no fire.", box));
      break;
  }
  page.say(format(
      " - A tray with {} kg of silica gel, dried in a hot pan until its colour turned; change it when it "
      "turns back. A thermometer amid the box, read through a hole.",
      fixed(std::ceil(drying.desiccant.in(kilogram) * 10) / 10, 1)));
}

void say_drying(AnswerPage& page, const Leaflet& leaflet, const UnitText& units) {
  const workbench::HomeDrying& drying = leaflet.drying;
  page.row("4 DRY IT");
  say_box(page, leaflet, units);
  if (leaflet.heat != HomeHeat::dry_box) {
    page.say(
        format(" - It should show {} to {}. Heat off and lid open if it ever shows more than {}, the limit "
               "of its {}.",
               units.temperature(drying.reading_low), units.setting(drying.reading_high),
               units.setting(drying.never_above), drying.weakest));
  }
  page.say(format(" - Leave it in from {}{}.", from_to(drying.usual, drying.safe, units),
                  drying.sunny_days > 0 ? format(" of sun: {} sunny days to be sure", drying.sunny_days)
                                        : std::string("; the longer to be sure")));
  for (const std::string& damp : drying.stays_damp) page.say(" - " + damp);
  page.say(
      " - Measure the insulation as before, each morning: dry when it has risen and two readings agree.");
}

void say_coating(AnswerPage& page, const Leaflet& leaflet, const UnitText& units) {
  const workbench::HomeCoat& coat = leaflet.coat;
  page.row("5 BRUSH IT, NEVER SPRAY");
  page.say(
      format(" - Outdoors in the shade, no flame, cigarette or stove within {}. Not in rain, not in the box.",
             units.length(6.1 * metre)));
  page.say(
      coat.opens > Duration{}
          ? format(" - First coat {} after it left the box, not sooner; last one dry {} after it left: {}.",
                   units.minutes(coat.opens), hours(coat.closes, units), coat.closed_by)
          : format(" - First coat at once; the last one dry {} after it left the box: {}.",
                   hours(coat.closes, units), coat.closed_by));
  page.say(format(" - {}: {} to {} for {} thin coats, {} between them and after the last.", coat.lacquer,
                  units.amount(coat.needed.low), units.amount(coat.needed.high), coat.coats,
                  units.minutes(coat.flash)));
  if (coat.thinner > Volume{})
    page.say(format(" - Thinner as the can says, {} at most in all.", units.amount(coat.thinner)));
  page.say(format(" - Unmask while soft, touch dry in {}. Case open {}, then closed. Power on after {}.",
                  hours(coat.touch_dry, units), hours(coat.before_closing, units),
                  hours(coat.before_use, units)));
}

void say_why_not_spray(AnswerPage& page, const Leaflet& leaflet, const UnitText& units) {
  const workbench::SprayedAtHome& spray = leaflet.spray;
  page.row("WHY NEVER SPRAY AT HOME");
  std::string harm = format(
      " Most of a spray misses: up to {} of lacquer instead of {}. One coat would fill a room "
      "of {} m³ with {} % of the vapour that explodes (workshops stop at 10 %)",
      units.amount(spray.lacquer_sprayed), units.amount(spray.lacquer_brushed),
      fixed(spray.room.in(cubic_metre), 0), fixed(std::ceil(spray.share_of_limit * 100), 0));
  harm += format(", and whoever is in it breathes {} times what is allowed",
                 fixed(std::ceil(spray.times_limit), 0));
  page.say(harm +
           ". A mist also burns far below that, and stays in the lungs. A shop has a fan, masks and an earth "
           "wire. You have a brush.");
}

// The signs at which everything stops, one paragraph: whoever works alone remembers no table.
void say_when_to_stop(AnswerPage& page, const Leaflet& leaflet) {
  std::vector<std::string> signs;
  for (const workbench::Caution& caution : leaflet.cautions) {
    if (!caution.stop_sign.empty()) signs.push_back(caution.stop_sign);
  }
  page.row("STOP AT ONCE AND GET HELP WHEN YOU SEE OR FEEL");
  page.say(" " + in_a_row(signs) + ".");
  page.say(
      " Rags go into a lidded metal can with water, outdoors: they can light by themselves. What each danger "
      "is "
      "and its guard: the same command with --json.");
}

}  // namespace

std::vector<std::string> leaflet_page(const Leaflet& leaflet, const UnitText& units) {
  AnswerPage page;
  page.say(format("AT HOME AGAINST DAMP: {}", leaflet.kind));
  page.say(format(
      "For air of {} and {} %. It plans and permits nothing: local codes and a licensed person decide.",
      units.temperature(leaflet.air), fixed(leaflet.humidity.percent(), 0)));
  if (leaflet.refused) {
    page.say("NOT AT HOME: " + leaflet.refused->reason);
    page.say("What helps: " + leaflet.refused->settle);
    say_when_to_stop(page, leaflet);
    return std::move(page).lines();
  }
  page.row("1 SAFE FIRST");
  page.say(
      " - Unplug it, batteries out. Short every capacitor with a rated stick and resistor, wait, measure: "
      "dead? "
      "Only then open it. If you do not know how, ask somebody licensed.");
  page.row("2 TEST AND WRITE DOWN");
  page.say(" - What works, and the insulation between chassis and each winding and cord.");
  page.row("3 CLEAN AND MASK");
  page.say(" - Wipe mould off with a damp cloth, mask on your face; no brush, no broom.");
  page.say(" - Take out: " + in_a_row(route::lines_of(leaflet.lists.removed)) + ".");
  page.say(" - Cover: " + in_a_row(route::lines_of(leaflet.lists.mask)) + ".");
  if (!leaflet.lists.tighten.empty())
    page.say(" - Tighten first: " + in_a_row(route::lines_of(leaflet.lists.tighten)) + ".");
  say_drying(page, leaflet, units);
  say_coating(page, leaflet, units);
  page.row("6 TEST AGAIN");
  page.say(" - The same as in 2, and nothing may have changed. Write the date inside the case.");
  say_why_not_spray(page, leaflet, units);
  for (const std::string& warning : leaflet.warnings) page.say(" " + warning);
  say_when_to_stop(page, leaflet);
  return std::move(page).lines();
}

}  // namespace dampward::cli
