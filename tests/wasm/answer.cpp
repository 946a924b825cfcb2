// One answer of the core, exported for a page or for node: what tests/wasm/run.mjs asks.
#include "core/quantity/temperature.h"

extern "C" __attribute__((export_name("fahrenheit_of"))) double fahrenheit_of(double celsius) {
  return dampward::Temperature::celsius(celsius).fahrenheit();
}
