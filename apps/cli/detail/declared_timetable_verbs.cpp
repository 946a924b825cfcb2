#include "apps/cli/detail/declared.h"

namespace dampward::cli {

void declare_timetable_verbs(CLI::App& app, Call& call) {
  CLI::App* solve = app.add_subcommand(
      "solve",
      "plan a timetable problem (docs/formats/timetable.md), or one of the literature (.sch, .sm, .dzn)");
  solve->add_option("PROBLEM", call.problem, "the problem, a file")->required();
  ask(*solve, call, "format", "json|sch|sm|jobs|ovens",
      "what the file is (default: what its ending says, else json)");
  ask(*solve, call, "operators", "N", "--format jobs: so many equal operators (default: enough)");
  ask(*solve, call, "time-limit", "S", ".sch, .sm, .dzn: search for so many seconds at most; not repeatable");
  ask(*solve, call, "work-limit", "N",
      ".sch, .sm, .dzn: search for so many steps at most; repeatable (default: 400000000, about 10 s)");
  ask(*solve, call, "threads", "1|2",
      ".sch, .sm, .dzn: search on so many processors (default: 2); the plan of a work limit is the same");
  ask(*solve, call, "seed", "K", ".sch, .sm, .dzn: begin elsewhere (default: 1)");
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
