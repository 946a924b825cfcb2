#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/id.h"
#include "core/quantity/figure.h"
#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::materials {

// An exposure limit is worth nothing without who set it and when.
struct ExposureLimit {
  std::string authority;  // "OSHA PEL", "NIOSH REL", "Ontario OEL"
  int year = 0;           // edition the figure was read from; 0 = not known
  std::optional<VapourShare> eight_hours;
  std::optional<VapourShare> fifteen_minutes;
  std::optional<VapourShare> ceiling;
  Mark mark = Mark::doubtful;
  std::string source;
};

// One solvent. Flammable limits hold for air at 25 °C; the lowest of the published tables rules.
struct Solvent {
  SolventId id;
  std::string name;
  std::string cas;
  std::string family;  // aromatic hydrocarbons, esters, ketones, alcohols … as in Material::attacked_by
  std::optional<MolarMass> molar_mass;
  std::optional<Density> density;  // liquid, 20 °C
  std::optional<Figure<VapourShare>> lower_flammable_limit;
  std::optional<Temperature> flash_point;
  std::vector<ExposureLimit> limits;
  std::optional<VapourShare> danger_to_life;  // IDLH
  std::string source;
};

// Who is in a liquid, by mass of its volatile part. The shares of a whole recipe add to 1.
struct SolventPart {
  SolventId solvent;
  Range<MassShare> share;
};

// A thinner, or a cleaning liquid.
struct Liquid {
  std::string id;
  std::string name;
  std::vector<SolventPart> composition;  // empty: unknown
  std::optional<Density> density;
  std::optional<Temperature> flash_point;
  std::vector<std::string> attacks;  // materials or families it must not touch
  std::vector<std::string>
      good_for;  // soils: dust, oil_grease, fungus, salts, corrosion_products, flux_rosin, old_lacquer
  Mark mark = Mark::doubtful;
  std::string source;
  std::string note;
};

// A way of putting lacquer on.
enum class Method { hand_gun, power_gun, brush };

struct CoatRule {
  Method method;
  int coats = 0;
  Range<Duration> flash;  // wait between coats
};

// A lacquer as supplied.
struct Lacquer {
  LacquerId id;
  std::string name;
  std::string family;  // row family of the shipped table
  Figure<MassShare> solids_by_mass;
  Figure<Density> density;
  std::vector<SolventPart> composition;  // of its volatile part; empty: unknown
  std::string thinner;                   // id of its thinner; empty: none
  double thinner_parts_for_spray =
      0;  // parts of thinner to one part of lacquer, by volume (trade 2:1 mix = 0.5)
  double thinner_parts_for_brush = 0;
  std::vector<CoatRule> coats;
  Figure<Length> film_wanted;  // dry film in all; low = the published floor
  std::optional<Range<Duration>> touch_dry;
  std::optional<Range<Duration>> recoat_earliest;
  std::optional<Range<Duration>> recoat_latest;
  std::optional<Temperature> hottest_surface;  // published upper application temperature
  std::optional<Temperature> coldest_surface;
  TemperatureStep dew_margin = 3 * kelvin;
  std::optional<Range<RelativeHumidity>> humidity_top;
  std::optional<Duration> pot_life;  // none: one part, no pot life
  Duration airing_before_closing = 24 * hour;
  Duration constants_settle = 72 * hour;
  bool isocyanate = false;
  bool rags_self_heat = false;
  std::string fungicide;
  std::vector<std::string> attacks;  // materials or families it must not touch
  Mark mark = Mark::doubtful;
  std::string source;
};

}  // namespace dampward::materials
