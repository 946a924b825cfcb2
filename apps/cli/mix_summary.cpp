#include "apps/cli/mix_summary.h"

#include "apps/cli/answer_page.h"

namespace dampward::cli {
namespace {

std::string method_name(materials::Method method) {
  switch (method) {
    case materials::Method::hand_gun:
      return "hand gun";
    case materials::Method::power_gun:
      return "power gun";
    case materials::Method::brush:
      return "brush";
  }
  return "";
}

std::string amounts(const std::string& what, const Range<Volume>& range, const UnitText& units) {
  return " " + fitted(what, 34) + fitted(units.volume(range.typical), 12) +
         fitted(units.volume(range.low), 12) + units.volume(range.high);
}

std::string percents(const Range<MassShare>& range) {
  return format("{} % ({} to {})", fixed(range.typical.percent(), 0), fixed(range.low.percent(), 0),
                fixed(range.high.percent(), 0));
}

void say_way(AnswerPage& page, const workbench::MixWay& way, const UnitText& units) {
  page.say(format("BY {}: {} coats, {} parts of thinner to one of lacquer", method_name(way.method),
                  way.film.coats, fixed(way.views.thinner_parts, 2)));
  page.say(format(" film: each coat {} wet, {} dry; in all {} dry", units.film(way.film.wet_coat),
                  units.film(way.film.dry_coat), units.film(way.film.film)));
  page.say(format(" non-volatile by mass: {}; published minimum {} %; the trade's 2:1 mix {}",
                  percents(way.views.non_volatile), fixed(way.views.published_least.percent(), 0),
                  percents(way.trade_non_volatile)));
  for (const std::string& sentence : way.gate.words) page.say(" " + sentence);
  page.say(way.gate.passed() ? " PASSED by cup and film." : " NOT PASSED until cup and film say so.");
}

}  // namespace

std::vector<std::string> mix_summary(const workbench::MixAnswer& answer, const UnitText& units) {
  AnswerPage page;
  page.say(format("{}, thinner: {}. Figures of {}.", answer.lacquer,
                  answer.thinner.empty() ? "none" : answer.thinner, answer.basis));
  if (answer.works.empty()) {
    page.say("Nothing can be treated, so nothing is mixed.");
    page.left_out(answer.left_out);
    return std::move(page).lines();
  }
  page.gap();
  page.row("TO MIX" + std::string(29, ' ') + "usual       at best     have ready");
  page.row(amounts("lacquer as supplied", answer.lacquer_litres, units));
  page.row(amounts("thinner", answer.thinner_litres, units));
  page.row(amounts("mix, lost overspray included", answer.ready, units));
  page.row("FOR");
  for (const workbench::MixWork& work : answer.works)
    page.row(amounts(cut(format("{} {}, {}, {}", work.count, work.what, method_name(work.method),
                                units.area(work.area.typical)),
                         33),
                     work.ready, units));
  page.left_out(answer.left_out);
  for (const workbench::MixWay& way : answer.ways) say_way(page, way, units);
  page.say(answer.pot_life
               ? format("Pot life {}: mix no more than goes on by then.", units.hours(*answer.pot_life))
               : std::string("No pot life, but solvent leaves an open pot: mix for the day, no more."));
  page.list("LOOK OUT", answer.warnings);
  page.cautions(answer.cautions);
  return std::move(page).lines();
}

}  // namespace dampward::cli
