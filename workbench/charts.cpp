#include "workbench/charts.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/coating/consumption.h"
#include "core/drying/load_run.h"
#include "core/drying/oven_model.h"
#include "core/drying/oven_piece.h"
#include "core/drying/set_point.h"
#include "core/exposure/climate.h"
#include "core/materials/composition.h"
#include "core/moist_air/atmosphere.h"
#include "core/moist_air/humid_air.h"
#include "core/room_air/air_needs.h"
#include "workbench/detail/coat_case.h"
#include "workbench/workshop.h"

namespace dampward::workbench {
namespace {

using materials::Method;

// What a cup gun puts on a small open chassis, and on a flat panel at best (docs/theory/film_and_window.md).
constexpr Range<TransferEfficiency> any_gun{TransferEfficiency::fraction(0.05),
                                            TransferEfficiency::fraction(0.10),
                                            TransferEfficiency::fraction(0.30)};
// So many sets are named on a scale; more would lie over one another.
constexpr std::size_t most_names = 8;
constexpr std::size_t most_slower = 4;

double down_in_fives(double figure) {
  return 5 * std::floor(figure / 5 + 1e-9);
}
double up_in_fives(double figure) {
  return 5 * std::ceil(figure / 5 - 1e-9);
}

double quantile(std::vector<double> all, double share) {
  std::sort(all.begin(), all.end());
  const double place = std::ceil(share * static_cast<double>(all.size()));
  return all[static_cast<std::size_t>(std::clamp(place, 1.0, static_cast<double>(all.size()))) - 1];
}

// The air the charts are drawn for: all but the rarest hours of the year, in round figures.
struct ChartAir {
  Temperature low, high, dew_low;
  RelativeHumidity humidity_low;
  Temperature usual;
  RelativeHumidity usual_humidity;  // of the wettest month
  Temperature warmest;
  double covered = 0;
};

ChartAir air_of(const exposure::Weather& weather, const coating::WindowRules& rules) {
  constexpr double rare = 0.02;
  std::vector<double> temperatures, dews, humidities;
  for (const exposure::WeatherHour& hour : weather.hours) {
    temperatures.push_back(hour.temperature.celsius());
    dews.push_back(hour.dew_point.celsius());
    humidities.push_back(hour.humidity.percent());
  }
  const double coldest = coldest_chart.celsius(), hottest = hottest_chart.celsius();
  const double surface = rules.hottest.celsius(), highest_dew = (rules.hottest - rules.dew_margin).celsius();
  ChartAir air;
  air.low =
      Temperature::celsius(std::clamp(down_in_fives(quantile(temperatures, rare)), coldest, surface - 10));
  air.high = Temperature::celsius(
      std::clamp(up_in_fives(quantile(temperatures, 1 - rare)), up_in_fives(surface), hottest));
  air.dew_low =
      Temperature::celsius(std::clamp(down_in_fives(quantile(dews, rare)), coldest, highest_dew - 10));
  air.humidity_low =
      RelativeHumidity::percent(std::clamp(10 * std::floor(quantile(humidities, rare) / 10), 20.0, 70.0));
  const auto on_it = [&](const exposure::WeatherHour& hour) {
    return hour.temperature >= air.low && hour.temperature <= air.high && hour.dew_point >= air.dew_low &&
           hour.humidity >= air.humidity_low;
  };
  air.covered = static_cast<double>(std::count_if(weather.hours.begin(), weather.hours.end(), on_it)) /
                static_cast<double>(weather.hours.size());
  const exposure::Climate climate = exposure::climate_of(weather);
  air.usual = climate.mean_temperature;
  air.usual_humidity = climate.mean_humidity;
  air.warmest = climate.months.front().temperature_95;
  for (const exposure::MonthClimate& month : climate.months) {
    air.warmest = std::max(air.warmest, month.temperature_95);
    if (climate.worst_months.empty() || month.month != climate.worst_months.front()) continue;
    // Damp as a plan would count on it.
    air.usual = month.mean_temperature;
    air.usual_humidity =
        moist_air::from_dew_point(air.usual, month.dew_point_95, moist_air::sea_level_pressure).humidity;
  }
  const auto whole = [](double figure, double low, double high) {
    return std::clamp(std::round(figure), low, high);
  };
  air.usual =
      Temperature::celsius(whole(air.usual.celsius(), air.low.celsius() + 1, rules.hottest.celsius() - 2));
  air.usual_humidity =
      RelativeHumidity::percent(whole(air.usual_humidity.percent(), air.humidity_low.percent() + 5, 95));
  return air;
}

// The kinds the shop has described; every archetype where it has none.
std::vector<const equipment::Kind*> kinds_of(const Workshop& workshop) {
  std::vector<const equipment::Kind*> own, all;
  for (const equipment::Kind& kind : workshop.kinds.rows()) {
    all.push_back(&kind);
    if (!kind.like.empty()) own.push_back(&kind);
  }
  return own.empty() ? all : own;
}

drying::PartsOut out_of(const equipment::Kind& kind, const Workshop& workshop) {
  return drying::usually_out(kind, workshop.shop.valves_stay ? equipment::ValveChoice::stay_as_masks
                                                             : equipment::ValveChoice::come_out);
}

// The lacquer's first method, guns before the brush.
std::optional<coating::CoatingWork> usual_work(const materials::Lacquer& lacquer) {
  for (const Method method : {Method::hand_gun, Method::power_gun, Method::brush}) {
    if (const auto work = coating::coating_work(lacquer, method, Duration{}); work && work->coats > 0)
      return work;
  }
  return std::nullopt;
}

class Maker {
 public:
  Maker(const Workshop& workshop, const exposure::Weather& weather, const ChartsQuestion& question,
        const materials::Lacquer& lacquer)
      : workshop_(workshop),
        weather_(weather),
        question_(question),
        lacquer_(lacquer),
        rules_(coating::window_rules(lacquer)),
        air_(air_of(weather, rules_)) {}

