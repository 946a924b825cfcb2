#include "apps/cli/detail/declared.h"

namespace dampward::cli {

void declare_leaflet(CLI::App& app, Call& call) {
  CLI::App* leaflet =
      app.add_subcommand("leaflet", "one page for an owner with one set and one source of warmth");
  ask(*leaflet, call, "kind", "KIND", "the set, one of the shipped archetypes");
  ask(*leaflet, call, "heat", "lamp_box|sun_box|dry_box", "where the warmth comes from");
  ask(*leaflet, call, "lamp", "POWER", "the lamp, e.g. \"40 W\" (default: the strongest that is safe)");
  ask(*leaflet, call, "box", "SIZE",
      "inside of the box, e.g. \"60 x 40 x 40 cm\" (default: made for the set)");
  ask(*leaflet, call, "air", "TEMPERATURE", "of the days to come, e.g. \"30 °C\" (the default)");
  ask(*leaflet, call, "humidity", "SHARE", "of that air, e.g. \"80 %\" (the default)");
  ask(*leaflet, call, "lacquer", "LACQUER",
      "a shipped family meant for the brush (default: phenolic_tung_varnish_fungicidal)");
  leaflet->add_option("--out", call.out, "write it into that folder, as a PDF of one page")
      ->type_name("PLACE");
  leaflet->add_option("--paper", call.paper, "a4 (default) or letter")->type_name("a4|letter");
  leaflet->add_option("--lang", call.language, "of the PDF: en (default), es, fr or id")
      ->type_name("en|es|fr|id");
  add_units(*leaflet, call);
  add_json(*leaflet, call);
}

}  // namespace dampward::cli
