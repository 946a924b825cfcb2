#include "apps/cli/window_summary.h"

#include "apps/cli/answer_page.h"

namespace dampward::cli {
namespace {

void say_times(AnswerPage& page, const workbench::UnitWindow& window, const UnitText& units) {
  if (!window.opens) return;
  page.say(format(" opens {} after leaving the oven: {}", units.minutes(*window.opens),
                  units.sentence(window.opened_by)));
  page.say(window.closes ? format(" closes {} after: {}", units.minutes(*window.closes),
                                  units.sentence(window.closed_by))
                         : " never closes: the dew-point margin never runs out in this air");
  if (window.trade_opens && *window.trade_opens < *window.opens)
    page.say(format(" \"coat while warm\" would begin {} after; the published limit is kept",
                    units.minutes(*window.trade_opens)));
}

void say_window(AnswerPage& page, const workbench::UnitWindow& window, const UnitText& units) {
  page.gap();
  page.row(window.what + (window.usable ? ":" : ": NO WINDOW"));
  if (!window.reason.empty()) page.say(" " + units.sentence(window.reason));
  if (!window.settle.empty()) page.say(" " + units.sentence(window.settle));
  if (window.held)
    page.say(format(" first the oven is stepped down to {} over {}, and the load held for {} at most",
                    units.setting(window.held->to), units.minutes(window.held->takes),
                    units.minutes(window.held->at_most)));
  say_times(page, window, units);
  if (window.work)
    page.say(format(" {} coats with their flashes take {}{}", window.coats, units.minutes(*window.work),
                    window.latest_start ? "; begin within " + units.minutes(*window.latest_start) : ""));
  for (const auto& part : window.damp_back) {
    if (!part.words.empty()) page.say(" - " + units.sentence(part.words));
  }
  for (const auto& remedy : window.remedies)
    page.say(format(" {} {}: {}", remedy.opens ? "+" : "-", remedy.way, units.sentence(remedy.words)));
}

}  // namespace

std::vector<std::string> window_summary(const workbench::WindowAnswer& answer, const UnitText& units) {
  AnswerPage page;
  page.say(format("{} in air of {} and {} %, dew point {}. Figures of {}.", answer.lacquer,
                  units.temperature(answer.air.temperature), fixed(answer.air.humidity.percent(), 0),
                  units.temperature(answer.dew_point), answer.basis));
  page.say(format("Surfaces stay between {} (dew point and margin) and {}{}.",
                  units.temperature(answer.floor), units.setting(answer.hottest),
                  answer.hottest_assumed ? " (general painting; the lacquer names none)" : ""));
  for (const auto& window : answer.windows) say_window(page, window, units);
  page.gap();
  std::vector<std::string> warnings;
  for (const std::string& warning : answer.warnings) warnings.push_back(units.sentence(warning));
  page.list("LOOK OUT", warnings);
  page.cautions(answer.cautions);
  return std::move(page).lines();
}

}  // namespace dampward::cli
