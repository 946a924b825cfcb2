#include "workbench/detail/difference_words.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::workbench {
namespace {

std::string celsius(Temperature t) {
  return fixed(t.celsius(), 1) + " °C";
}

std::string litres(const Range<Volume>& range) {
  return format("{} (at most {})", fixed(range.typical.in(litre), 2), fixed(range.high.in(litre), 2));
}

std::string when(Instant instant, const WallClock& clock) {
  const LocalTime local = clock.local(instant);
  return iso_text(Date(std::chrono::floor<std::chrono::days>(local))) + " " + clock_text(local);
}

// "3.2 h later", "45 min earlier".
std::string moved_by(Instant before, Instant after) {
  const Duration time = static_cast<double>(std::abs((after - before).count())) * second;
  const std::string size =
      time < 2 * hour ? fixed(time.in(minute), 0) + " min" : fixed(time.in(hour), 1) + " h";
  return size + (after > before ? " later" : " earlier");
}

std::string listed_units(const std::vector<UnitId>& units) {
  std::vector<std::string> names;
  for (const UnitId& unit : units) names.push_back(unit.text);
  return listed(names);
}

// Units that share a sentence stand in it together.
class Sentences {
 public:
  void add(const UnitId& unit, const std::string& said) {
    if (units_[said].empty()) order_.push_back(said);
    units_[said].push_back(unit);
  }
  void into(std::vector<std::string>& words) const {
    for (const std::string& said : order_) words.push_back(listed_units(units_.at(said)) + ": " + said);
  }

