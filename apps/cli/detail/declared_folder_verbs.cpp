#include "apps/cli/detail/declared.h"

namespace dampward::cli {
namespace {

void declare_start(CLI::App& app, Call& call) {
  CLI::App* start = app.add_subcommand("start", "write a commented starter folder");
  start->add_option("DIR", call.folder, "folder to make; it must not exist or be empty")->required();
  start->add_flag("--example", call.example, "the demo workshop instead of the starter");
  add_json(*start, call);
}

void declare_proofread(CLI::App& app, Call& call) {
  CLI::App* proofread = app.add_subcommand("proofread", "read a shop folder and name every fault in it");
  proofread->add_option("DIR", call.folder, "the shop folder")->required();
  add_json(*proofread, call);
}

void declare_plan(CLI::App& app, Call& call) {
  CLI::App* plan = app.add_subcommand("plan", "plan the treatment of everything in the queue");
  plan->add_option("DIR", call.folder, "the shop folder")->required();
  plan->add_option("--from", call.from,
                   "when work starts, e.g. \"2026-11-30 07:00\" (default: the queue's own start)")
      ->type_name("TIME");
  plan->add_option(
          "--at", call.at,
          "plan on from what the log says until then: what has begun stays, the rest is planned anew")
      ->type_name("TIME");
  plan->add_option("--what-if", call.what_if,
                   "show what a change would move, e.g. \"ovens.locker.lamps=3\"; several allowed")
      ->type_name("PATH=VALUE")
      ->allow_extra_args(false);
  ask(*plan, call, "work-limit", "N",
      "operations placed in looking for a better timetable, e.g. 100000 (default: 0, the first there is)");
  plan->add_option("--out", call.out, "write sheets for the ovens, calendars and CSV into that folder")
      ->type_name("PLACE");
  plan->add_option("--paper", call.paper, "a4 (default) or letter")->type_name("a4|letter");
  plan->add_option("--lang", call.language, "of the sheets: en (default), es, fr or id")
      ->type_name("en|es|fr|id");
  plan->add_option("--problem", call.problem, "write the timetable problem there, as JSON")
      ->type_name("FILE");
  plan->add_option("--answer", call.answer, "write the timetable itself there, as JSON")->type_name("FILE");
  add_units(*plan, call);
  add_json(*plan, call);
}

void declare_note(CLI::App& app, Call& call) {
  CLI::App* note = app.add_subcommand("note", "write down what happened, at the end of the folder's log");
  note->add_option("DIR", call.folder, "the shop folder")->required();
  note->add_option("--kind", call.kind, "what happened, e.g. step_finished (docs/formats/events.md)")
      ->required()
      ->type_name("KIND");
  note->add_option("--by", call.by, "who notes it, an id of the crew")->required()->type_name("PERSON");
  note->add_option("--at", call.at, "when it happened, e.g. \"2026-11-30 09:20\"")
      ->required()
      ->type_name("TIME");
  note->add_option("--unit", call.unit, "serial of the unit it is about")->type_name("SERIAL");
  note->add_option("--step", call.step, "id of the step, as in the plan's JSON: r1.coat1")->type_name("STEP");
  note->add_option("--oven", call.oven, "id of the oven it is about")->type_name("OVEN");
  note->add_option("--person", call.person, "who it is about, or who did the step (default: --by)")
      ->type_name("PERSON");
  note->add_option("--data", call.data, "what its kind holds beside, e.g. '{\"why\": \"rain\"}'")
      ->type_name("JSON");
  note->add_option("--corrects", call.corrects, "id of the earlier event it stands in for")
      ->type_name("EVENT");
  add_json(*note, call);
}

void declare_exposure(CLI::App& app, Call& call) {
  CLI::App* exposure = app.add_subcommand("exposure", "what a climate does to stored equipment");
  CLI::Option* folder = exposure->add_option("DIR", call.folder, "a shop folder that names its weather file");
  exposure->add_option("--weather", call.weather, "an EPW, TMY3 CSV or NSRDB CSV file")
      ->type_name("FILE")
      ->excludes(folder);
  add_units(*exposure, call);
  add_json(*exposure, call);
}

}  // namespace

void declare_folder_verbs(CLI::App& app, Call& call) {
  declare_start(app, call);
  declare_proofread(app, call);
  declare_plan(app, call);
  declare_note(app, call);
  declare_exposure(app, call);
}

}  // namespace dampward::cli
