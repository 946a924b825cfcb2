#include "core/drying/load_run.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/drying/seam_water.h"
#include "core/drying/sorbing_body.h"
#include "core/drying/surface_drying.h"
#include "core/materials/isotherm.h"
#include "core/moist_air/saturation.h"

namespace dampward::drying {
namespace {

constexpr Duration step = 20 * second, longest_step = hour;
constexpr double growth = 1.06;  // of the steps once everything is warm
constexpr Duration never_warm = 48 * hour, never_dry = 2 * year;
constexpr double mass_spread = 1.25;
constexpr HeatCapacity least_shell = 50 * joule_per_kelvin;

UnitNodes nodes_of(const LoadUnits& units, const shop::Oven& oven, Temperature air, Side side) {
  const OvenPiece& piece = *units.piece;
  const bool safe = side == Side::safe;
  const AirMotion motion = oven.air_moves ? AirMotion::moving : AirMotion::still;
  const auto slow = [&](const auto& range) { return safe ? range.high : range.typical; };
  const HeatCapacity all = std::max(slow(piece.capacity), least_shell);
  UnitNodes nodes;
  nodes.count = units.count;
  nodes.shell = all;
  nodes.air_to_shell = std::max(all / slow(piece.time_constant(motion)), 1e-3 * watt_per_kelvin);
  if (const auto& heavy = piece.heavy_time_constant(motion); heavy && piece.heavy_capacity) {
    nodes.inner = std::min(slow(*piece.heavy_capacity), 0.9 * all);
    nodes.shell = all - nodes.inner;
    (piece.opened ? nodes.air_to_inner : nodes.shell_to_inner) = nodes.inner / slow(*heavy);
  }
  const Area wet = slow(piece.wet_surface);
  const HeatTransferCoefficient convection = surface_convection(piece.flow_length, oven.air_moves, air);
  nodes.drying = mass_transfer_coefficient(convection) * wet;
  nodes.wet_more = convection * std::max(Area{}, wet - piece.box);
  nodes.film = wet * slow(wiped_film) * (1000 * kilogram_per_cubic_metre);
  return nodes;
}

// One part's inside on its way through the run.
class Inside {
 public:
  Inside(const OvenPart& part, const LoadUnits& units, std::size_t kind, const moist_air::HumidAir& shop_air,
         const RunSettings& settings)
      : part_(part), kind_(kind), isotherm_(part.body->isotherm) {
    const moist_air::HumidAir settled = moist_air::brought_to(shop_air, settings.air);
    const auto start = materials::equilibrium_moisture(isotherm_, shop_air.temperature, shop_air.humidity);
    const auto floor = materials::equilibrium_moisture(isotherm_, settled.temperature, settled.humidity);
    known_ = start && floor;
    start_ = known_ ? start->fraction() : 1;
    floor_ = known_ ? floor->fraction() : 0;
    allowed_ = floor_ + settings.rules.porous_residual * removable();
    if (known_) {
      const double spread = settings.side == Side::safe ? mass_spread : 1;
      fibre_ = (spread * units.count * part.body->fibre).si();
    }
    inside_.emplace(part.body->shape, part.body->layer, MoistureContent::fraction(start_));
    layer_ = before_ = start_;
  }

  const OvenPart& part() const { return part_; }
  std::size_t kind() const { return kind_; }
  bool asked() const { return part_.asked; }
  bool is_dry() const { return dry_; }
  Duration dry_at() const { return dry_at_; }

