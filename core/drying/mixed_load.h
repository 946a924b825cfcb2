#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/drying/oven_model.h"
#include "core/moist_air/humid_air.h"
#include "core/quantity/quantity.h"
#include "core/quantity/temperature.h"

namespace dampward::drying {

// The units of one kind in an oven: a shell that meets the air and carries the surface water, and an inner node.
struct UnitNodes {
  int count = 1;
  HeatCapacity shell, inner;                     // of one unit; nothing inside that is heavier: inner zero
  HeatConductance air_to_shell;                  // convection and radiation
  HeatConductance shell_to_inner, air_to_inner;  // in its case, the first; opened up, the second
  VolumeFlow drying;                             // hm · wet area of one unit
  HeatConductance wet_more;  // convection to wet surface that the outer box does not count, while it is wet
  Mass film;                 // surface water on one unit at first
};

// The thermostat as an ideal valve with this proportional band under its setting. Its swing is reckoned in the peaks.
inline constexpr TemperatureStep thermostat_band = 0.5 * kelvin;
// The last tenth of a film lies in patches: the wet area shrinks with it.
inline constexpr double patches = 0.1;
// With so little of it left a unit counts as free of surface water.
inline constexpr double film_gone = 0.01;

// A mixed load in an oven, integrated in time: heat and water together.
//   air      Ca dTa/dt = P − Gv (Ta − room) − Gi (Ta − Tw) − Σ n (g (Ta − Ts) + j (Ta − Ti))
//            P = Pmax · (set − Ta)/band, 0 … Pmax
//   lining   Cw dTw/dt = Gi (Ta − Tw) − Go (Tw − room)
//   shell    Cs dTs/dt = g (Ta − Ts) + k (Ti − Ts) − L e
//   inner    Ci dTi/dt = k (Ts − Ti) + j (Ta − Ti)
//   film        dm/dt  = −e,   e = hm A (ρ_sat(Ts) − ρ_air), A shrinking with the last tenth of the film; dew where e < 0
//   g while wet: also the convection to that part of A which lies inside the outer box, as far as it is covered
//   vapour   M dW/dt   = Σ n e + given off by parts − F (W − W_room)             W: kg water over kg dry air
// A film keeps its shell near the wet bulb by itself. Each unit starts at room temperature, the air as the shop's.
// Steps of any length: two-stage Rosenbrock method, second order and L-stable whatever the Jacobian (Verwer, Spee, Blom
// and Hundsdorfer 1999, SIAM J. Sci. Comput. 20:1456, from memory); ours is exact but for L and the thermostat's corners.
class MixedLoad {
 public:
  // Promise: at least one kind, counts and capacities of air, lining and shells above zero.
  MixedLoad(const OvenNodes& oven, std::vector<UnitNodes> units, const moist_air::HumidAir& room,
            Temperature set);

  // From after a bake instead: air, lining and units all at this temperature, no film left, the vapour as in the room.
  void start_dry(Temperature all);
  void advance(Duration step, MassFlow given_off);
  // Vapour put into the air after a step, as a correction.
  void add_vapour(Mass water) { state_[2] += water.si() / oven_.dry_air.si(); }

  std::size_t size() const { return units_.size(); }
  Temperature air() const { return Temperature::kelvins(state_[0]); }
  Temperature shell(std::size_t unit) const { return Temperature::kelvins(state_[3 + 3 * unit]); }
  Temperature inner(std::size_t unit) const;  // the shell's where there is no inner node
  Mass film(std::size_t unit) const { return Mass::si(state_[5 + 3 * unit]); }
  double film_share(std::size_t unit) const;  // of what there was at first
  bool wet(std::size_t unit) const { return film_share(unit) > film_gone; }
  Pressure vapour_pressure() const;
  double vapour_mass_per_pascal() const;  // kg of vapour in the oven for each pascal more
  Energy spent() const { return Energy::si(joules_); }

  // For whoever integrates it another way: air, lining (K), W, then shell, inner (K) and film (kg) of each kind, and
  // the rates of all.
  const std::vector<double>& state() const { return state_; }
  void rates(std::span<const double> state, MassFlow given_off, std::span<double> rates) const;

 private:
  enum class Heater { full, valve, off };
  struct Work;  // one Jacobian, taken apart
  void derivative(const std::vector<double>& y, double given_off, Heater heater,
                  std::vector<double>& f) const;
  std::vector<double> stepped(double step, double given_off, Heater heater) const;

  OvenNodes oven_;
  std::vector<UnitNodes> units_;
  Pressure pressure_;
  double room_ = 0, room_ratio_ = 0, set_ = 0;
  std::vector<double> state_;
  Heater heater_ = Heater::full;
  double joules_ = 0;
};

}  // namespace dampward::drying
