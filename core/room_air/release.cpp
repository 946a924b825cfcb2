#include "core/room_air/release.h"

#include <algorithm>
#include <cmath>

#include "core/base/promise.h"

namespace dampward::room_air {
namespace {

// Of a film, what leaves a minute as a share of what is there: a tenth is left after `nine_tenths`.
double rate(const Release& release) {
  return std::log(10.0) / release.nine_tenths.in(minute);
}

double length(const Release& release) {
  DAMPWARD_PROMISE(release.to > release.from, "a release lasts");
  return release.to - release.from;
}

bool lies(const Release& release) {
  return release.nine_tenths > Duration{} && release.at_once < 1;
}

}  // namespace

double evaporated_by(const Release& release, double when) {
  const double laying = length(release);
  const double laid_for = std::clamp(when - release.from, 0.0, laying);
  const double laid = laid_for / laying;
  if (!lies(release)) return laid;
  const double k = rate(release);
  const double film_at_end_of_laying = -std::expm1(-k * laid_for) / (k * laying);
  const double film = film_at_end_of_laying * std::exp(-k * std::max(0.0, when - release.to));
  return laid - (1 - release.at_once) * film;
}

MassFlow strongest(const Release& release) {
  const MassFlow laying = release.volatiles / (length(release) * minute);
  if (!lies(release)) return laying;
  // Mist and film together at the end of laying; nothing later is stronger.
  const double film_leaves = -std::expm1(-rate(release) * length(release));
  return (release.at_once + (1 - release.at_once) * film_leaves) * laying;
}

int over_by(const Release& release) {
  if (!lies(release)) return release.to;
  return release.to + static_cast<int>(std::ceil(std::log(1000.0) / rate(release)));
}

}  // namespace dampward::room_air
