#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/charts/bake_chart.h"
#include "core/charts/dew_chart.h"
#include "core/charts/fan_chart.h"
#include "core/charts/litres_chart.h"
#include "core/charts/window_chart.h"
#include "core/papers/measure.h"
#include "core/papers/words.h"

// Charts for the wall of a shop that has no computer: scales and a ruler, the worked example in petrol, what to do with the number.
namespace dampward::papers {

// For whom and where a chart holds.
struct ChartFor {
  std::string shop;  // empty: nobody's
  std::string lacquer;
  std::string station, weather;  // whose air; the name of its file
  double covered = 1;            // share of that year's hours whose air lies within the chart
  std::string id;                // what the foot shows
};

// How long in the oven, and how hot.
struct BakeChartSheet {
  charts::BakeChart chart;
  Temperature example_set;
  Length example_thickness;
  ChartFor of;
};

// May I coat, and for how long.
struct WindowChartSheet {
  charts::WindowChart chart;
  std::string quickest;  // the kind that cools quickest
  struct Slower {
    std::string kind;
    int times = 2;  // stays warm so many times as long, at least
  };
  std::vector<Slower> slower;
  Temperature example_air;
  RelativeHumidity example_humidity;
  int coats = 0;     // by gun, or by brush where the lacquer is not for the gun
  Duration flashes;  // all of them, at their longest
  ChartFor of;
};

// How much to mix.
struct LitresChartSheet {
  charts::LitresChart chart;
  dampward::Area example_area;
  std::size_t example_tool = 0;
  int coats = 0;
  Range<Length> film;  // dry, in all
  ChartFor of;
};

// How much fresh air.
struct FanChartSheet {
  charts::FanChart chart;
  double example_people = 1;
  VolumeFlow example_rate;
  double fire_share = 0.1, mixing = 0.3;
  Temperature warm;  // the air it was reckoned for
  ChartFor of;
};

// The dew point from two thermometers.
struct DewChartSheet {
  charts::DewChart chart;
  Temperature example_air, example_wet;
  ChartFor of;
};

// One page each, never more. Problem: words too long for it, and which.
Result<Page> bake_chart(const BakeChartSheet& sheet, const Paper& paper, const Words& words,
                        const Measure& measure);
Result<Page> window_chart(const WindowChartSheet& sheet, const Paper& paper, const Words& words,
                          const Measure& measure);
Result<Page> litres_chart(const LitresChartSheet& sheet, const Paper& paper, const Words& words,
                          const Measure& measure);
Result<Page> fan_chart(const FanChartSheet& sheet, const Paper& paper, const Words& words,
                       const Measure& measure);
Result<Page> dew_chart(const DewChartSheet& sheet, const Paper& paper, const Words& words,
                       const Measure& measure);

}  // namespace dampward::papers