  Result<WallCharts> make() {
    if (air_.covered < least_covered)
      return Problem{
          {question_.weather_file},
          format("a climate of which {} % of the hours lie on a wall chart ({} to {} °C, dew point {} °C "
                 "or more)",
                 fixed(100 * air_.covered, 0), fixed(air_.low.celsius(), 0), fixed(air_.high.celsius(), 0),
                 fixed(air_.dew_low.celsius(), 0)),
          format("{} % or more", fixed(100 * least_covered, 0)),
          "Coat indoors where it is warmer and ask window and air for that air instead."};
    WallCharts charts;
    charts.shop = workshop_.shop.site.name;
    charts.lacquer = lacquer_.name;
    charts.station = weather_.station;
    charts.weather = question_.weather_file;
    charts.covered = air_.covered;
    of_ = {charts.shop, charts.lacquer, charts.station, charts.weather, charts.covered, ""};
    bakes(charts);
    window(charts);
    litres(charts);
    fan(charts);
    dew(charts);
    return charts;
  }

 private:
  void bakes(WallCharts& charts) {
    charts::BakeChart any;
    any.evenness = question_.evenness;
    any.excess = question_.evenness + drying::reached_within;
    any.margin = drying::default_margin(Mark::estimate);
    any.residual = drying::DryRules{}.porous_residual;
    any.thinnest = 0.5 * millimetre;
    any.thickest = 10 * millimetre;
    for (const materials::Material& material : workshop_.materials.rows()) {
      if (material.drying == materials::Drying::porous && material.diffusion)
        any.porous.push_back(*material.diffusion);
    }
    const double lowest = up_in_fives(drying::coldest_bake.celsius());
    if (workshop_.shop.ovens.empty()) {
      any.set_low = Temperature::celsius(lowest);
      any.set_high = Temperature::celsius(80);
      add(charts, any);
    }
    for (const shop::Oven& oven : workshop_.shop.ovens) {
      charts::BakeChart chart = any;
      chart.oven = oven.name;
      chart.evenness = oven.evenness;
      chart.set_low = Temperature::celsius(std::max(lowest, up_in_fives(oven.coldest_setting.celsius())));
      chart.set_high = Temperature::celsius(down_in_fives(oven.hottest_setting.celsius()));
      if (const auto fault = oven.lamps ? drying::lamp_fault(oven) : std::nullopt) {
        charts.left_out.push_back(
            {"bake_" + oven.id.text, *fault, "Write the lamps' watts, distance and beam down."});
      } else if (chart.set_high - chart.set_low < 10 * kelvin) {
        charts.left_out.push_back(
            {"bake_" + oven.id.text,
             format("its thermostat goes from {} to {} °C above the coldest bake",
                    fixed(chart.set_low.celsius(), 0), fixed(chart.set_high.celsius(), 0)),
             "Bake by a plan, or in another oven."});
      } else {
        chart.excess = drying::oven_excess(oven).sum();
        add(charts, chart);
      }
    }
  }

