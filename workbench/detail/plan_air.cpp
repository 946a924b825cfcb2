#include "workbench/detail/plan_air.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/line/calendar.h"
#include "core/room_air/breathed_day.h"
#include "core/room_air/exposure_index.h"

namespace dampward::workbench {
namespace {

using room_air::Breathing;
using room_air::RespiratorChoice;
using room_air::Stay;
using room_air::WorkDay;

struct Day {
  line::Minute begins = 0, ends = 0;
  WorkDay work;
};

// A person's days: at the hands of what they release, else anywhere in the room for as long as they are on shift. Breaks are taken
// outside. Shifts of one date are one day.
std::vector<Day> days_of(const line::Person& person, const PlanScenes& scenes, Instant from,
                         const WallClock& clock) {
  line::Calendar free = line::without(person.shifts, person.breaks);
  std::vector<Stay> stays;
  const auto add = [&](const line::Span& span, std::optional<std::size_t> at) {
    stays.push_back({static_cast<int>(span.from), static_cast<int>(span.to), at});
  };
  // What the timetable says first, then the mixing and rinsing that fit between.
  for (const bool in_the_timetable : {true, false}) {
    for (std::size_t i = 0; i < scenes.hands.size(); ++i) {
      const room_air::Release& release = scenes.people.releases[i];
      const bool timed = release.what != "mixing" && release.what != "rinsing the gun";
      if (timed != in_the_timetable) continue;
      if (std::none_of(scenes.hands[i].begin(), scenes.hands[i].end(),
                       [&](const PersonId& hand) { return hand.text == person.id; })) {
        continue;
      }
      const line::Calendar while_it_lasts{{release.from, release.to}};
      for (const line::Span& span : line::common(free, while_it_lasts)) add(span, i);
      free = line::without(free, while_it_lasts);
    }
  }
  for (const line::Span& span : free) add(span, std::nullopt);
  std::map<std::chrono::local_days, Day> days;
  const auto date_of = [&](line::Minute minute) {
    return std::chrono::floor<std::chrono::days>(clock.local(line::instant_of(minute, from)));
  };
  for (const line::Span& shift : person.shifts) {
    const auto [place, added] = days.try_emplace(date_of(shift.from));
    Day& day = place->second;
    if (added) day.begins = shift.from;
    day.ends = shift.to;
    day.work.shift += static_cast<double>(shift.length()) * minute;
  }
  std::sort(stays.begin(), stays.end(), [](const Stay& a, const Stay& b) { return a.from < b.from; });
  std::size_t shift = 0;
  for (const Stay& stay : stays) {
    while (shift < person.shifts.size() && person.shifts[shift].to <= stay.from) ++shift;
    if (shift == person.shifts.size()) break;
    days[date_of(person.shifts[shift].from)].work.stays.push_back(stay);
  }
  std::vector<Day> all;
  for (auto& [date, day] : days) all.push_back(std::move(day));
  return all;
}

std::string words(const RespiratorChoice& choice, bool sprays) {
  switch (choice.verdict) {
    case RespiratorChoice::Verdict::none_needed:
      return sprays ? "none by the vapour figures; a fitted mask against spray mist all the same" : "none";
    case RespiratorChoice::Verdict::wear:
      return std::string(choice.respirator->name) + ", fitted";
    case RespiratorChoice::Verdict::refuse:
      return "none is enough: no such work";
  }
  return "";
}

// How bad a day is: what no respirator allows first, then the stronger class, then the figure.
std::tuple<int, double, double> badness(const Breathing& day, const RespiratorChoice& choice) {
  double trust = 0;
  if (choice.verdict == RespiratorChoice::Verdict::refuse) trust = 1e9;
  if (choice.respirator != nullptr) trust = choice.respirator->factor;
  return {day.peak > VapourShare{} ? 1 : 0, trust,
          std::max({day.index.value_or(0), day.short_index.value_or(0), day.danger})};
}

std::vector<std::string> remedies(const Breathing& day, const RespiratorChoice& choice, bool sprays,
                                  bool near) {
  std::vector<std::string> all;
  if (choice.verdict == RespiratorChoice::Verdict::none_needed) return all;
  if (day.index && day.short_index && *day.short_index <= 1) {
    const auto people = turns_needed(day);
    if (people && *people > 1) {
      all.push_back(
          format("turns: {} people sharing the work near the solvent would each stay at the limit "
                 "over the day",
                 *people));
    } else if (!people) {
      all.push_back(
          "no turns help: the room's mixed air alone is too much over the day, so more fresh air comes "
          "first");
    }
  } else if (near) {
    all.push_back("turns spare the day's average, not the worst fifteen minutes");
  }
  if (!near) all.push_back("work in another room while solvent is in the open");
  if (!day.worst_solvent.empty())
    all.push_back("a lacquer or thinner with less of " + day.worst_solvent +
                  ", or a slower solvent in its place: it adds most");
  if (sprays) all.push_back("the brush where the kind allows it: no mist, and a smaller source");
  all.push_back("extraction close behind the work, which takes the vapour before anybody breathes it");
  if (choice.respirator == nullptr || !choice.respirator->supplied_air)
    all.push_back("supplied air, which needs no filter to hold");
  return all;
}

// The unit whose release gives off most at a minute; where nothing does any more, the one that began last before it.
std::string strongest_at(const room_air::Scene& scene, int when) {
  double most = -1;
  std::string by;
  for (const room_air::Release& release : scene.releases) {
    if (when + 1 < release.from) continue;
    const double gives =
        (evaporated_by(release, when + 1) - evaporated_by(release, when - 1)) * release.volatiles.si();
    if (gives > most) {
      most = gives;
      by = release.by;
    }
  }
  return by;
}

bool sprays_on(const Day& day, const PlanScenes& scenes) {
  return std::any_of(day.work.stays.begin(), day.work.stays.end(), [&](const Stay& stay) {
    return stay.at && scenes.people.releases[*stay.at].what == "coat";
  });
}

// From the can to clear air: while lacquer or thinner is in the open in the place, until nine tenths of its film are gone and the
// fan has cleared what is left; of cleaning, one's own.
line::Calendar masks_of(const Day& day, const PersonId& person, const PlanScenes& scenes, Duration purge) {
  line::Calendar all;
  for (std::size_t i = 0; i < scenes.hands.size(); ++i) {
    const room_air::Release& release = scenes.people.releases[i];
    const bool own =
        std::find(scenes.hands[i].begin(), scenes.hands[i].end(), person) != scenes.hands[i].end();
    if (release.what == "rags" || (release.what == "cleaning" && !own)) continue;
    const double after = (release.nine_tenths + purge).in(minute);
    const line::Span worn{release.from, release.to + static_cast<line::Minute>(std::ceil(after))};
    if (worn.from < day.ends && worn.to > day.begins)
      all.push_back({std::max(worn.from, day.begins), worn.to});
  }
  return line::tidied(std::move(all));
}

PersonDay person_day(const Day& day, const Breathing& breathed, const RespiratorChoice& choice,
                     const PersonId& person, const PlanScenes& scenes, Duration purge, Instant from) {
  PersonDay told;
  told.begins = line::instant_of(day.begins, from);
  told.ends = line::instant_of(day.ends, from);
  told.exposure_index = breathed.index;
  told.stel_index = breathed.short_index;
  told.sprays = sprays_on(day, scenes);
  if (choice.respirator != nullptr) {
    told.respirator_factor = choice.respirator->factor;
    told.supplied_air = choice.respirator->supplied_air;
  }
  if (choice.verdict == RespiratorChoice::Verdict::none_needed && !told.sprays) return told;
  for (const line::Span& span : masks_of(day, person, scenes, purge))
    told.masks.push_back({line::instant_of(span.from, from), line::instant_of(span.to, from)});
  return told;
}

}  // namespace

PlanAir air_of(const PlanScenes& scenes, const line::Problem& problem, const PaintShop& paint,
               const Workshop& workshop, Instant from, const WallClock& clock) {
  PlanAir air;
  air.fire = room_air::air_course(scenes.fire);
  air.peak = room_air::flammable_peak(scenes.fire, air.fire);
  air.needed = room_air::air_for(scenes.fire, scenes.people, paint.fire_share.share);
  const auto refuse = [&](Rule rule, const std::string& unit, std::string reason, std::string settle) {
    for (const Refusal& known : air.refused) {
      if (known.unit.text == unit) return;
    }
    air.refused.push_back(
        {{rule, workshop.shop.spray.name, std::move(reason), std::move(settle)}, UnitId(unit), KindId()});
  };
  if (air.peak.share > paint.fire_share.share) {
    refuse(Rule::vapour_share, strongest_at(scenes.fire, air.peak.minute),
           format("With all that gets loose at the time, the air of the {} would come to {} % of the "
                  "vapour's lower "
                  "flammable limit.",
                  workshop.shop.spray.name, fixed(std::ceil(air.peak.share * 1000) / 10, 1)),
           "A stronger fan, a lidded can for rags, or fewer units a day.");
  }
  const room_air::AirCourse course = room_air::air_course(scenes.people);
  for (const line::Person& person : problem.people) {
    if (person.shifts.empty()) continue;
    PersonAir told;
    told.person = PersonId(person.id);
    for (const shop::Person& known : workshop.shop.crew) {
      if (known.id.text == person.id) told.name = known.name;
    }
    Breathing worst;
    worst.index = worst.index_far = worst.short_index = 0;
    RespiratorChoice choice = choose_respirator(worst);
    bool sprays = false, near = false;
    Duration shift;
    std::optional<line::Minute> begins;
    for (const Day& day : days_of(person, scenes, from, clock)) {
      const Breathing breathed = breathing(scenes.people, course, day.work);
      const RespiratorChoice chosen = choose_respirator(breathed);
      if (chosen.verdict == RespiratorChoice::Verdict::refuse) {
        const std::string unit =
            breathed.danger_in
                ? scenes.people.releases[*breathed.danger_in].by
                : strongest_at(scenes.people, breathed.danger > 1 ? breathed.danger_at : breathed.peak_at);
        refuse(Rule::respirator, unit,
               format("Its work would put {} into air no respirator is meant for: {}.", person.id,
                      chosen.reason),
               "More air, a smaller gun, a brush, or a lacquer with a slower or less harmful solvent.");
      }
      told.days.push_back(person_day(day, breathed, chosen, told.person, scenes, paint.purge, from));
      if (begins && !(badness(breathed, chosen) > badness(worst, choice))) continue;
      if (!(breathed.peak > VapourShare{})) continue;
      worst = breathed;
      choice = chosen;
      begins = day.begins;
      shift = day.work.shift;
      sprays = sprays_on(day, scenes);
      near = std::any_of(day.work.stays.begin(), day.work.stays.end(),
                         [](const Stay& stay) { return stay.at.has_value(); });
    }
    const auto at = [&](int when) { return line::instant_of(when, from); };
    told.limit_factor = room_air::long_day_factor(shift);
    if (begins) {
      told.day = at(static_cast<int>(*begins));
      told.peak_at = at(worst.peak_at);
      if (worst.short_index) told.stel_at = at(worst.short_at);
    }
    told.exposure_index = worst.index;
    told.exposure_far = worst.index_far;
    told.stel_index = worst.short_index;
    told.peak = worst.peak;
    told.danger = worst.danger;
    told.respirator = words(choice, sprays);
    told.because = choice.reason;
    if (choice.respirator != nullptr) {
      told.respirator_factor = choice.respirator->factor;
      told.supplied_air = choice.respirator->supplied_air;
      const VapourShare most = highest_use(*choice.respirator, worst);
      if (most > VapourShare{}) told.highest_use = most;
    }
    told.remedies = remedies(worst, choice, sprays, near);
    air.people.push_back(std::move(told));
  }
  return air;
}

}  // namespace dampward::workbench