  // Returns the water given off, kg.
  double advance(Temperature from, Temperature to, Pressure vapour, Duration length, Side side) {
    const Diffusivity mean =
        0.5 * (effective_diffusivity(*part_.body, from, side) + effective_diffusivity(*part_.body, to, side));
    const Length path = part_.body->path.typical;
    const double held = inside_->mean().fraction();
    before_ = inside_->layer().fraction();
    at_ = to;
    inside_->advance(mean * length / (path * path), surface(vapour));
    return fibre_ * (held - inside_->mean().fraction());
  }
  // How much less water it gives off for each pascal more in the air, kg/Pa.
  double buffer(Pressure vapour) const {
    if (fibre_ == 0) return 0;
    const Pressure more = 0.01 * vapour + pascal;
    return fibre_ * inside_->openness() *
           std::max(0.0, surface(vapour + more).fraction() - inside_->surface().fraction()) / more.si();
  }
  double correct(Pressure vapour) {  // returns the water it took back
    const double held = inside_->mean().fraction();
    if (known_) inside_->correct(surface(vapour));
    return fibre_ * (inside_->mean().fraction() - held);
  }

  // To be called after each step: notes when in it the target was met.
  void judge(Duration start, Duration length) {
    layer_ = inside_->layer().fraction();
    if (dry_ || layer_ > allowed_ + 1e-12) return;
    dry_ = true;
    dry_at_ = start + where(allowed_) * length;
  }
  // At this share of the last step.
  double residual(double share) const {
    if (removable() <= 1e-6) return 0;
    const double first = excess(before_), last = excess(layer_);
    return std::pow(first, 1 - share) * std::pow(last, share) / removable();
  }
  std::optional<Sorption> moisture() const {
    if (!known_) return std::nullopt;
    return Sorption{MoistureContent::fraction(start_), MoistureContent::fraction(floor_), inside_->layer()};
  }
  double given_off() const { return fibre_ * (start_ - inside_->mean().fraction()); }

 private:
  double removable() const { return std::max(0.0, start_ - floor_); }
  double excess(double moisture) const { return std::max(moisture - floor_, 1e-9); }
  double where(double moisture) const {
    const double first = std::log(excess(before_)), last = std::log(excess(layer_));
    if (first <= last) return 1;
    return std::clamp((first - std::log(excess(moisture))) / (first - last), 0.0, 1.0);
  }
  MoistureContent surface(Pressure vapour) const {
    if (!known_) return MoistureContent::fraction(0);
    const double humidity = std::clamp(vapour / moist_air::saturation_pressure(at_), 0.0, 1.0);
    return materials::equilibrium_moisture(isotherm_, at_, RelativeHumidity::fraction(humidity))
        .value_or(MoistureContent::fraction(floor_));
  }

  const OvenPart& part_;
  std::size_t kind_;
  materials::Isotherm isotherm_;
  bool known_ = false, dry_ = false;
  double start_ = 1, floor_ = 0, allowed_ = 0, fibre_ = 0, layer_ = 0, before_ = 0;
  Temperature at_;
  Duration dry_at_;
  std::optional<SorbingBody> inside_;
};

// Temperatures of one node, thinned where they run straight.
class Record {
 public:
  void note(Duration time, Temperature now) {
    if (points_.size() >= 2) {
      const auto& a = points_[points_.size() - 2];
      const auto& b = points_.back();
      const double slope = (b.temperature - a.temperature).si() / (b.time - a.time).si();
      const double straight = a.temperature.kelvins() + slope * (time - a.time).si();
      if (std::abs(now.kelvins() - straight) < 0.25 && time - a.time < 20 * minute) points_.pop_back();
    }
    points_.push_back({time, now});
  }
  TemperatureCurve until(Duration end) const {
    std::vector<TemperatureCurve::Point> kept = points_;
    const Temperature last = TemperatureCurve(points_).at(end);
    while (kept.size() > 1 && kept.back().time >= end) kept.pop_back();
    kept.push_back({end, last});
    return TemperatureCurve(std::move(kept));
  }

