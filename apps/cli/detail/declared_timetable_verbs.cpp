#include "apps/cli/detail/declared.h"

namespace dampward::cli {

void declare_timetable_verbs(CLI::App& app, Call& call) {
  CLI::App* solve = app.add_subcommand("solve", "plan a timetable problem (docs/formats/timetable.md)");
  solve->add_option("PROBLEM", call.problem, "the problem, a JSON file")->required();
  solve->add_option("--answer", call.answer, "write the timetable there, as JSON")->type_name("FILE");
  add_json(*solve, call);

  CLI::App* verify = app.add_subcommand("verify", "judge a timetable by every rule of its problem");
  verify->add_option("PROBLEM", call.problem, "a timetable problem, JSON")->required();
  verify->add_option("ANSWER", call.answer, "an answer to it, JSON")->required();
  add_json(*verify, call);

  CLI::App* selfcheck =
      app.add_subcommand("selfcheck", "hold every model against the published values it rests on");
  add_json(*selfcheck, call);
}

}  // namespace dampward::cli
