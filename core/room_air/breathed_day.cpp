#include "core/room_air/breathed_day.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/room_air/exposure_index.h"

namespace dampward::room_air {
namespace {

constexpr int fifteen = 15;
constexpr double eight_hours = 480;  // minutes
constexpr double excursion = 3;

struct Minute {
  int when = 0;
  std::optional<std::size_t> at;
  std::vector<double> share, far;  // by solvent: breathed, and in the room's mixed air
};

// Every minute in the room, richer end taken.
std::vector<Minute> minutes_of(const Scene& scene, const AirCourse& course, const WorkDay& day) {
  std::vector<Minute> all;
  const std::size_t solvents = course.solvents.size();
  for (const Stay& stay : day.stays) {
    std::vector<std::vector<double>> above;
    const Release* release = nullptr;
    if (stay.at) {
      release = &scene.releases[*stay.at];
      above = near_excess(scene, course, *release);
    }
    const int from = std::max(stay.from, course.from - 1),
              to = course.clears() ? std::min(stay.to, course.end()) : stay.to;
    for (int when = from; when < to; ++when) {
      Minute minute{when, stay.at, std::vector<double>(solvents), std::vector<double>(solvents)};
      for (std::size_t i = 0; i < solvents; ++i) {
        minute.far[i] = std::max(course.at(i, when), course.at(i, when + 1)).fraction();
        minute.share[i] = minute.far[i];
        if (above.empty() || when < release->from || when >= release->to) continue;
        const auto place = static_cast<std::size_t>(when - release->from);
        minute.share[i] += std::max(above[i][place], above[i][place + 1]);
      }
      all.push_back(std::move(minute));
    }
  }
  std::sort(all.begin(), all.end(), [](const Minute& a, const Minute& b) { return a.when < b.when; });
  return all;
}

double sum(const std::vector<double>& shares) {
  double all = 0;
  for (double share : shares) all += share;
  return all;
}

// Σ C/L of a mix. A solvent never breathed has no limit here.
double over(const std::vector<double>& shares, const std::vector<double>& limits) {
  double all = 0;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    if (limits[i] > 0) all += shares[i] / limits[i];
  }
  return all;
}

// Where nobody set a short limit, three times the eight-hour one.
VapourShare short_limit_of(const VolatilePart& part) {
  if (part.short_limit) return part.short_limit->limit;
  return VapourShare::fraction(std::min(1.0, excursion * part.limit->limit.fraction()));
}

// The amount of all vapour at which so mixed a vapour reaches a limit that adds up over its solvents.
VapourShare whole_at(double index, double vapour) {
  return index > 0 ? VapourShare::fraction(std::min(1.0, vapour / index)) : VapourShare{};
}

}  // namespace

