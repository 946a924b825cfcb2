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

// By cofactors: the blocks are the identity and a little more, far from singular.
Matrix inverse(const Matrix& m) {
  const auto minor = [&](std::size_t r, std::size_t c) {
    const std::size_t a = (r + 1) % 3, b = (r + 2) % 3, d = (c + 1) % 3, e = (c + 2) % 3;
    return m[a][d] * m[b][e] - m[a][e] * m[b][d];
  };
  const double whole = m[0][0] * minor(0, 0) + m[0][1] * minor(0, 1) + m[0][2] * minor(0, 2);
  Matrix answer;
  for (std::size_t r = 0; r < 3; ++r)
    for (std::size_t c = 0; c < 3; ++c) answer[c][r] = minor(r, c) / whole;
  return answer;
}

Vector operator*(const Matrix& m, const Vector& v) {
  Vector answer{};
  for (std::size_t r = 0; r < 3; ++r) answer[r] = m[r][0] * v[0] + m[r][1] * v[1] + m[r][2] * v[2];
  return answer;
}

Matrix operator*(const Matrix& a, const Matrix& b) {
  Matrix answer{};
  for (std::size_t r = 0; r < 3; ++r)
    for (std::size_t c = 0; c < 3; ++c)
      answer[r][c] = a[r][0] * b[0][c] + a[r][1] * b[1][c] + a[r][2] * b[2][c];
  return answer;
}

void subtract(Vector& from, const Vector& what) {
  for (std::size_t r = 0; r < 3; ++r) from[r] -= what[r];
}

Vector three(const std::vector<double>& values, std::size_t first) {
  return {values[first], values[first + 1], values[first + 2]};
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
    Matrix block, to_border,
        from_border;  // the block's inverse; inverse times its columns to the border; rows back
  };
  std::vector<Kind> kinds;
  Matrix border{};  // inverse

  // `right` becomes the answer.
  void solve(std::vector<double>& right) const {
    Vector top = three(right, 0);
    for (std::size_t i = 0; i < kinds.size(); ++i) {
      const Vector inner = kinds[i].block * three(right, 3 + 3 * i);
      subtract(top, kinds[i].from_border * inner);
      std::copy(inner.begin(), inner.end(), right.begin() + static_cast<std::ptrdiff_t>(3 + 3 * i));
    }
    top = border * top;
    std::copy(top.begin(), top.end(), right.begin());
    for (std::size_t i = 0; i < kinds.size(); ++i) {
      const Vector by_border = kinds[i].to_border * top;
      for (std::size_t r = 0; r < 3; ++r) right[3 + 3 * i + r] -= by_border[r];
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

void MixedLoad::start_dry(Temperature all) {
  heater_ = all.kelvins() > set_ ? Heater::off : Heater::full;
  state_[0] = state_[1] = all.kelvins();
  for (std::size_t unit = 0; unit < units_.size(); ++unit) {
    state_[3 + 3 * unit] = state_[4 + 3 * unit] = all.kelvins();
    state_[5 + 3 * unit] = 0;
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
  double heat = (heater == Heater::full    ? full
                 : heater == Heater::valve ? asked
                                           : 0) -
                oven_.vented.si() * (air - room_) - oven_.inside.si() * (air - lining);
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
  constexpr double gamma = 0.2928932188134524;  // 1 − 1/√2
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
    kind.block = inverse(kind.block);
    kind.to_border = kind.block * kind.to_border;
    const Matrix eliminated = kind.from_border * kind.to_border;
    for (std::size_t r = 0; r < 3; ++r) subtract(work.border[r], eliminated[r]);
  }
  work.border = inverse(work.border);

  std::vector<double> first(y.size()), second(y.size()), next(y.size());
  derivative(y, given_off, heater, first);
  work.solve(first);
  for (std::size_t i = 0; i < y.size(); ++i) next[i] = y[i] + step * first[i];
  derivative(next, given_off, heater, second);
  for (std::size_t i = 0; i < y.size(); ++i) second[i] -= 2 * first[i];
  work.solve(second);
  for (std::size_t i = 0; i < y.size(); ++i) next[i] = y[i] + step * (1.5 * first[i] + 0.5 * second[i]);
  return next;
}

void MixedLoad::advance(Duration step, MassFlow given_off) {
  // Full power while the air stays below the valve's band at the end of the step, the valve otherwise: in a step that
  // crosses the corner the air's own heat, which is next to nothing, is all that is misplaced. Whichever held last is
  // tried first. A load that started hotter gets no heat before its air is down to the setting.
  const auto holds = [&](const std::vector<double>& next) {
    if (heater_ == Heater::off) return next[0] > set_;
    return (next[0] > set_ - band) == (heater_ == Heater::valve);
  };
  std::vector<double> next = stepped(step.si(), given_off.si(), heater_);
  if (!holds(next)) {
    heater_ = heater_ == Heater::valve ? Heater::full : Heater::valve;
    next = stepped(step.si(), given_off.si(), heater_);
  }
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
  derivative(y, given_off.si(), asked > 1 ? Heater::full : asked < 0 ? Heater::off : Heater::valve, f);
  std::copy(f.begin(), f.end(), rates.begin());
}

}  // namespace dampward::drying