 private:
  std::vector<TemperatureCurve::Point> points_;
};

class Run {
 public:
  Run(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load,
      const moist_air::HumidAir& shop_air, const RunSettings& settings)
      : load_(load),
        settings_(settings),
        oven_(mixed_load(oven, wall, load, shop_air, settings)),
        seams_(seam_time(load, oven, settings.air, shop_air, settings.side)),
        shells_(load.size()),
        inners_(load.size()) {
    for (std::size_t kind = 0; kind < load.size(); ++kind) {
      for (const OvenPart& part : load[kind].piece->parts) {
        if (part.body) insides_.emplace_back(part, load[kind], kind, shop_air, settings);
      }
    }
    note();
  }

  std::optional<LoadRun> go() {
    Duration length = step;
    while (!ended()) {
      if (!warm_at_ && now_ > never_warm) return std::nullopt;
      if (now_ > never_dry) return std::nullopt;
      advance(length);
      if (warm_at_) length = std::min(growth * length, longest_step);
    }
    return report();
  }

 private:
  bool wet() const {
    for (std::size_t i = 0; i < oven_.size(); ++i)
      if (oven_.wet(i)) return true;
    return false;
  }
  // The wettest film, as a share of what it was; and how far the coldest node is from its air.
  double film() const {
    double most = 0;
    for (std::size_t i = 0; i < oven_.size(); ++i) most = std::max(most, oven_.film_share(i));
    return most;
  }
  double short_of_air() const {
    double most = 0;
    for (std::size_t i = 0; i < oven_.size(); ++i) {
      const Temperature coldest = std::min(oven_.shell(i), oven_.inner(i));
      most = std::max(most, (settings_.air - coldest).si());
    }
    return most;
  }

  void note() {
    for (std::size_t i = 0; i < oven_.size(); ++i) {
      shells_[i].note(now_, oven_.shell(i));
      inners_[i].note(now_, oven_.inner(i));
    }
  }

  std::vector<std::pair<Temperature, Temperature>> temperatures() const {
    std::vector<std::pair<Temperature, Temperature>> all;
    for (std::size_t i = 0; i < oven_.size(); ++i) all.emplace_back(oven_.shell(i), oven_.inner(i));
    return all;
  }

  void advance(Duration length) {
    const auto before = temperatures();
    const double film_before = film(), short_before = short_of_air();
    oven_.advance(length, given_off_);
    start_ = now_;
    length_ = length;
    now_ += length;
    Duration drying = length;  // of this step, for the insides
    if (!dry_at_) {
      drying = {};
      if (!wet()) {
        const double share =
            film_before <= film_gone ? 0 : (film_before - film_gone) / (film_before - film());
        dry_at_ = start_ + share * length;
        drying = now_ - *dry_at_;
      }
    }
    if (drying > Duration{}) move_water(before, drying, length);
    if (!warm_at_ && dry_at_ && short_of_air() <= reached_within.si()) {
      const double gap = short_before - short_of_air();
      const double share = gap > 0 ? std::clamp((short_before - reached_within.si()) / gap, 0.0, 1.0) : 0;
      warm_at_ = std::max(*dry_at_, start_ + share * length);
    }
    note();
  }

  // The air's vapour and the parts' water come to terms: what the parts gave off beyond what the step counted on makes
  // the air damper, which holds them back in turn.
  void move_water(const std::vector<std::pair<Temperature, Temperature>>& before, Duration drying,
                  Duration length) {
    const Pressure vapour = oven_.vapour_pressure();
    double given = 0;
    for (Inside& inside : insides_) {
      const std::size_t i = inside.kind();
      const bool heavy = inside.part().in_heavy_lump;
      const Temperature from = heavy ? before[i].second : before[i].first;
      const Temperature to = heavy ? oven_.inner(i) : oven_.shell(i);
      given += inside.advance(from, to, vapour, drying, settings_.side);
    }
    double buffer = 0;
    for (const Inside& inside : insides_) buffer += inside.buffer(vapour);
    const double air = oven_.vapour_mass_per_pascal();
    const double surplus = given - given_off_.si() * length.si();
    const Pressure corrected = std::max(Pressure{}, vapour + Pressure::si(surplus / (air + buffer)));
    for (Inside& inside : insides_) given -= inside.correct(corrected);
    oven_.add_vapour(Mass::si(given - given_off_.si() * length.si()));
    given_off_ = MassFlow::si(given / length.si());
    for (Inside& inside : insides_) inside.judge(now_ - drying, drying);
    dampest_ = std::max(dampest_, (oven_.vapour_pressure() / moist_air::saturation_pressure(oven_.air())));
  }

