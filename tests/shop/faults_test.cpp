#include "core/shop/faults.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>

using namespace dampward;
using namespace dampward::shop;

namespace {

Shop good_shop() {
  Shop shop;
  Oven oven;
  oven.id = OvenId("cabinet");
  oven.inside_length = oven.inside_width = oven.inside_height = 900 * millimetre;
  oven.heater = 2 * kilowatt;
  oven.supply = 3 * kilowatt;
  oven.coldest_setting = Temperature::celsius(40);
  oven.hottest_setting = Temperature::celsius(90);
  shop.ovens = {oven};
  shop.spray.length = shop.spray.width = shop.spray.height = 3 * metre;
  Gun gun;
  gun.id = GunId("hand");
  gun.kind = GunKind::suction_gun;
  gun.efficiency = {TransferEfficiency::percent(5), TransferEfficiency::percent(10),
                    TransferEfficiency::percent(15)};
  gun.fluid_rate = 0.15 * litre_per_minute;
  shop.guns = {gun};
  Person person;
  person.id = PersonId("fitter");
  person.shifts.days[1] = {{std::chrono::minutes(420), std::chrono::minutes(930)}};
  shop.crew = {person};
  Station station;
  station.id = StationId("bench");
  shop.stations = {station};
  return shop;
}

bool names(const Shop& shop, const std::string& key) {
  const std::vector<Fault> found = faults(shop);
  return std::any_of(found.begin(), found.end(), [&](const Fault& fault) {
    return fault.key == key && !fault.found.empty() && !fault.expected.empty();
  });
}

}  // namespace

TEST_CASE("a sound shop has no faults") {
  CHECK(faults(good_shop()).empty());
}

TEST_CASE("an oven's impossible figures are each named with their key") {
  Shop shop = good_shop();
  Oven& oven = shop.ovens.front();
  oven.inside_width = -1 * metre;
  oven.heater = std::numeric_limits<double>::quiet_NaN() * watt;
  oven.supply = {};
  oven.hottest_setting = Temperature::celsius(20);
  oven.evenness = -1 * kelvin;
  oven.vent = std::numeric_limits<double>::infinity() * cubic_metre_per_minute;
  for (const char* key : {"inside", "heater", "supply", "settings", "evenness", "vent"}) {
    CAPTURE(key);
    CHECK(names(shop, std::string("ovens.cabinet.") + key));
  }
}

TEST_CASE("an oven without any heat, and lamps without distance or beam, are refused") {
  Shop shop = good_shop();
  shop.ovens.front().heater.reset();
  CHECK(names(shop, "ovens.cabinet"));
  shop.ovens.front().lamps = Lamps{0, 100 * watt, {}, 0, 1.5};
  for (const char* key : {"lamps.count", "lamps.distance", "lamps.beam", "lamps.radiant_share"}) {
    CAPTURE(key);
    CHECK(names(shop, std::string("ovens.cabinet.") + key));
  }
}

TEST_CASE("a shift and a break that end before they begin are named") {
  Shop shop = good_shop();
  shop.crew.front().shifts.days[1].front().to = std::chrono::minutes(300);
  shop.crew.front().breaks = {{std::chrono::minutes(600), std::chrono::minutes(600)}};
  shop.ovens.front().powered.days[2] = {{std::chrono::minutes(600), std::chrono::minutes(500)}};
  CHECK(names(shop, "crew.fitter.shifts"));
  CHECK(names(shop, "crew.fitter.breaks"));
  CHECK(names(shop, "ovens.cabinet.powered"));
}

TEST_CASE("a fan or a room of zero, a mixing factor above one and an efficiency out of order are named") {
  Shop shop = good_shop();
  shop.spray.fan = VolumeFlow{};
  shop.spray.height = {};
  shop.spray.mixing = 1.2;
  shop.spray.air_changes_per_hour = 0.0;
  shop.guns.front().efficiency.low = TransferEfficiency::percent(120);
  shop.stations.front().places = 0;
  for (const char* key : {"spray.fan", "spray.size", "spray.mixing", "spray.air_changes",
                          "guns.hand.efficiency", "stations.bench.places"}) {
    CAPTURE(key);
    CHECK(names(shop, key));
  }
}

TEST_CASE("one name for two ovens, and an altitude nobody stands at, are named") {
  Shop shop = good_shop();
  shop.ovens.push_back(shop.ovens.front());
  shop.site.altitude = 12000 * metre;
  CHECK(names(shop, "ovens.cabinet"));
  CHECK(names(shop, "site.altitude"));
}
