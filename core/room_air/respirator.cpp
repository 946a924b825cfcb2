#include "core/room_air/respirator.h"

#include <algorithm>
#include <array>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/room_air/exposure_index.h"

namespace dampward::room_air {
namespace {

constexpr std::array classes{
    Respirator{"half mask with organic vapour and particle filters", 10, false},
    Respirator{"full face mask with organic vapour and particle filters", 50, false},
    Respirator{"supplied air, continuous flow, full face mask", 1000, true},
};

double amount(const VolatilePart& part) {
  return part.share.fraction() / part.molar_mass.si();
}

// Share of the air that each part takes up, by amount.
VapourShare of_part(const Mixture& mixture, const VolatilePart& part, VapourShare vapour) {
  double whole = 0;
  for (const VolatilePart& p : mixture.parts) whole += amount(p);
  return VapourShare::fraction(vapour.fraction() * amount(part) / whole);
}

const VolatilePart* dangerous_to_life(const Mixture& mixture, VapourShare vapour) {
  for (const VolatilePart& part : mixture.parts) {
    if (part.danger_to_life && of_part(mixture, part, vapour) > *part.danger_to_life) return &part;
  }
  return nullptr;
}

bool danger_known(const Mixture& mixture) {
  return std::all_of(mixture.parts.begin(), mixture.parts.end(),
                     [](const VolatilePart& p) { return p.danger_to_life.has_value(); });
}

}  // namespace

std::span<const Respirator> respirators() {
  return classes;
}

std::optional<VapourShare> highest_use(const Respirator& respirator, VapourShare limit,
                                       std::optional<VapourShare> danger_to_life) {
  if (!danger_to_life && !respirator.supplied_air) return std::nullopt;
  const VapourShare trusted = VapourShare::fraction(respirator.factor * limit.fraction());
  return danger_to_life ? std::min(trusted, *danger_to_life) : trusted;
}

RespiratorChoice choose_respirator(const Mixture& mixture, VapourShare vapour, bool sprayed_isocyanate,
                                   double limit_factor) {
  DAMPWARD_PROMISE(limit_factor >= 0, "a limit is shortened, never turned round");
  RespiratorChoice choice;
  if (const VolatilePart* part = dangerous_to_life(mixture, vapour)) {
    choice.reason = format("{} would stand above the figure immediately dangerous to life ({} ppm)",
                           part->name, fixed(part->danger_to_life->ppm(), 0));
    return choice;
  }
  const std::optional<double> index = mixture_index(mixture, vapour);
  const bool only_supplied = sprayed_isocyanate || !index;
  if (!only_supplied && limit_factor > 0 && *index <= limit_factor) {
    choice.verdict = RespiratorChoice::Verdict::none_needed;
    choice.reason = "the air stays at or under the limits of the mix";
    return choice;
  }
  const double times = index && limit_factor > 0 ? *index / limit_factor : 0;
  for (const Respirator& respirator : classes) {
    if (!respirator.supplied_air && (only_supplied || !danger_known(mixture))) continue;
    if (index && (limit_factor <= 0 || times > respirator.factor)) continue;
    choice.verdict = RespiratorChoice::Verdict::wear;
    choice.respirator = &respirator;
    choice.reason = sprayed_isocyanate ? std::string("sprayed isocyanates: supplied air only")
                    : !index
                        ? std::string("no limit is known for part of the mix: supplied air only")
                        : format("the air holds {} times the limit of the mix; the class is trusted with {}",
                                 fixed(times, 1), fixed(respirator.factor, 0));
    return choice;
  }
  choice.reason = "the air holds more than any class may be used in";
  return choice;
}

}  // namespace dampward::room_air
