#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/quantity/shares.h"
#include "core/room_air/mixture.h"

namespace dampward::room_air {

// A class of respirator and how many times its limit it is trusted with.
struct Respirator {
  std::string_view name;
  double factor = 1;  // assigned protection factor
  bool supplied_air = false;
};
// Weakest first. Source: 29 CFR 1910.134 table 1 (from memory).
std::span<const Respirator> respirators();

// Highest use: factor × limit, never above the figure immediately dangerous to life. None: that figure is not known and the
// respirator filters the room's own air, so it earns no trust above the limit itself.
std::optional<VapourShare> highest_use(const Respirator& respirator, VapourShare limit,
                                       std::optional<VapourShare> danger_to_life);

// What the air in the breathing zone asks for. It never makes a place fire-safe.
struct RespiratorChoice {
  enum class Verdict {
    none_needed,  // at or under the limit
    wear,         // `respirator`, fitted
    refuse,       // above what any class may be used in: less solvent, more air, or the brush outdoors
  };
  Verdict verdict = Verdict::refuse;
  const Respirator* respirator = nullptr;
  std::string reason;
};

// `vapour` is all solvent vapour in the air breathed, in the proportions of the mixture; `limit_factor` shortens the limits for a
// long day. Sprayed isocyanates: supplied air whatever the figures (UK HSE, Safe Work Australia, read). A part without any limit:
// supplied air too.
RespiratorChoice choose_respirator(const Mixture& mixture, VapourShare vapour, bool sprayed_isocyanate,
                                   double limit_factor = 1);

}  // namespace dampward::room_air
