#include "apps/cli/detail/declared.h"

namespace dampward::cli {

void declare_window(CLI::App& app, Call& call) {
  CLI::App* window = app.add_subcommand(
      "window",
      "from the oven to the last flash: when a unit may meet lacquer, with a folder or options alone");
  window->add_option("DIR", call.folder, "a shop folder; without it options describe surfaces and lacquer");
  ask(*window, call, "unit", "SERIAL", "one unit of the queue (default: all of them)");
  ask(*window, call, "kind", "KIND", "one unit of a kind instead");
  ask(*window, call, "air", "AIR", "of the place, as long as it takes, e.g. \"32 C 85 %\"");
  window
      ->add_option("--surface", call.surfaces,
                   "a surface as it leaves the oven: name, temperature, time constant, e.g. \"shell 60 C 12 "
                   "min\"; several allowed")
      ->type_name("SURFACE")
      ->allow_extra_args(false);
  ask(*window, call, "lacquer", "LACQUER", "a lacquer of the folder or a shipped family");
  ask(*window, call, "method", "hand_gun|power_gun|brush", "how it is coated");
  ask(*window, call, "coat-time", "TIME", "hands-on time of one coat, e.g. \"8 min\"");
  add_units(*window, call);
  add_json(*window, call);
}

}  // namespace dampward::cli
