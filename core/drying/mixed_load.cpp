#include "core/drying/mixed_load.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/promise.h"
#include "core/drying/surface_drying.h"
#include "core/moist_air/saturation.h"

namespace dampward::drying {
namespace {

constexpr double vapour_gas = 461.526, ratio_of_masses = 0.621945;  // J/(kg K); water to dry air
constexpr double band = thermostat_band.si();

using Vector = std::array<double, 3>;
using Matrix = std::array<Vector, 3>;

// Solves A X = B for three right sides and one more, by elimination with pivots.
void solve(Matrix a, Matrix& b, Vector& c) {
  for (std::size_t i = 0; i < 3; ++i) {
    std::size_t pivot = i;
    for (std::size_t r = i + 1; r < 3; ++r)
      if (std::abs(a[r][i]) > std::abs(a[pivot][i])) pivot = r;
    std::swap(a[i], a[pivot]), std::swap(b[i], b[pivot]), std::swap(c[i], c[pivot]);
    for (std::size_t r = i + 1; r < 3; ++r) {
      const double factor = a[r][i] / a[i][i];
      for (std::size_t k = i; k < 3; ++k) a[r][k] -= factor * a[i][k];
      for (std::size_t k = 0; k < 3; ++k) b[r][k] -= factor * b[i][k];
      c[r] -= factor * c[i];
    }
  }
  for (std::size_t i = 3; i-- > 0;) {
    for (std::size_t r = i + 1; r < 3; ++r) {
      for (std::size_t k = 0; k < 3; ++k) b[i][k] -= a[i][r] * b[r][k];
      c[i] -= a[i][r] * c[r];
    }
    for (std::size_t k = 0; k < 3; ++k) b[i][k] /= a[i][i];
    c[i] /= a[i][i];
  }
}

// Vapour over a wet surface, kg/m³, and how it grows with the temperature (Clausius-Clapeyron).
struct Saturated {
  double density, slope;
};
Saturated saturated(double kelvins) {
  const Temperature t = Temperature::kelvins(kelvins);
  const double density = moist_air::saturation_pressure(t).si() / (vapour_gas * kelvins);
  return {density, density / kelvins * (evaporation_heat(t).si() / (vapour_gas * kelvins) - 1)};
}

// What leaves the film of one unit, kg/s, and how that depends on shell, film, air and vapour.
struct Leaving {
  double rate = 0, covered = 0, by_shell = 0, by_film = 0, by_air = 0, by_ratio = 0;
};
Leaving leaving(const UnitNodes& unit, double shell, double film, double air, double ratio, double pressure) {
  if (unit.drying.si() <= 0) return {};
  const double whole = patches * unit.film.si();
  const double vapour = pressure * ratio / (ratio_of_masses + ratio) / (vapour_gas * air);
  const auto [density, slope] = saturated(shell);
  const double drive = density - vapour;
  const bool patchy = drive > 0 && film < whole;
  const double covered = !patchy ? 1 : std::max(0.0, film) / whole;
  const double flow = covered * unit.drying.si();
  return {flow * drive,
          covered,
          flow * slope,
          patchy && film > 0 ? unit.drying.si() * drive / whole : 0,
          flow * vapour / air,
          -flow * vapour * ratio_of_masses / (std::max(ratio, 1e-9) * (ratio_of_masses + ratio))};
}

}  // namespace

// (I − γ h J) with the kinds eliminated: what is left couples air, lining and vapour only.
struct MixedLoad::Work {
  struct Kind {
    Matrix block, to_border, from_border;  // block⁻¹ · columns kept in to_border
  };
  std::vector<Kind> kinds;
  Matrix border{};

