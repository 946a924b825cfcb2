#include "apps/cli/detail/declared.h"

namespace dampward::cli {

void declare_charts(CLI::App& app, Call& call) {
  CLI::App* charts = app.add_subcommand(
      "charts", "charts for the wall of a shop without a computer, for one climate and one lacquer");
  charts->add_option("DIR", call.folder, "a shop folder; without it the options and shipped tables stand in");
  charts
      ->add_option("--weather", call.weather,
                   "an EPW, TMY3 CSV or NSRDB CSV file (default: the one the folder's site names)")
      ->type_name("FILE");
  ask(*charts, call, "lacquer", "LACQUER",
      "a lacquer of the folder or a shipped family (default: the one in use)");
  ask(*charts, call, "mixing-factor", "M",
      "how well the spray place mixes, 0.1 poorly to 1 perfectly (default: the folder's, else 0.3)");
  ask(*charts, call, "evenness", "STEP",
      "how far the places of an oven lie from its setting, where no folder tells of ovens (default: \"6 "
      "K\")");
  charts->add_option("--out", call.out, "write the charts into that folder, one PDF each")
      ->type_name("PLACE");
  charts->add_option("--paper", call.paper, "a4 (default) or letter")->type_name("a4|letter");
  charts->add_option("--lang", call.language, "of the charts: en (default), es, fr or id")
      ->type_name("en|es|fr|id");
  add_json(*charts, call);
}

}  // namespace dampward::cli
