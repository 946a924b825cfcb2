#include "apps/cli/detail/declared.h"

namespace dampward::cli {

void declare(CLI::App& app, Call& call) {
  app.name("dampward");
  app.description(
      "Dampward plans the drying and lacquering of electronic equipment in hot, damp places.\n"
      "It plans and permits nothing: local codes and licensed practice decide.");
  app.footer(
      "Exit codes:\n"
      "  0  done\n"
      "  1  our fault or the machine's, or a timetable that breaks a rule\n"
      "  2  the input is at fault; every fault is named at once\n"
      "  3  the input is fine, but nothing in it can be done safely\n"
      "Environment:\n"
      "  NO_COLOR  set to anything: no colour; nor with TERM=dumb, nor where no terminal reads\n"
      "  COLUMNS   width of the terminal, where its own answer is not wanted");
  app.set_version_flag("--version", DAMPWARD_VERSION, "print the version and end");
  app.set_help_flag("-h,--help", "print this help and end");
  app.require_subcommand(1);
  declare_folder_verbs(app, call);
  declare_timetable_verbs(app, call);
  declare_mix(app, call);
  declare_air(app, call);
  declare_leaflet(app, call);
  declare_bake(app, call);
  declare_window(app, call);
  declare_charts(app, call);
  declare_help_verbs(app, call);
}

void add_json(CLI::App& verb, Call& call) {
  verb.add_flag("--json", call.json, "print one JSON document on standard output (always SI units)");
}

void add_units(CLI::App& verb, Call& call) {
  verb.add_option("--units", call.unit_word, "metric (default) or us")->type_name("metric|us");
}

void ask(CLI::App& verb, Call& call, const std::string& name, const std::string& type,
         const std::string& help) {
  verb.add_option_function<std::string>(
          "--" + name, [&call, name](const std::string& written) { call.asked[name] = written; }, help)
      ->type_name(type);
}

}  // namespace dampward::cli