 private:
  std::map<std::string, std::vector<UnitId>> units_;
  std::vector<std::string> order_;
};

void say_units(const PlanDifference& difference, std::vector<std::string>& words) {
  if (!difference.gained.empty())
    words.push_back("Treated only now: " + listed_units(difference.gained) + ".");
  Sentences lost;
  for (const LostUnit& unit : difference.lost) lost.add(unit.unit, "no longer treated. " + unit.reason);
  lost.into(words);
  if (!difference.newly_late.empty())
    words.push_back("Now late: " + listed_units(difference.newly_late) + ".");
  if (!difference.no_longer_late.empty())
    words.push_back("No longer late: " + listed_units(difference.no_longer_late) + ".");
}

void say_finishes(const PlanDifference& difference, const WallClock& clock, std::vector<std::string>& words) {
  if (difference.finish && difference.finish->before != difference.finish->after) {
    const auto& [before, after] = *difference.finish;
    words.push_back(format("The last unit is ready {} instead of {}: {}.", when(after, clock),
                           when(before, clock), moved_by(before, after)));
  }
  for (const MovedFinish& unit : difference.finishes) {
    words.push_back(format("{} is ready {} instead of {}: {}.", unit.unit.text, when(unit.done.after, clock),
                           when(unit.done.before, clock), moved_by(unit.done.before, unit.done.after)));
  }
}

// "held 2.1 h instead of 2.8": nothing where a reader would see the same figure twice.
std::string instead(const std::string& what, const std::string& after, const std::string& before,
                    const std::string& unit) {
  return after == before ? "" : format("{} {} {} instead of {}", what, after, unit, before);
}

std::string bake_words(const MovedBake& bake) {
  const auto minutes = [](Duration time) { return fixed(time.in(minute), 0); };
  const auto hours = [](Duration time) { return fixed(time.in(hour), 2); };
  std::vector<std::string> said = {
      instead("set to", fixed(bake.set_point.after.celsius(), 1), fixed(bake.set_point.before.celsius(), 1),
              "°C"),
      instead("warm after", minutes(bake.warm_up.after), minutes(bake.warm_up.before), "min"),
      instead("held", hours(bake.hold.after), hours(bake.hold.before), "h")};
  std::erase(said, "");
  return said.empty() ? "baked a little otherwise." : listed(said) + ".";
}

void say_bakes(const PlanDifference& difference, std::vector<std::string>& words) {
  const auto oven = [](const OvenId& id) { return id.text.empty() ? std::string("no oven") : id.text; };
  Sentences sentences;
  for (const MovedHeat& unit : difference.heat) {
    sentences.add(unit.unit,
                  format("dried in {} instead of {}.", oven(unit.oven.after), oven(unit.oven.before)));
  }
  for (const MovedBake& unit : difference.bakes) sentences.add(unit.unit, bake_words(unit));
  sentences.into(words);
}

// Of each unit the part whose peak moved most.
void say_peaks(const PlanDifference& difference, std::vector<std::string>& words) {
  const auto step = [](const MovedPeak& part) {
    return std::abs((part.peak.after - part.peak.before).in(kelvin));
  };
  std::map<UnitId, const MovedPeak*> most;
  std::map<UnitId, int> moved;
  for (const MovedPeak& part : difference.peaks) {
    const MovedPeak*& there = most[part.unit];
    if (there == nullptr || step(part) > step(*there)) there = &part;
    ++moved[part.unit];
  }
  Sentences sentences;
  for (const auto& [unit, part] : most) {
    sentences.add(unit, format("{} parts peak elsewhere, most of all {}: {} instead of {}.", moved[unit],
                               part->name, celsius(part->peak.after), celsius(part->peak.before)));
  }
  sentences.into(words);
}

void say_windows(const PlanDifference& difference, std::vector<std::string>& words) {
  Sentences sentences;
  for (const MovedWindow& unit : difference.windows) {
    sentences.add(
        unit.unit,
        format("may be coated from {} to {} min after drying instead of {} to {}.",
               fixed(unit.opens_after.after.in(minute), 0), fixed(unit.closes_after.after.in(minute), 0),
               fixed(unit.opens_after.before.in(minute), 0), fixed(unit.closes_after.before.in(minute), 0)));
  }
  sentences.into(words);
}

void say_room(const MovedRoom& room, std::vector<std::string>& words) {
  const auto moved = [](const Moved<std::optional<double>>& figure) {
    return figure.before && figure.after && *figure.before != *figure.after;
  };
  if (moved(room.worst_share)) {
    words.push_back(format("{}: vapour up to {} % of its lower flammable limit instead of {}.", room.place,
                           fixed(*room.worst_share.after * 100, 1),
                           fixed(*room.worst_share.before * 100, 1)));
  }
  if (moved(room.exposure_index)) {
    words.push_back(format("{}: exposure at the gun {} times the limit instead of {}, without a respirator.",
                           room.place, fixed(*room.exposure_index.after, 1),
                           fixed(*room.exposure_index.before, 1)));
  }
  if (room.respirator.before != room.respirator.after) {
    words.push_back(format("At the gun: {}, instead of {}.", room.respirator.after, room.respirator.before));
  }
  if (room.fan_fire.before != room.fan_fire.after) {
    words.push_back(format("Fire needs {} m³/min of fresh air instead of {}.",
                           fixed(room.fan_fire.after.in(cubic_metre_per_minute), 1),
                           fixed(room.fan_fire.before.in(cubic_metre_per_minute), 1)));
  }
}

}  // namespace

std::vector<std::string> difference_words(const PlanDifference& difference, const WallClock& clock) {
  std::vector<std::string> words;
  say_units(difference, words);
  say_finishes(difference, clock, words);
  say_bakes(difference, words);
  say_peaks(difference, words);
  say_windows(difference, words);
  for (const MovedNeed& need : difference.needs) {
    words.push_back(
        format("{}: {} L instead of {}.", need.name, litres(need.needed.after), litres(need.needed.before)));
  }
  if (difference.room) say_room(*difference.room, words);
  for (const MovedWork& person : difference.work) {
    words.push_back(format("{}: {} h of hands-on work instead of {}.", person.person.text,
                           fixed(person.hands_on.after.in(hour), 1),
                           fixed(person.hands_on.before.in(hour), 1)));
  }
  if (words.empty()) words.emplace_back("Nothing in the plan moves.");
  return words;
}

}  // namespace dampward::workbench
