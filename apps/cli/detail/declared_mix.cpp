#include "apps/cli/detail/declared.h"

namespace dampward::cli {

void declare_mix(CLI::App& app, Call& call) {
  CLI::App* mix = app.add_subcommand(
      "mix", "how much lacquer and thinner, for a shop folder's queue or with options alone");
  mix->add_option("DIR", call.folder, "a shop folder; without it the shipped tables stand in");
  ask(*mix, call, "kind", "KIND", "units of this kind instead of the queue");
  ask(*mix, call, "count", "N", "so many of them (default: 1)");
  ask(*mix, call, "area", "AREA", "this surface instead, e.g. \"0.4 m2\" or \"0.3..0.4..0.6 m2\"");
  ask(*mix, call, "method", "hand_gun|power_gun|brush", "how an area is coated");
  ask(*mix, call, "efficiency", "SHARE", "share of the solids that lands on it, e.g. \"5..10..15 %\"");
  ask(*mix, call, "lacquer", "LACQUER", "a lacquer of the folder or a shipped family");
  ask(*mix, call, "ratio", "LACQUER:THINNER", "parts by volume, e.g. 2:1; 1:0 is unthinned");
  ask(*mix, call, "coats", "N", "coats that build the film (default: the lacquer's)");
  ask(*mix, call, "film", "LENGTH", "dry film in all, e.g. \"60 um\" or \"2.4 mil\"");
  ask(*mix, call, "cup", "CUP", "flow cup the mix was measured in (default: ford_4)");
  ask(*mix, call, "drain", "TIME", "how long it drained at 25 °C, e.g. \"23 s\"");
  ask(*mix, call, "wet-coat", "LENGTH", "wet film of one coat on a test panel, e.g. \"90 um\"");
  add_units(*mix, call);
  add_json(*mix, call);
}

}  // namespace dampward::cli
