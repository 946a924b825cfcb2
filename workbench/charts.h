#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/exposure/weather.h"
#include "core/papers/wall_charts.h"

namespace dampward::workbench {

struct Workshop;

// Names of the tools where no shop names its own.
struct ToolNames {
  std::string hand_gun, power_gun, brush;
};

struct ChartsQuestion {
  std::string weather_file;  // its name, for the charts' feet
  ToolNames tools;
  // Of an oven nobody described: how far its places lie from its setting. An estimate; three thermometers in the empty oven settle it.
  TemperatureStep evenness = 6 * kelvin;
};

// The charts one climate and one lacquer give.
struct WallCharts {
  std::string shop, lacquer, station, weather;
  double covered = 0;                         // share of the year's hours that lie on them
  std::vector<papers::BakeChartSheet> bakes;  // one for each oven of the shop; else one for any
  papers::WindowChartSheet window;
  papers::DewChartSheet dew;
  std::optional<papers::LitresChartSheet> litres;  // none, as the next: see `left_out`
  std::optional<papers::FanChartSheet> fan;
  struct LeftOut {
    std::string chart, reason, settle;
  };
  std::vector<LeftOut> left_out;
};

// Wall charts cover shop air between these; a climate that spends less than half its hours on them gets none.
inline constexpr Temperature coldest_chart = Temperature::celsius(5),
                             hottest_chart = Temperature::celsius(50);
inline constexpr double least_covered = 0.5;

// Charts for the lacquer in use, in that year's air; a workshop without ovens, place or guns gives charts for any.
// Problems: an unknown lacquer, no kind to coat, a climate outside what the charts cover.
Result<WallCharts> wall_charts(const Workshop& workshop, const exposure::Weather& weather,
                               const ChartsQuestion& question);

}  // namespace dampward::workbench
