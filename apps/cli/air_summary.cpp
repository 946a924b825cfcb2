#include "apps/cli/air_summary.h"

#include "apps/cli/answer_page.h"

namespace dampward::cli {
namespace {

std::string ppm(VapourShare share) {
  return fixed(share.ppm(), 0) + " ppm";
}

std::string times(const std::optional<double>& index) {
  return index ? fixed(*index, 1) + " times the limits" : std::string("not known: some solvent has no limit");
}

void say_fire(AnswerPage& page, const workbench::AirAnswer& answer, const UnitText& units) {
  page.row("FIRE");
  if (!answer.lower_limit) {
    page.say(" Nothing in it burns.");
    return;
  }
  page.say(
      format(" the mixed air comes to {} % of the lower flammable limit ({} % of the air by volume); {} % is "
             "allowed: {}",
             fixed(100 * *answer.room_share, 1), fixed(answer.lower_limit->percent(), 2),
             fixed(100 * answer.limit_share, 0), answer.fire_safe ? "kept" : "NOT KEPT"));
  page.say(format(" about the hands: {} %. Nothing hot there, whatever the room's figure.",
                  fixed(100 * *answer.near_share, 1)));
  page.say(format(" the place carries {} at most", units.rate(answer.most_rate)));
}

void say_people(AnswerPage& page, const workbench::AirAnswer& answer, const UnitText& units) {
  page.row("PEOPLE");
  if (answer.lower_limit) {
    page.say(format(" at the gun {}, {}; in the room {}, {}", ppm(answer.at_the_gun),
                    times(answer.exposure_index), ppm(answer.in_the_room), times(answer.exposure_room)));
    if (answer.exposure_day)
      page.say(format(" over the day, {} at it: {} times the limits", units.hours(answer.at_it),
                      fixed(*answer.exposure_day, 1)));
  }
  using Verdict = room_air::RespiratorChoice::Verdict;
  const auto& respirator = answer.respirator;
  if (respirator.verdict == Verdict::wear) {
    page.say(format(" respirator: {} ({}){}", respirator.respirator->name, respirator.reason,
                    answer.highest_use ? "; highest use " + ppm(*answer.highest_use) : ""));
  } else {
    page.say(format(" {}: {}", respirator.verdict == Verdict::refuse ? "NOBODY WORKS IN IT" : "no respirator",
                    respirator.reason));
  }
  page.say(
      " Local codes, a fit test and a licensed person decide on any respirator; none makes a place "
      "fire-safe.");
}

}  // namespace

std::vector<std::string> air_summary(const workbench::AirAnswer& answer, const UnitText& units) {
  AnswerPage page;
  page.say(format("{}: {}, {}, {}. Figures of {}.", answer.place, answer.liquid, answer.gun,
                  units.rate(answer.rate), answer.basis));
  page.say(format("{} with {} of fresh air, mixing {}, at {}", units.space(answer.volume),
                  units.flow(answer.fan), fixed(answer.mixing, 2), units.temperature(answer.temperature)));
  page.gap();
  if (answer.closed) page.say(format("CLOSED: {} {}", answer.closed->reason, answer.closed->settle));
  say_fire(page, answer, units);
  say_people(page, answer, units);
  page.row("FRESH AIR");
  if (answer.lower_limit) {
    page.say(format(" against fire {}; for people without respirators {}", units.flow(answer.fan_fire),
                    answer.fan_people ? units.flow(*answer.fan_people) : "none is known to be enough"));
    page.say(answer.purge
                 ? format(" clear {} after the last film has flashed off", units.minutes(*answer.purge))
                 : std::string(" no fresh air: never clear"));
  }
  page.list("LOOK OUT", answer.warnings);
  page.list("BECAUSE", answer.because);
  page.cautions(answer.cautions);
  return std::move(page).lines();
}

}  // namespace dampward::cli
