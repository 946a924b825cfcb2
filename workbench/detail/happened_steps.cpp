#include "workbench/detail/happened_steps.h"

#include <algorithm>
#include <set>

#include "core/base/format.h"

namespace dampward::workbench {
namespace {

using route::Step;
using route::StepCode;
using Steps = std::vector<Step>;

constexpr const char* way_re_dry = "re_dry";
constexpr const char* way_recoat = "let_dry_and_recoat";
constexpr const char* way_retest = "let_dry_and_retest";
constexpr const char* way_strip = "strip_and_re_dry";

// Where a route has no step to take a time from: estimates on the safe side of what routes usually hold.
constexpr Duration usual_film_drying = 4 * hour, usual_airing = 24 * hour, usual_stripping = 60 * minute;

const Step* find(const Steps& steps, StepCode code) {
  const auto found = std::find_if(steps.begin(), steps.end(), [&](const Step& s) { return s.code == code; });
  return found == steps.end() ? nullptr : &*found;
}

bool is_oven_in(StepCode code) {
  return code == StepCode::load || code == StepCode::cabinet_in;
}

Range<Duration> exactly(Duration time) {
  return {time, time, time};
}

Step inserted(const Steps& steps, StepCode code, int turn, const std::string& title,
              const std::string& reason, Range<Duration> minutes) {
  Step step;
  const std::string& sample = steps.front().id;
  step.id = sample.substr(0, sample.find('.') + 1) + route::code_word(code) + std::to_string(turn);
  step.code = code;
  step.turn = turn;
  step.title = title;
  step.reason = reason;
  step.minutes = minutes;
  step.attendance = route::Attendance::unattended;
  step.hazard_step = "film_dry";
  return step;
}

Step let_dry(const Steps& steps, int turn) {
  const Step* film = find(steps, StepCode::film_dry);
  const Step* airing = find(steps, StepCode::airing);
  const Duration time =
      (film ? film->minutes.high : usual_film_drying) + (airing ? airing->minutes.high : usual_airing);
  return inserted(steps, StepCode::let_dry, turn, "let it dry and air",
                  "lacquer is on it, so it may not be heated: the film dries and airs at room temperature",
                  exactly(time));
}

std::vector<Step> strip_steps(const Steps& steps, int turn) {
  const Step* clean = find(steps, StepCode::clean);
  const Step* free = find(steps, StepCode::solvent_free);
  const Step* airing = find(steps, StepCode::airing);
  Step strip = inserted(steps, StepCode::strip_off, turn, "take the film off again",
                        "what is under the film is damp and heat is barred while lacquer is on it",
                        clean ? clean->minutes : exactly(usual_stripping));
  strip.attendance = route::Attendance::attended;
  strip.skill = clean ? clean->skill : "clean";
  strip.station_skill = clean ? clean->station_skill : "clean";
  strip.hazard_step = "clean";
  const Duration wait =
      std::max(free ? free->minutes.high : Duration{}, airing ? airing->minutes.high : usual_airing);
  return {strip, inserted(steps, StepCode::stripped_free, turn, "stand until free of solvent",
                          "work damp with solvent never goes into an oven", exactly(wait))};
}

// What is done again (once done or begun) and what is put in, for one way.
struct Remedy {
  ReworkWay way;
  std::set<std::string> again;
  std::vector<Step> put_in;
};

class Finder {
 public:
  Finder(const UnitDraft& unit, const LoadDraft* load, const std::string& cold_coat)
      : unit_(unit), steps_(unit.route.steps), load_(load), cold_coat_(cold_coat) {}

  void take(const history::StepRecord& record) { happened_.records[record.step] = &record; }