  void add(WallCharts& charts, const charts::BakeChart& chart) {
    const double middle = 0.5 * (chart.set_low.celsius() + chart.set_high.celsius());
    const double set =
        std::clamp(60.0, chart.set_low.celsius() + 1, std::max(middle, chart.set_low.celsius() + 1));
    charts.bakes.push_back({chart, Temperature::celsius(std::round(set)), 2 * millimetre, of_});
  }

  void window(WallCharts& charts) {
    papers::WindowChartSheet sheet;
    sheet.chart.air_low = air_.low;
    sheet.chart.air_high = air_.high;
    sheet.chart.humidity_low = air_.humidity_low;
    sheet.chart.dew_low = air_.dew_low;
    sheet.chart.rules = rules_;
    sheet.example_air = air_.usual;
    sheet.example_humidity = air_.usual_humidity;
    if (const auto work = usual_work(lacquer_)) {
      sheet.coats = work->coats;
      sheet.flashes = work->whole();
    }
    sheet.of = of_;
    // Every kind at the low end of its range; the quickest gives the curves, the others so many times as long, rounded down.
    std::vector<std::pair<Duration, std::string>> cooling;
    for (const equipment::Kind* kind : kinds_of(workshop_)) {
      const auto piece = drying::oven_piece(*kind, out_of(*kind, workshop_), workshop_.materials);
      cooling.emplace_back(piece.time_constant(drying::AirMotion::still).low, kind->name);
    }
    std::sort(cooling.begin(), cooling.end());
    sheet.chart.cooling = cooling.front().first;
    sheet.quickest = cooling.front().second;
    for (const auto& [time, kind] : cooling) {
      const int times = static_cast<int>(std::floor(time / sheet.chart.cooling + 1e-9));
      if (times >= 2 && sheet.slower.size() < most_slower) sheet.slower.push_back({kind, times});
    }
    charts.window = sheet;
  }

  // Guns and brush that the lacquer is for.
  struct Tool {
    std::string name;
    Method method;
    Range<TransferEfficiency> efficiency;
  };
  std::vector<Tool> tools() const {
    std::vector<Tool> all;
    for (const shop::Gun& gun : workshop_.shop.guns)
      all.push_back({gun.name, method_of(gun), gun.efficiency});
    if (all.empty())
      all = {{question_.tools.hand_gun, Method::hand_gun, any_gun},
             {question_.tools.brush, Method::brush, coating::brush_efficiency}};
    return all;
  }

  void litres(WallCharts& charts) {
    papers::LitresChartSheet sheet;
    const auto solvent = materials::volatile_density(lacquer_.composition, workshop_.solvents.rows());
    for (const Tool& tool : tools()) {
      const auto use =
          coating::consumption(1 * square_metre, lacquer_, solvent, {tool.method, tool.efficiency});
      if (!use || use->coats < 1) continue;
      const auto each = [](Volume volume) { return volume / square_metre; };
      sheet.chart.tools.push_back(
          {tool.name, {each(use->ready.low), each(use->ready.typical), each(use->ready.high)}});
      if (sheet.coats == 0) sheet.coats = use->coats, sheet.film = use->film;
    }
    if (sheet.chart.tools.empty()) {
      charts.left_out.push_back({"litres", lacquer_.name + " is for none of the guns and brushes here",
                                 "Write a gun or brush it is for into spray.toml."});
      return;
    }
    std::vector<charts::LitresChart::Set> sets;
    for (const equipment::Kind* kind : kinds_of(workshop_)) {
      const bool stripped = kind->usual_way == equipment::CoatingWay::spray_stripped;
      const Range<Area>& area = (stripped ? kind->spray_area_stripped : kind->spray_area_assembled).value;
      if (area.low > Area{}) sets.push_back({kind->name, area});
    }
    std::sort(sets.begin(), sets.end(),
              [](const auto& a, const auto& b) { return a.area.typical < b.area.typical; });
    const std::size_t named = std::min(sets.size(), most_names);
    for (std::size_t i = 0; i < named; ++i)
      sheet.chart.sets.push_back(sets[named < 2 ? 0 : i * (sets.size() - 1) / (named - 1)]);
    sheet.example_area = 0.5 * square_metre;
    sheet.of = of_;
    charts.litres = sheet;
  }