  void solve_all(std::vector<double>& right) const {
    Vector top = {right[0], right[1], right[2]};
    std::vector<Vector> inner(kinds.size());
    for (std::size_t i = 0; i < kinds.size(); ++i) {
      Matrix unused{};
      inner[i] = {right[3 + 3 * i], right[4 + 3 * i], right[5 + 3 * i]};
      solve(kinds[i].block, unused, inner[i]);
      for (std::size_t r = 0; r < 3; ++r)
        for (std::size_t k = 0; k < 3; ++k) top[r] -= kinds[i].from_border[r][k] * inner[i][k];
    }
    Matrix unused{};
    solve(border, unused, top);
    for (std::size_t r = 0; r < 3; ++r) right[r] = top[r];
    for (std::size_t i = 0; i < kinds.size(); ++i) {
      for (std::size_t r = 0; r < 3; ++r) {
        double value = inner[i][r];
        for (std::size_t k = 0; k < 3; ++k) value -= kinds[i].to_border[r][k] * top[k];
        right[3 + 3 * i + r] = value;
      }
    }
  }
};

MixedLoad::MixedLoad(const OvenNodes& oven, std::vector<UnitNodes> units, const moist_air::HumidAir& room,
                     Temperature set)
    : oven_(oven),
      units_(std::move(units)),
      pressure_(room.pressure),
      room_(room.temperature.kelvins()),
      room_ratio_(moist_air::humidity_ratio(room).fraction()),
      set_(set.kelvins()) {
  DAMPWARD_PROMISE(!units_.empty(), "a load has at least one kind");
  state_ = {room_, room_, room_ratio_};
  for (const UnitNodes& unit : units_) {
    DAMPWARD_PROMISE(unit.count > 0 && unit.shell > HeatCapacity{}, "every kind has units with a shell");
    state_.insert(state_.end(), {room_, room_, unit.film.si()});
  }
}

Temperature MixedLoad::inner(std::size_t unit) const {
  return units_[unit].inner > HeatCapacity{} ? Temperature::kelvins(state_[4 + 3 * unit]) : shell(unit);
}

double MixedLoad::film_share(std::size_t unit) const {
  return units_[unit].film > Mass{} ? film(unit) / units_[unit].film : 0;
}

Pressure MixedLoad::vapour_pressure() const {
  return pressure_ * (state_[2] / (ratio_of_masses + state_[2]));
}

double MixedLoad::vapour_mass_per_pascal() const {
  const double sum = ratio_of_masses + state_[2];
  return oven_.dry_air.si() * sum * sum / (ratio_of_masses * pressure_.si());
}

void MixedLoad::derivative(const std::vector<double>& y, double given_off, Heater heater,
                           std::vector<double>& f) const {
  const double air = y[0], lining = y[1], ratio = y[2];
  const double full = oven_.available.si(), asked = full * (set_ - air) / band;
  double heat = (heater == Heater::full ? full : asked) - oven_.vented.si() * (air - room_) -
                oven_.inside.si() * (air - lining);
  double water = given_off - oven_.fresh.si() * (ratio - room_ratio_);
  for (std::size_t i = 0; i < units_.size(); ++i) {
    const UnitNodes& unit = units_[i];
    const double shell = y[3 + 3 * i], inner = y[4 + 3 * i];
    const Leaving out = leaving(unit, shell, y[5 + 3 * i], air, ratio, pressure_.si());
    const double into = (unit.air_to_shell.si() + out.covered * unit.wet_more.si()) * (air - shell);
    const bool has_inner = unit.inner > HeatCapacity{};
    const double inwards = has_inner ? unit.shell_to_inner.si() * (shell - inner) : 0;
    const double direct = has_inner ? unit.air_to_inner.si() * (air - inner) : 0;
    f[3 + 3 * i] =
        (into - inwards - evaporation_heat(Temperature::kelvins(shell)).si() * out.rate) / unit.shell.si();
    f[4 + 3 * i] = has_inner ? (inwards + direct) / unit.inner.si() : 0;
    f[5 + 3 * i] = -out.rate;
    heat -= unit.count * (into + direct);
    water += unit.count * out.rate;
  }
  f[0] = heat / oven_.air.si();
  f[1] = (oven_.inside.si() * (air - lining) - oven_.outside.si() * (lining - room_)) / oven_.lining.si();
  f[2] = water / oven_.dry_air.si();
}

std::vector<double> MixedLoad::stepped(double step, double given_off, Heater heater) const {
  static const double gamma = 1 - std::sqrt(0.5);
  const std::vector<double>& y = state_;
  const double h = gamma * step;
  Work work;
  work.kinds.resize(units_.size());
  double air_row = oven_.vented.si() + oven_.inside.si(), water_row = oven_.fresh.si(), water_air = 0;
  if (heater == Heater::valve) air_row += oven_.available.si() / band;
  const double mass = oven_.dry_air.si();
  for (std::size_t i = 0; i < units_.size(); ++i) {
    const UnitNodes& unit = units_[i];
    const Leaving out = leaving(unit, y[3 + 3 * i], y[5 + 3 * i], y[0], y[2], pressure_.si());
    const double latent = evaporation_heat(Temperature::kelvins(y[3 + 3 * i])).si() / unit.shell.si();
    const double g = unit.air_to_shell.si() + out.covered * unit.wet_more.si(), n = unit.count;
    const bool has_inner = unit.inner > HeatCapacity{};
    const double k = has_inner ? unit.shell_to_inner.si() : 0, into = has_inner ? k / unit.inner.si() : 0;
    const double j = has_inner ? unit.air_to_inner.si() : 0, direct = has_inner ? j / unit.inner.si() : 0;
    Work::Kind& kind = work.kinds[i];
    kind.block = {{{1 + h * ((g + k) / unit.shell.si() + latent * out.by_shell), -h * k / unit.shell.si(),
                    h * latent * out.by_film},
                   {-h * into, 1 + h * (into + direct), 0},
                   {h * out.by_shell, 0, 1 + h * out.by_film}}};
    kind.to_border = {{{-h * (g / unit.shell.si() - latent * out.by_air), 0, h * latent * out.by_ratio},
                       {-h * direct, 0, 0},
                       {h * out.by_air, 0, h * out.by_ratio}}};
    kind.from_border = {{{-h * n * g / oven_.air.si(), -h * n * j / oven_.air.si(), 0},
                         {0, 0, 0},
                         {-h * n * out.by_shell / mass, 0, -h * n * out.by_film / mass}}};
    air_row += n * (g + j);
    water_row -= n * out.by_ratio;
    water_air += n * out.by_air;
  }
  work.border = {{{1 + h * air_row / oven_.air.si(), -h * oven_.inside.si() / oven_.air.si(), 0},
                  {-h * oven_.inside.si() / oven_.lining.si(),
                   1 + h * (oven_.inside.si() + oven_.outside.si()) / oven_.lining.si(), 0},
                  {-h * water_air / mass, 0, 1 + h * water_row / mass}}};
  for (Work::Kind& kind : work.kinds) {
    Vector unused{};
    solve(kind.block, kind.to_border, unused);
    for (std::size_t r = 0; r < 3; ++r)
      for (std::size_t c = 0; c < 3; ++c)
        for (std::size_t k = 0; k < 3; ++k)
          work.border[r][c] -= kind.from_border[r][k] * kind.to_border[k][c];
  }

  std::vector<double> first(y.size()), second(y.size()), next(y.size());
  derivative(y, given_off, heater, first);
  work.solve_all(first);
  for (std::size_t i = 0; i < y.size(); ++i) next[i] = y[i] + step * first[i];
  derivative(next, given_off, heater, second);
  for (std::size_t i = 0; i < y.size(); ++i) second[i] -= 2 * first[i];
  work.solve_all(second);
  for (std::size_t i = 0; i < y.size(); ++i) next[i] = y[i] + step * (1.5 * first[i] + 0.5 * second[i]);
  return next;
}

void MixedLoad::advance(Duration step, MassFlow given_off) {
  // Full power while the air stays below the valve's band at the end of the step, the valve otherwise: in a step that
  // crosses the corner the air's own heat, which is next to nothing, is all that is misplaced.
  std::vector<double> next = stepped(step.si(), given_off.si(), Heater::full);
  if (next[0] > set_ - band) next = stepped(step.si(), given_off.si(), Heater::valve);
  const double full = oven_.available.si();
  joules_ += step.si() * std::clamp(full * (set_ - next[0]) / band, 0.0, full);
  state_ = std::move(next);
  state_[2] = std::max(state_[2], 0.0);
  for (std::size_t i = 0; i < units_.size(); ++i) state_[5 + 3 * i] = std::max(state_[5 + 3 * i], 0.0);
}

void MixedLoad::rates(std::span<const double> state, MassFlow given_off, std::span<double> rates) const {
  const std::vector<double> y(state.begin(), state.end());
  std::vector<double> f(y.size());
  const double asked = (set_ - y[0]) / band;
  derivative(y, given_off.si(), asked > 1 ? Heater::full : Heater::valve, f);
  if (asked < 0) f[0] -= oven_.available.si() * asked / oven_.air.si();  // a valve gives no cold
  std::copy(f.begin(), f.end(), rates.begin());
}

}  // namespace dampward::drying