  void take(const history::Setback& setback) {
    Rework rework{
        unit_.queued->serial, setback.event, std::string(word(setback.kind)), setback.at, "", {}, 0};
    const int turn = static_cast<int>(happened_.rework.size()) + 1;
    std::vector<Remedy> remedies;
    if (!coated()) {
      rework.rule = "No lacquer is on it yet, so it is dried again.";
      remedies.push_back(re_dry());
    } else {
      rework.rule =
          "Lacquer is on it: it may not be heated until that has dried and aired, or is off again and its "
          "solvent gone.";
      remedies.push_back(setback.kind == history::Kind::retest_failed ? dry_and_retest(turn)
                                                                      : dry_and_recoat(turn));
      remedies.push_back(strip(turn));
    }
    for (const Remedy& remedy : remedies) rework.ways.push_back(remedy.way);
    for (std::size_t i = 1; i < remedies.size(); ++i) {
      const ReworkWay &best = rework.ways[rework.chosen], &other = rework.ways[i];
      if (other.safe && (!best.safe || other.crew < best.crew)) rework.chosen = i;
    }
    const Remedy& chosen = remedies[rework.chosen];
    for (const std::string& step : chosen.again) happened_.records.erase(step);
    // What ran when it was thrown back did not do its work.
    std::erase_if(happened_.records, [](const auto& entry) { return !entry.second->finished; });
    tried_.insert(chosen.way.way);
    happened_.rework.push_back(std::move(rework));
  }

  HappenedSteps done() { return std::move(happened_); }

 private:
  bool coated() const {
    return std::any_of(steps_.begin(), steps_.end(),
                       [&](const Step& s) { return s.code == StepCode::coat && happened_.has(s.id); });
  }
  bool done(StepCode code) const {
    const Step* step = find(steps_, code);
    return step != nullptr && happened_.has(step->id);
  }
  std::size_t place_of_drying() const {
    const auto found =
        std::find_if(steps_.begin(), steps_.end(), [](const Step& s) { return is_oven_in(s.code); });
    return static_cast<std::size_t>(found - steps_.begin());
  }

  Remedy re_dry() const {
    return costed(way_re_dry, "dry it again, then coat it in the new window", place_of_drying(), {});
  }

  Remedy dry_and_recoat(int turn) const {
    Remedy remedy =
        costed(way_recoat,
               "let the coats that are on dry and air at room temperature, roughen them where the lacquer's "
               "recoat time is over, then put on the coats that are missing; insulation readings decide "
               "whether it stays so",
               steps_.size(), {let_dry(steps_, turn)});
    if (!cold_coat_.empty()) {
      remedy.way.safe = false;
      remedy.way.reason = cold_coat_;
    }
    return judged(remedy);
  }

  Remedy dry_and_retest(int turn) const {
    Remedy remedy =
        costed(way_retest,
               "open it, let it dry and air at room temperature, close it and test it again; insulation "
               "readings, rising and then steady, decide",
               steps_.size(), {let_dry(steps_, turn)},
               {StepCode::make_safe, StepCode::reassemble, StepCode::retest});
    return judged(remedy);
  }

  // A set that is closed is opened again like any other; one whose masks are off is masked again.
  Remedy strip(int turn) const {
    std::size_t from = place_of_drying();
    if (done(StepCode::unmask)) {
      const Step* cover = find(steps_, StepCode::cover);
      if (cover != nullptr) from = std::min(from, static_cast<std::size_t>(cover - steps_.data()));
    }
    if (done(StepCode::reassemble)) from = 0;
    return costed(way_strip,
                  "take the film off, let it stand until free of solvent, dry it again and coat it anew",
                  from, strip_steps(steps_, turn));
  }

  // What was tried once for this unit and did not hold is not planned again.
  Remedy judged(Remedy remedy) const {
    if (tried_.contains(remedy.way.way)) {
      remedy.way.safe = false;
      remedy.way.reason = "it was tried before and did not hold";
    }
    return remedy;
  }

