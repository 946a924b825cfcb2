#pragma once

#include "core/materials/liquid.h"

// The varnish family as the shipped table has it, in the figures these tests need.
inline dampward::materials::Lacquer phenolic_varnish() {
  using namespace dampward;
  using materials::Method;
  materials::Lacquer varnish;
  varnish.id = LacquerId("varnish");
  varnish.solids_by_mass.value = {MassShare::percent(50), MassShare::percent(55), MassShare::percent(62)};
  varnish.density.value = {0.90 * kilogram_per_litre, 0.92 * kilogram_per_litre, 0.95 * kilogram_per_litre};
  varnish.thinner_parts_for_spray = 0.5;
  varnish.coats = {{Method::hand_gun, 3, {15 * minute, 17.5 * minute, 20 * minute}},
                   {Method::power_gun, 2, {15 * minute, 17.5 * minute, 20 * minute}},
                   {Method::brush, 2, {20 * minute, 40 * minute, 60 * minute}}};
  varnish.film_wanted.value = {50.8 * micrometre, 60 * micrometre, 75 * micrometre};
  varnish.hottest_surface = Temperature::celsius(38);
  varnish.coldest_surface = Temperature::celsius(10);
  varnish.humidity_top = Range<RelativeHumidity>(RelativeHumidity::percent(75), RelativeHumidity::percent(80),
                                                 RelativeHumidity::percent(85));
  return varnish;
}
