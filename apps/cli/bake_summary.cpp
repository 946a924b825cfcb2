#include "apps/cli/bake_summary.h"

#include "apps/cli/answer_page.h"
#include "core/base/text.h"

namespace dampward::cli {
namespace {

void say_oven(AnswerPage& page, const workbench::OvenBake& oven, bool several, const UnitText& units) {
  page.gap();
  page.row(oven.name + ":");
  if (!oven.bakes) {
    page.say(
        format(" does not bake it: {}. Next: {}.", units.sentence(oven.reason), units.sentence(oven.settle)));
    return;
  }
  page.say(format(" set {}; warm-up {}, then hold {} ({} with typical figures; trade's rule {})",
                  units.setting(oven.set_point), units.hours(oven.warm_up), units.hours(oven.hold),
                  units.hours(oven.hold_nominal), oven.rule ? units.hours(*oven.rule) : "says nothing here"));
  page.say(format(" weakest: {}; the hold waits for {}", oven.weakest,
                  oven.slowest.empty() ? "nothing: surfaces are dry by then" : oven.slowest));
  page.say(
      format(" its hottest place may be {} above the setting; its air is at most {} % damp, {} % at the end",
             units.step(oven.excess), fixed(oven.dampest.percent(), 0), fixed(oven.at_end.percent(), 0)));
  page.row(" PART                                    PEAK     LIMIT    LEFT INSIDE");
  UnitId unit;
  for (const workbench::PartInOven& part : oven.parts) {
    if (part.unit != unit && several) page.row(" of " + part.unit.text + ":");
    unit = part.unit;
    page.row(format(" {} {} {} {}", fitted(part.name, 39), fitted(units.temperature(part.peak), 8),
                    fitted(units.temperature(part.limit), 8),
                    part.target == "surface" ? std::string("dry on its surface")
                    : part.residual ? fixed(100 * *part.residual, 0) + " %" + (part.dry ? "" : ", stays damp")
                                    : std::string("nobody knows")));
  }
  for (const workbench::PartInOven& part : oven.parts) {
    if (part.asked && !part.note.empty()) page.say(format(" - {}: {}", part.name, part.note));
  }
  page.list(" LOOK OUT", oven.warnings);
}

}  // namespace

std::vector<std::string> bake_summary(const workbench::BakeAnswer& answer, const UnitText& units) {
  AnswerPage page;
  std::vector<std::string> load;
  for (const auto& line : answer.load) load.push_back(format("{} {}", line.count, line.kind_name));
  page.say(format("{}, in air of {} and {} %. Figures of {}.", listed(load),
                  units.temperature(answer.air.temperature), fixed(answer.air.humidity.percent(), 0),
                  answer.basis));
  page.left_out(answer.left_out);
  for (const workbench::OvenBake& oven : answer.ovens) say_oven(page, oven, answer.load.size() > 1, units);
  page.gap();
  page.say("Wet work never goes into an oven, and heat is not credited with killing spores.");
  page.cautions(answer.cautions);
  return std::move(page).lines();
}

}  // namespace dampward::cli
