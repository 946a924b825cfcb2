#include "apps/cli/detail/declared.h"

namespace dampward::cli {

void declare_bake(CLI::App& app, Call& call) {
  CLI::App* bake = app.add_subcommand("bake", "one load in an oven, for a shop folder or with options alone");
  bake->add_option("DIR", call.folder, "a shop folder; without it options describe oven and load");
  ask(*bake, call, "serials", "SERIALS", "units of the queue, e.g. TD-0107,TD-0112");
  ask(*bake, call, "kind", "KIND", "units of a kind instead; without a folder one of the shipped archetypes");
  ask(*bake, call, "count", "N", "so many of them (default: 1)");
  ask(*bake, call, "oven", "OVEN", "one of the folder's ovens (default: each of them)");
  ask(*bake, call, "air", "AIR", "of the shop, e.g. \"32 C 85 %\"");
  ask(*bake, call, "inside", "L x W x H", "of an oven, e.g. \"1.1 x 0.7 x 1.3 m\"");
  ask(*bake, call, "heater", "POWER", "e.g. \"2.4 kW\"");
  ask(*bake, call, "wall", "bare_steel|insulated_25mm|insulated_50mm|brick|wood_lined",
      "what it is built of (default: bare_steel)");
  bake->add_flag_callback("--stirred", [&call] { call.asked["stirred"] = ""; }, "a fan stirs its air");
  ask(*bake, call, "hottest", "TEMPERATURE", "its hottest setting (default: 90 °C)");
  ask(*bake, call, "evenness", "STEP", "its hottest place above the sensor (default: 5 K)");
  ask(*bake, call, "swing", "STEP", "of its thermostat, plus or minus (default: 3 K)");
  ask(*bake, call, "vent", "FLOW", "fresh air through it (default: shut, cracks alone)");
  ask(*bake, call, "mass", "MASS", "of a simple body instead of a kind, e.g. \"8 kg\"");
  ask(*bake, call, "size", "L x W x H", "its box, e.g. \"0.4 x 0.3 x 0.2 m\"");
  ask(*bake, call, "part", "MATERIAL", "what its slowest or weakest part is made of, e.g. pf_paper");
  ask(*bake, call, "shape", "plate|cylinder|sphere", "of that part (default: plate)");
  ask(*bake, call, "thickness", "LENGTH", "of that part, e.g. \"1.6 mm\"; a cylinder's or ball's diameter");
  ask(*bake, call, "part-mass", "MASS", "of that part (default: a tenth of --mass)");
  ask(*bake, call, "limit", "TEMPERATURE",
      "heat limit of that part, e.g. \"70 C\" (default: its material's)");
  ask(*bake, call, "margin", "STEP", "kept below --limit (default: 15 K)");
  add_units(*bake, call);
  add_json(*bake, call);
}

}  // namespace dampward::cli
