#include "core/coating/mix_gate.h"

#include "core/base/format.h"

namespace dampward::coating {
namespace {

std::string centistokes_text(KinematicViscosity viscosity) {
  return fixed(viscosity.in(centistokes), 0) + " mm²/s";
}

void judge_viscosity(MixGate& gate, const Measured& measured) {
  using V = MixGate::Viscosity;
  if (measured.cup == nullptr || !measured.drain) {
    gate.words.push_back(
        "Viscosity was not measured: let a flow cup drain at 25 °C before the gun is filled.");
    return;
  }
  const auto found = viscosity(*measured.cup, *measured.drain);
  if (!found) {
    const Problem& problem = found.problems().front();
    gate.viscosity = V::outside_the_cup;
    gate.words.push_back(format("{} {} It tells nothing of this mix.", problem.expected, problem.next));
    return;
  }
  gate.measured_viscosity = *found;
  gate.viscosity = *found < spray_viscosity.low    ? V::too_thin
                   : *found > spray_viscosity.high ? V::too_thick
                                                   : V::fits;
  const char* verdict = gate.viscosity == V::fits       ? "fits a gun"
                        : gate.viscosity == V::too_thin ? "is too thin: add lacquer"
                                                        : "is too thick: add thinner, a little at a time";
  gate.words.push_back(format("{} {}; a gun wants {} to {} (estimate).", centistokes_text(*found), verdict,
                              fixed(spray_viscosity.low.in(centistokes), 0),
                              centistokes_text(spray_viscosity.high)));
}

}  // namespace

MixGate judge_mix(const Consumption& use, materials::Method method, const Measured& measured) {
  MixGate gate;
  if (method == materials::Method::brush) {
    gate.viscosity = MixGate::Viscosity::fits;
  } else {
    judge_viscosity(gate, measured);
  }
  if (!measured.wet_coat) {
    gate.words.push_back(
        format("The film was not measured: one coat on a test panel must read {} µm wet or more on a comb.",
               fixed((use.film.low / (use.coats * use.solids.low.fraction())).in(micrometre) + 0.5, 0)));
    return gate;
  }
  gate.film_built = use.coats * dry_film(*measured.wet_coat, use.solids.low);
  gate.film = *gate.film_built < use.film.low ? MixGate::Film::too_thin : MixGate::Film::fits;
  gate.words.push_back(format("{} coats of that build {} µm dry at the poorest solids; {} µm is {}.",
                              use.coats, fixed(gate.film_built->in(micrometre), 0),
                              fixed(use.film.low.in(micrometre), 1),
                              gate.film == MixGate::Film::fits ? "reached" : "not reached"));
  return gate;
}

}  // namespace dampward::coating
