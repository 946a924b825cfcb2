#include "apps/cli/detail/declared.h"

namespace dampward::cli {

void declare_air(CLI::App& app, Call& call) {
  CLI::App* air = app.add_subcommand(
      "air", "vapour in a room: fire, people and the air both need, for a shop folder or with options alone");
  air->add_option("DIR", call.folder, "a shop folder; without it the options and shipped tables stand in");
  ask(*air, call, "room", "L x W x H", "size of the place, e.g. \"4 x 3 x 2.5 m\"");
  ask(*air, call, "fan", "FLOW",
      "fresh air drawn through it to the outside, e.g. \"12 m3/min\" or \"400 cfm\"");
  ask(*air, call, "mixing-factor", "M", "how well it mixes, 0.1 poorly to 1 perfectly (default: 0.3)");
  air->add_flag_callback(
      "--booth", [&call] { call.asked["booth"] = ""; },
      "it is a ventilated booth with measured face velocity");
  ask(*air, call, "lacquer", "LACQUER", "a lacquer of the folder or a shipped family");
  ask(*air, call, "solvent", "SOLVENT", "a thinner, cleaner or solvent of the tables instead");
  ask(*air, call, "method", "hand_gun|power_gun|brush", "how it is put on; brush for wiping too");
  ask(*air, call, "gun", "GUN", "a gun or brush of the folder (default: whichever gives off most)");
  ask(*air, call, "rate", "FLOW", "mix or solvent used while it is on, e.g. \"0.1 L/min\"");
  ask(*air, call, "litres", "VOLUME", "so much used up in all, e.g. \"2 L\", within --minutes");
  ask(*air, call, "minutes", "TIME", "how long --litres lasts, e.g. \"40 min\"");
  ask(*air, call, "hours", "TIME", "time at it in a day, e.g. \"3 h\" (default: all day)");
  ask(*air, call, "shift", "TIME", "length of the working day, e.g. \"10 h\": over 8 h shortens the limits");
  ask(*air, call, "air", "TEMPERATURE", "how warm the place is, e.g. \"32 C\"");
  add_units(*air, call);
  add_json(*air, call);
}

}  // namespace dampward::cli
