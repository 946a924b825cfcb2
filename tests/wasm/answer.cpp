// One answer of the core, exported for a page or for node: what tests/wasm/run.mjs asks.
#include "core/moist_air/humid_air.h"

using namespace dampward;

extern "C" __attribute__((export_name("dew_point_c"))) double dew_point_c(double air_c, double humidity_pct) {
  return moist_air::dew_point({Temperature::celsius(air_c), RelativeHumidity::percent(humidity_pct)})
      .celsius();
}
