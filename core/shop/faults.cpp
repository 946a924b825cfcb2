#include "core/shop/faults.h"

#include <cmath>
#include <set>

#include "core/base/format.h"

namespace dampward::shop {
namespace {

// Collects faults below one dotted key.
class Examiner {
 public:
  Examiner(std::vector<Fault>& faults, std::string key) : faults_(faults), key_(std::move(key)) {}

  void fault(const std::string& name, std::string found, std::string expected) {
    faults_.push_back({name.empty() ? key_ : key_ + "." + name, std::move(found), std::move(expected)});
  }

  template <class Q>
  void above_zero(const std::string& name, Q value) {
    if (!(value.si() > 0) || !std::isfinite(value.si()))
      fault(name, "a figure that is zero, negative or no number", "more than zero");
  }
  template <class Q>
  void not_negative(const std::string& name, Q value) {
    if (!(value.si() >= 0) || !std::isfinite(value.si()))
      fault(name, "a negative figure, or no number", "zero or more");
  }
  void share(const std::string& name, double value) {
    if (!(value >= 0 && value <= 1))
      fault(name, format("a share of {}", value), "between 0 and 1 (0 % and 100 %)");
  }

 private:
  std::vector<Fault>& faults_;
  std::string key_;
};

void examine_hours(Examiner& at, const std::string& name, const WeekHours& hours) {
  for (const auto& [day, stretches] : hours.days) {
    for (const DailyHours& stretch : stretches) {
      if (stretch.to > stretch.from) continue;
      at.fault(name, "hours that end before they begin",
               "a later end; past midnight write two stretches, up to 24:00 and from 00:00");
      return;
    }
  }
}

void examine_lamps(Examiner& at, const Lamps& lamps) {
  if (lamps.count < 1)
    at.fault("lamps.count", format("{} lamps", lamps.count), "one or more, or no lamps at all");
  at.above_zero("lamps.each", lamps.each);
  if (!(lamps.distance > Length{})) {
    at.fault("lamps.distance", "no distance from lamp to the nearest lit part",
             "the distance, because without it nobody can say how hot that part becomes");
  }
  if (!(lamps.beam_degrees > 0 && lamps.beam_degrees <= 360)) {
    at.fault("lamps.beam", "no beam angle, or one outside 0 to 360 degrees",
             "the full cone angle of the lamp; a bare bulb shines all round, 360 deg");
  }
  if (lamps.radiant_share) at.share("lamps.radiant_share", *lamps.radiant_share);
}

void examine(Examiner at, const Oven& oven) {
  at.above_zero("inside", oven.inside_length);
  at.above_zero("inside", oven.inside_width);
  at.above_zero("inside", oven.inside_height);
  if (!oven.heater && !oven.lamps)
    at.fault("", "an oven with neither heater nor lamps", "a heater, lamps or both");
  if (oven.heater) at.above_zero("heater", *oven.heater);
  if (oven.lamps) examine_lamps(at, *oven.lamps);
  if (!(oven.coldest_setting <= oven.hottest_setting))
    at.fault("settings", "a coldest setting above the hottest", "coldest first");
  at.not_negative("swing", oven.swing);
  at.not_negative("evenness", oven.evenness);
  at.not_negative("vent", oven.vent);
  at.above_zero("supply", oven.supply);
  if (oven.distance_to_spray) at.not_negative("distance_to_spray", *oven.distance_to_spray);
  examine_hours(at, "powered", oven.powered);
}

void examine(Examiner at, const SprayPlace& spray) {
  at.above_zero("size", spray.length);
  at.above_zero("size", spray.width);
  at.above_zero("size", spray.height);
  if (spray.fan) at.above_zero("fan", *spray.fan);
  if (spray.air_changes_per_hour && !(*spray.air_changes_per_hour > 0)) {
    at.fault("air_changes", format("{} air changes an hour", *spray.air_changes_per_hour), "more than zero");
  }
  if (!(spray.mixing > 0 && spray.mixing <= 1)) {
    at.fault("mixing", format("a mixing factor of {}", spray.mixing),
             "between 0.1 (poorly mixed) and 1 (perfectly mixed)");
  }
  if (spray.ways_out < 0) at.fault("ways_out", "fewer ways out than none", "how many there are");
  for (const HeatSource& source : spray.heat_sources) {
    if (source.distance) at.not_negative("heat", *source.distance);
  }
}

void examine(Examiner at, const Gun& gun) {
  if (!gun.efficiency.ordered()) at.fault("efficiency", "a range out of order", "lowest, typical, highest");
  at.share("efficiency", gun.efficiency.low.fraction());
  at.share("efficiency", gun.efficiency.high.fraction());
  if (gun.kind != GunKind::brush) at.above_zero("rate", gun.fluid_rate);
}

void examine(Examiner at, const Person& person) {
  examine_hours(at, "shifts", person.shifts);
  for (const DailyHours& stretch : person.breaks) {
    if (stretch.to <= stretch.from) at.fault("breaks", "a break that ends before it begins", "a later end");
  }
}

void examine(Examiner at, const Station& station) {
  if (station.places < 1) at.fault("places", format("{} places", station.places), "one or more");
}

void examine(Examiner at, const Instrument& instrument) {
  if (instrument.calibrated && instrument.calibration_due &&
      *instrument.calibration_due < *instrument.calibrated) {
    at.fault("due", "a calibration due before it was done", "a later date");
  }
}

template <class Row>
void examine_all(std::vector<Fault>& faults, const std::string& table, const std::vector<Row>& rows) {
  std::set<std::string> seen;
  for (const Row& row : rows) {
    Examiner at(faults, table + "." + row.id.text);
    if (!seen.insert(row.id.text).second)
      at.fault("", format("the name \"{}\" used twice", row.id.text), "one name for each");
    examine(at, row);
  }
}

}  // namespace

std::vector<Fault> faults(const Shop& shop) {
  std::vector<Fault> found;
  Examiner site(found, "site");
  if (shop.site.salt) site.not_negative("salt", *shop.site.salt);
  if (shop.site.surf_distance) site.not_negative("surf_distance", *shop.site.surf_distance);
  if (!(shop.site.altitude > -1000 * metre && shop.site.altitude < 9000 * metre)) {
    site.fault("altitude", format("an altitude of {} m", shop.site.altitude.in(metre)),
               "between -1000 m and 9000 m");
  }
  examine_all(found, "ovens", shop.ovens);
  examine(Examiner(found, "spray"), shop.spray);
  examine_all(found, "guns", shop.guns);
  examine_all(found, "crew", shop.crew);
  examine_all(found, "stations", shop.stations);
  examine_all(found, "instruments", shop.instruments);
  return found;
}

}  // namespace dampward::shop