  // The way whose steps from place `from` on, and those of the codes named, are done again where they were done or begun.
  Remedy costed(const char* way, const char* words, std::size_t from, std::vector<Step> put_in,
                const std::set<StepCode>& codes = {}) const {
    Remedy remedy{{way, words, {}, {}, {}, {}, true, ""}, {}, std::move(put_in)};
    int coats = 0;
    const auto count = [&](const Step& step) {
      remedy.way.added += length_of(step);
      if (step.attendance == route::Attendance::attended)
        remedy.way.crew += static_cast<double>(step.people) * step.minutes.typical;
    };
    for (std::size_t i = 0; i < steps_.size(); ++i) {
      const Step& step = steps_[i];
      const bool again =
          i >= from || codes.contains(step.code) || (happened_.has(step.id) && !happened_.ended(step.id));
      if (!again || !happened_.has(step.id)) continue;
      remedy.again.insert(step.id);
      count(step);
      if (step.code == StepCode::coat) ++coats;
    }
    for (const Step& step : remedy.put_in) count(step);
    const int all = unit_.coat->consumption.coats;
    const double share = all > 0 ? static_cast<double>(coats) / all : 0;
    const auto part = [&](const Range<Volume>& whole) {
      return Range<Volume>{share * whole.low, share * whole.typical, share * whole.high};
    };
    remedy.way.lacquer = part(unit_.coat->consumption.lacquer);
    remedy.way.thinner = part(unit_.coat->consumption.thinner);
    return remedy;
  }

  Duration length_of(const Step& step) const {
    if (step.code == StepCode::bake && load_ != nullptr) return load_->in_oven();
    return step.attendance == route::Attendance::attended ? step.minutes.typical : step.minutes.high;
  }

  const UnitDraft& unit_;
  const Steps& steps_;
  const LoadDraft* load_;
  std::string cold_coat_;
  std::set<std::string> tried_;
  HappenedSteps happened_;
};

}  // namespace

HappenedSteps happened_steps(const UnitDraft& unit, const history::History& history, const LoadDraft* load,
                             const std::string& cold_coat) {
  Finder finder(unit, load, cold_coat);
  const UnitId& serial = unit.queued->serial;
  int round = 0;
  const auto take_round = [&] {
    for (const history::StepRecord& record : history.steps) {
      if (record.unit == serial && record.round == round) finder.take(record);
    }
  };
  for (const history::Setback& setback : history.setbacks) {
    if (setback.unit != serial) continue;
    take_round();
    finder.take(setback);
    ++round;
  }
  take_round();
  return finder.done();
}

void put_rework(route::Route& route, const HappenedSteps& happened) {
  if (happened.rework.empty()) return;
  Steps& steps = route.steps;
  const auto is_left = [&](const Step& step) { return !happened.has(step.id); };
  for (std::size_t i = 0; i < happened.rework.size(); ++i) {
    const std::string& way = happened.rework[i].ways[happened.rework[i].chosen].way;
    const int turn = static_cast<int>(i) + 1;
    std::vector<Step> put_in;
    if (way == way_recoat || way == way_retest) put_in = {let_dry(steps, turn)};
    if (way == way_strip) put_in = strip_steps(steps, turn);
    // A set is proved dead before anything else is done to it.
    const auto place = std::find_if(steps.begin(), steps.end(), [&](const Step& step) {
      return is_left(step) && step.code != StepCode::make_safe;
    });
    steps.insert(place, put_in.begin(), put_in.end());
  }
  const auto ended = [&](const std::string& id) { return happened.has(id); };
  // What happened keeps no order with what is done again, and a window that closed is none.
  const bool coats_stay = std::any_of(steps.begin(), steps.end(), [&](const Step& step) {
    return step.code == StepCode::coat && ended(step.id);
  });
  std::erase_if(route.gaps, [&](const route::StepGap& gap) { return !ended(gap.from) && ended(gap.to); });
  for (route::StepGap& gap : route.gaps) {
    const bool overrun = ended(gap.from) && !ended(gap.to);
    if (overrun || (coats_stay && gap.kind == route::GapKind::warm_window)) gap.longest.reset();
  }
  const Step* before = nullptr;
  for (const Step& step : steps) {
    if (!is_left(step)) continue;
    if (before != nullptr) {
      const bool known = std::any_of(route.gaps.begin(), route.gaps.end(), [&](const route::StepGap& gap) {
        return gap.from == before->id && gap.to == step.id;
      });
      if (!known) {
        route::StepGap gap;
        gap.from = before->id;
        gap.to = step.id;
        route.gaps.push_back(gap);
      }
    }
    before = &step;
  }
}

}  // namespace dampward::workbench