Breathing breathing(const Scene& scene, const AirCourse& course, const WorkDay& day) {
  Breathing told;
  const std::vector<Minute> minutes = minutes_of(scene, course, day);
  const std::size_t solvents = course.solvents.size();
  std::vector<double> average(solvents), average_far(solvents), limit(solvents), short_limit(solvents);
  for (const Minute& minute : minutes) {
    for (std::size_t i = 0; i < solvents; ++i) {
      average[i] += minute.share[i] / eight_hours;
      average_far[i] += minute.far[i] / eight_hours;
    }
  }
  for (const Stay& stay : day.stays) {
    if (!stay.at) continue;
    const Release& release = scene.releases[*stay.at];
    told.isocyanate_sprayed = told.isocyanate_sprayed || release.sprays_isocyanate;
  }
  bool limits_known = true;
  for (std::size_t i = 0; i < solvents; ++i) {
    const VolatilePart& part = course.solvents[i];
    if (!(average[i] > 0)) continue;
    limits_known = limits_known && part.limit.has_value();
    told.danger_known = told.danger_known && part.danger_to_life.has_value();
    if (!part.limit) continue;
    limit[i] = part.limit->limit.fraction();
    short_limit[i] = short_limit_of(part).fraction();
  }

  // The worst minute, with or without known limits.
  const Minute* peak = nullptr;
  for (const Minute& minute : minutes) {
    const double all = sum(minute.share);
    if (all > told.peak.fraction()) {
      told.peak = VapourShare::fraction(std::min(1.0, all));
      told.peak_at = minute.when;
      peak = &minute;
    }
    for (std::size_t i = 0; i < solvents; ++i) {
      const VolatilePart& part = course.solvents[i];
      if (!part.danger_to_life) continue;
      const double danger = minute.share[i] / part.danger_to_life->fraction();
      if (danger > told.danger) {
        told.danger = danger;
        told.danger_from = part.name;
        told.danger_at = minute.when;
        told.danger_in = minute.at;
      }
    }
  }
  if (peak != nullptr && told.danger_known) {
    double nearest = 0;  // the solvent that comes to its figure first
    for (std::size_t i = 0; i < solvents; ++i) {
      if (peak->share[i] > 0)
        nearest = std::max(nearest, peak->share[i] / course.solvents[i].danger_to_life->fraction());
    }
    told.life_limit = whole_at(nearest, sum(peak->share));
  }
  if (!limits_known) return told;

  const double left = long_day_factor(day.shift);
  if (!(left > 0)) return told;  // no rest at all: no limit holds
  told.index = over(average, limit) / left;
  told.index_far = over(average_far, limit) / left;
  double most = 0;
  for (std::size_t i = 0; i < solvents; ++i) {
    const double adds = average[i] > 0 ? average[i] / limit[i] : 0;
    if (adds > most) {
      most = adds;
      told.worst_solvent = course.solvents[i].name;
    }
  }
  // Fifteen minutes that slide: what enters is added, what is older falls out.
  told.short_index = 0;
  std::size_t oldest = 0;
  double window = 0;
  std::vector<double> indices;
  indices.reserve(minutes.size());
  for (const Minute& minute : minutes) indices.push_back(over(minute.share, short_limit));
  for (std::size_t newest = 0; newest < minutes.size(); ++newest) {
    window += indices[newest];
    while (minutes[newest].when - minutes[oldest].when >= fifteen) window -= indices[oldest++];
    if (window / fifteen > *told.short_index + 1e-12) {
      told.short_index = window / fifteen;
      told.short_at = minutes[oldest].when;
    }
  }
  if (peak != nullptr) told.short_limit = whole_at(over(peak->share, short_limit), sum(peak->share));
  return told;
}

RespiratorChoice choose_respirator(const Breathing& day) {
  RespiratorChoice choice;
  if (day.danger > 1) {
    choice.reason = format("{} reaches {} times the figure immediately dangerous to life", day.danger_from,
                           fixed(day.danger, 1));
    return choice;
  }
  const bool only_supplied = day.isocyanate_sprayed || !day.index;
  const double times = day.index ? std::max(*day.index, *day.short_index) : 0;
  if (!only_supplied && times <= 1) {
    choice.verdict = RespiratorChoice::Verdict::none_needed;
    choice.reason = "the air stays at or under the limits over the day and over any fifteen minutes";
    return choice;
  }
  for (const Respirator& respirator : respirators()) {
    if (!respirator.supplied_air && (only_supplied || !day.danger_known)) continue;
    if (times > respirator.factor) continue;
    choice.verdict = RespiratorChoice::Verdict::wear;
    choice.respirator = &respirator;
    choice.reason =
        day.isocyanate_sprayed ? std::string("sprayed isocyanates: supplied air only")
        : !day.index ? std::string("no limit is known for part of the air breathed: supplied air only")
                     : format("the air breathed comes to {} times its limits; the class is trusted with {}",
                              fixed(times, 1), fixed(respirator.factor, 0));
    return choice;
  }
  choice.reason = format("the air breathed comes to {} times its limits, more than any class is trusted with",
                         fixed(times, 0));
  return choice;
}

VapourShare highest_use(const Respirator& respirator, const Breathing& day) {
  const double trusted = std::min(1.0, respirator.factor * day.short_limit.fraction());
  const double life = day.life_limit.fraction();
  if (!(trusted > 0) || (!(life > 0) && !respirator.supplied_air)) return {};
  return VapourShare::fraction(life > 0 ? std::min(trusted, life) : trusted);
}

std::optional<int> turns_needed(const Breathing& day) {
  if (!day.index || !(*day.index_far < 1)) return std::nullopt;
  if (*day.index <= 1) return 1;
  const double near = *day.index - *day.index_far;
  return static_cast<int>(std::ceil(near / (1 - *day.index_far) - 1e-9));
}

}  // namespace dampward::room_air
