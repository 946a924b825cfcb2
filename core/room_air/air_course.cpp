#include "core/room_air/air_course.h"

#include <algorithm>
#include <cmath>

#include "core/base/promise.h"
#include "core/room_air/flammability.h"

namespace dampward::room_air {
namespace {

constexpr double clean = 1e-9;  // share of the air that counts as none: a thousandth of a part in a million
constexpr double nothing = 1e-15;          // too little to be reckoned with at all
constexpr int longest_tail = 3 * 24 * 60;  // minutes

std::size_t place_of(std::vector<VolatilePart>& solvents, const VolatilePart& part) {
  const auto same = std::find_if(solvents.begin(), solvents.end(), [&](const VolatilePart& known) {
    return known.solvent == part.solvent && known.name == part.name;
  });
  if (same != solvents.end()) return static_cast<std::size_t>(same - solvents.begin());
  solvents.push_back(part);
  return solvents.size() - 1;
}

// Vapour of each solvent from all of a release.
std::vector<Volume> vapours(const Scene& scene, const Release& release, std::vector<VolatilePart>& solvents) {
  DAMPWARD_PROMISE(release.liquid < scene.liquids.size(), "a release is of a liquid of its scene");
  std::vector<Volume> all(solvents.size());
  for (const VolatilePart& part : scene.liquids[release.liquid].parts) {
    const std::size_t place = place_of(solvents, part);
    if (place >= all.size()) all.resize(place + 1);
    all[place] += vapour_volume(part.share.fraction() * release.volatiles, part.molar_mass, scene.air);
  }
  return all;
}

double over_the_minute(const Release& release, int minute) {
  return evaporated_by(release, minute + 1) - evaporated_by(release, minute);
}

// What all releases give off before the room does anything with it.
struct Released {
  int from = 0;
  std::vector<VolatilePart> solvents;
  std::vector<std::vector<double>> cubic_metres;  // of vapour, by solvent and minute
};

Released released_in(const Scene& scene) {
  Released all;
  if (scene.releases.empty()) return all;
  int last = scene.releases.front().to;
  all.from = scene.releases.front().from;
  for (const Release& release : scene.releases) {
    all.from = std::min(all.from, release.from);
    last = std::max(last, over_by(release));
  }
  const auto count = static_cast<std::size_t>(last - all.from + 1);
  for (const Release& release : scene.releases) {
    const std::vector<Volume> of = vapours(scene, release, all.solvents);
    all.cubic_metres.resize(all.solvents.size(), std::vector<double>(count));
    const int end = over_by(release);
    for (int when = release.from; when < end; ++when) {
      const double part = over_the_minute(release, when);
      for (std::size_t i = 0; i < of.size(); ++i)
        all.cubic_metres[i][static_cast<std::size_t>(when - all.from)] += part * of[i].si();
    }
  }
  return all;
}

// Air that thins the worst minute's vapour, each solvent to the share that `allowed` gives for it.
template <class Allowed>
VolumeFlow most_diluted(const Released& released, Allowed allowed) {
  if (released.cubic_metres.empty()) return {};
  double most = 0;
  for (std::size_t minute = 0; minute < released.cubic_metres.front().size(); ++minute) {
    double needed = 0;
    for (std::size_t i = 0; i < released.solvents.size(); ++i)
      needed += released.cubic_metres[i][minute] / allowed(i);
    most = std::max(most, needed);
  }
  return most * cubic_metre_per_minute;
}

// Vapour stays where no fan draws it off, and then fills only part of the room.
Room reached(const Room& room) {
  if (room.mixing * room.fresh_air > VolumeFlow{}) return room;
  return {room.mixing * room.volume, {}, 1};
}

}  // namespace

VapourShare AirCourse::at(std::size_t solvent, int when) const {
  const int place = when - from;
  if (place < 0 || minutes() == 0) return {};
  return VapourShare::fraction(share[solvent][static_cast<std::size_t>(std::min(place, minutes() - 1))]);
}

bool AirCourse::clears() const {
  return std::all_of(share.begin(), share.end(),
                     [](const std::vector<double>& of) { return of.back() < clean; });
}

AirCourse air_course(const Scene& scene) {
  AirCourse course;
  if (scene.releases.empty()) return course;
  const Released released = released_in(scene);
  course.from = released.from;
  course.solvents = released.solvents;
  const Room room = reached(scene.room);
  const double change = concentration(room, {}, VapourShare::fraction(1), minute).fraction();
  const double taken = concentration(room, VolumeFlow::si(room.volume.si() * 1e-6), {}, minute).fraction() /
                       1e-6;  // share at the minute's end of a source of the room's volume a second
  for (std::size_t i = 0; i < course.solvents.size(); ++i) {
    std::vector<double>& share = course.share.emplace_back(1, 0.0);
    for (const double vapour : released.cubic_metres[i]) {
      const double source = vapour / 60 / room.volume.si();
      const double share_now = change * share.back() + taken * source;
      share.push_back(share_now < nothing ? 0 : std::min(1.0, share_now));
    }
  }
  // The tail, until the air is clean of all of them; without fresh air it never is.
  for (int tail = 0; change < 1 && tail < longest_tail; ++tail) {
    if (course.clears()) break;
    for (auto& share : course.share) share.push_back(share.back() < clean ? 0 : change * share.back());
  }
  return course;
}

std::vector<std::vector<double>> near_excess(const Scene& scene, const AirCourse& course,
                                             const Release& release) {
  if (!release.near) return {};
  std::vector<VolatilePart> solvents = course.solvents;
  std::vector<Volume> of = vapours(scene, release, solvents);
  DAMPWARD_PROMISE(solvents.size() == course.solvents.size(), "the release belongs to the course's scene");
  of.resize(solvents.size());
  std::vector<std::vector<double>> above(solvents.size(), std::vector<double>(1, 0.0));
  for (int when = release.from; when < release.to; ++when) {
    const double part = over_the_minute(release, when);
    for (std::size_t i = 0; i < of.size(); ++i) {
      const VolumeFlow source = part * of[i] / minute;
      above[i].push_back(
          excess(*release.near, source, VapourShare::fraction(above[i].back()), minute).fraction());
    }
  }
  return above;
}

double flammable_share(const AirCourse& course, std::span<const double> shares, AirState air) {
  double sum = 0;
  for (std::size_t i = 0; i < course.solvents.size(); ++i) {
    sum += shares[i] / at_temperature(course.solvents[i].lower_limit, air.temperature).fraction();
  }
  return sum;
}

double flammable_share(const AirCourse& course, int when, AirState air) {
  double sum = 0;
  for (std::size_t i = 0; i < course.solvents.size(); ++i) {
    sum += course.at(i, when).fraction() /
           at_temperature(course.solvents[i].lower_limit, air.temperature).fraction();
  }
  return sum;
}

FlammablePeak flammable_peak(const Scene& scene, const AirCourse& course) {
  FlammablePeak peak{0, course.from, 0, course.from};
  for (int when = course.from; when < course.end(); ++when) {
    const double share = flammable_share(course, when, scene.air);
    if (share > peak.share) {
      peak.share = share;
      peak.minute = when;
    }
  }
  peak.near_share = peak.share;
  peak.near_minute = peak.minute;
  std::vector<double> there(course.solvents.size());
  for (const Release& release : scene.releases) {
    const auto above = near_excess(scene, course, release);
    if (above.empty()) continue;
    for (int when = release.from; when <= release.to; ++when) {
      for (std::size_t i = 0; i < there.size(); ++i) {
        there[i] = course.at(i, when).fraction() + above[i][static_cast<std::size_t>(when - release.from)];
      }
      const double share = flammable_share(course, there, scene.air);
      if (share > peak.near_share) {
        peak.near_share = share;
        peak.near_minute = when;
      }
    }
  }
  return peak;
}

AirForScene air_for(const Scene& worst_for_fire, const Scene& worst_for_people, double share) {
  DAMPWARD_PROMISE(share > 0 && worst_for_fire.room.mixing > 0, "a place may reach some share of the limit");
  AirForScene needed;
  const double mixing = worst_for_fire.room.mixing;
  const Released fire = released_in(worst_for_fire);
  needed.fire = most_diluted(fire, [&](std::size_t i) {
    const auto limit = at_temperature(fire.solvents[i].lower_limit, worst_for_fire.air.temperature);
    return share * limit.fraction() * mixing;
  });
  const Released people = released_in(worst_for_people);
  for (const VolatilePart& part : people.solvents) {
    if (!part.limit) return needed;
  }
  needed.people = most_diluted(
      people, [&](std::size_t i) { return people.solvents[i].limit->limit.fraction() * mixing; });
  return needed;
}

}  // namespace dampward::room_air