  void fan(WallCharts& charts) {
    Workshop with_place = workshop_;
    shop::SprayPlace& place = with_place.shop.spray;
    const bool nobodys = !(place.length > Length{});
    if (nobodys) {  // what a room needs does not hang on its size
      place.length = place.width = place.height = 3 * metre;
      place.fan = 1 * cubic_metre_per_minute;
      place.opening_to_outside = true;
    }
    const Length altitude = weather_.elevation.value_or(workshop_.shop.site.altitude);
    const auto paint = paint_shop(with_place, {air_.warmest, moist_air::standard_pressure(altitude)});
    if (!paint) {
      charts.left_out.push_back({"fan", paint.problems().front().found, paint.problems().front().expected});
      return;
    }
    if (paint->closed || !paint->vapour) {
      charts.left_out.push_back({"fan",
                                 paint->closed ? paint->closed->reason : "nothing in it burns or is vapour",
                                 paint->closed ? paint->closed->settle : "A fitted mask against mist."});
      return;
    }
    double parts = 0;
    for (const Tool& tool : tools()) parts = std::max(parts, coating::thinner_parts(lacquer_, tool.method));
    const VolumeFlow one = litre / hour;
    // The mix that gives off most: thinned or not.
    Density volatiles;
    for (const double thinned : {0.0, parts})
      volatiles = std::max(volatiles, volatiles_per_volume(*paint, thinned));
    const auto needs = room_air::air_needs(one * volatiles, paint->worst_for_fire, paint->worst_for_people,
                                           paint->fire_share, paint->room.mixing, paint->air);
    if (!needs.people) {
      charts.left_out.push_back(
          {"fan", "some solvent has no exposure limit, so no air is known to be enough to breathe",
           "Take a lacquer and thinner whose solvents have limits."});
      return;
    }
    papers::FanChartSheet sheet;
    sheet.chart.least_rate = 0.2 * one;
    sheet.chart.most_rate = 20 * one;
    sheet.chart.fire = needs.fire / one;
    sheet.chart.breathe = *needs.people / one;
    if (!nobodys) sheet.chart.fan = paint->room.fresh_air;
    sheet.example_rate = 2 * one;
    sheet.fire_share = paint->fire_share.share;
    sheet.mixing = paint->room.mixing;
    sheet.warm = air_.warmest;
    sheet.of = of_;
    charts.fan = sheet;
  }

  void dew(WallCharts& charts) {
    papers::DewChartSheet sheet;
    sheet.chart.air_low = air_.low;
    sheet.chart.air_high = air_.high;
    sheet.chart.dew_low = air_.dew_low;
    sheet.chart.dew_high = rules_.hottest - rules_.dew_margin;
    sheet.chart.pressure =
        moist_air::standard_pressure(weather_.elevation.value_or(workshop_.shop.site.altitude));
    sheet.chart.rules = rules_;
    sheet.example_air = air_.usual;
    const Temperature wet = moist_air::wet_bulb({air_.usual, air_.usual_humidity, sheet.chart.pressure});
    sheet.example_wet = Temperature::celsius(0.5 * std::round(2 * wet.celsius()));
    sheet.of = of_;
    charts.dew = sheet;
  }

  const Workshop& workshop_;
  const exposure::Weather& weather_;
  const ChartsQuestion& question_;
  const materials::Lacquer& lacquer_;
  coating::WindowRules rules_;
  ChartAir air_;
  papers::ChartFor of_;
};

}  // namespace

Result<WallCharts> wall_charts(const Workshop& workshop, const exposure::Weather& weather,
                               const ChartsQuestion& question) {
  const materials::Lacquer* lacquer = workshop.lacquers.find(workshop.shop.lacquer);
  if (lacquer == nullptr) {
    const auto known = workshop.lacquers.ids();
    return Problem{
        {"command line"},
        workshop.shop.lacquer.empty() ? "no --lacquer" : "the lacquer " + workshop.shop.lacquer.text,
        "one of " + listed(known),
        did_you_mean(workshop.shop.lacquer.text, known)};
  }
  return Maker(workshop, weather, question, *lacquer).make();
}

}  // namespace dampward::workbench