  Duration needed(const Inside& inside) const {
    return inside.asked() ? std::max(Duration{}, inside.dry_at() - *warm_at_) : Duration{};
  }

  // Once everything asked is dry, the moment that was.
  std::optional<Duration> dry_after_warm() const {
    if (!warm_at_) return std::nullopt;
    Duration longest = std::max(seams_, settings_.at_least_hold);
    for (const Inside& inside : insides_) {
      if (!inside.asked()) continue;
      if (!inside.is_dry()) return std::nullopt;
      longest = std::max(longest, needed(inside));
    }
    return longest;
  }

  bool ended() {
    const auto hold = dry_after_warm();
    if (!hold) return false;
    end_ = std::max(*warm_at_ + *hold, settings_.at_least);
    return now_ >= end_;
  }

  LoadRun report() const {
    LoadRun run;
    run.plateau = *dry_at_;
    run.warm_up = *warm_at_ - *dry_at_;
    run.hold = *dry_after_warm();
    const double share = length_ > Duration{} ? std::clamp((end_ - start_) / length_, 0.0, 1.0) : 1;
    auto inside = insides_.begin();
    for (const LoadUnits& units : load_) {
      std::vector<PartRun>& parts = run.parts.emplace_back();
      run.surface_water += film_of(units);
      for (const OvenPart& part : units.piece->parts) {
        PartRun& told = parts.emplace_back();
        if (part.body) {
          told.needs = needed(*inside);
          told.residual = inside->residual(share);
          told.moisture = inside->moisture();
          run.inside_water += Mass::si(inside->given_off());
          ++inside;
        }
        if (part.traps_damp) told.needs = std::max(told.needs, seams_);
      }
    }
    for (const Record& record : shells_) run.shell.push_back(record.until(end_));
    for (const Record& record : inners_) run.inner.push_back(record.until(end_));
    run.dampest = RelativeHumidity::fraction(dampest_);
    run.energy = oven_.spent();
    return run;
  }

  Mass film_of(const LoadUnits& units) const {
    const Range<Area>& wet = units.piece->wet_surface;
    const bool safe = settings_.side == Side::safe;
    return units.count * (safe ? wet.high * wiped_film.high : wet.typical * wiped_film.typical) *
           (1000 * kilogram_per_cubic_metre);
  }

  std::span<const LoadUnits> load_;
  const RunSettings& settings_;
  MixedLoad oven_;
  Duration seams_;
  std::vector<Inside> insides_;
  std::vector<Record> shells_, inners_;
  Duration now_, start_, length_, end_;
  MassFlow given_off_;
  std::optional<Duration> dry_at_, warm_at_;
  double dampest_ = 0;
};

}  // namespace

MixedLoad mixed_load(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load,
                     const moist_air::HumidAir& shop_air, const RunSettings& settings) {
  std::vector<UnitNodes> units;
  for (const LoadUnits& each : load) units.push_back(nodes_of(each, oven, settings.air, settings.side));
  const Loss loss = settings.loss.value_or(settings.side == Side::safe ? Loss::highest : Loss::typical);
  const auto settled = moist_air::brought_to(shop_air, settings.air);
  return MixedLoad(oven_nodes(oven, wall, loss, settled), std::move(units), shop_air, settings.air);
}

std::optional<LoadRun> run_load(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load,
                                const moist_air::HumidAir& shop_air, const RunSettings& settings) {
  return Run(oven, wall, load, shop_air, settings).go();
}

}  // namespace dampward::drying
