#include <filesystem>

#include "adapters/files/json_documents.h"
#include "adapters/files/shop_folder.h"
#include "adapters/files/weather.h"
#include "apps/cli/asked.h"
#include "apps/cli/charts_output.h"
#include "apps/cli/charts_summary.h"
#include "apps/cli/page_text.h"
#include "apps/cli/verbs.h"

namespace dampward::cli {
namespace {

// The weather file: as asked for, else the folder's own.
Result<std::filesystem::path> weather_of(const Call& call, const shop::Site& site) {
  if (!call.weather.empty()) return std::filesystem::path(call.weather);
  if (!site.weather_file.empty()) return std::filesystem::path(call.folder) / site.weather_file;
  if (call.folder.empty())
    return Problem{
        {"command line"}, "no --weather", "a shop folder, or --weather FILE and --lacquer LACQUER", ""};
  return Problem{{"site.toml"},
                 "no weather file",
                 "weather = \"name of an EPW, TMY3 or NSRDB file in the folder\" under [site]",
                 "Or name one with: charts --weather FILE"};
}

void set_shop(Asked& asked, workbench::Workshop& workshop, bool folder) {
  if (const auto name = asked.known("lacquer", workshop.lacquers.ids()))
    workshop.shop.lacquer = LacquerId(*name);
  if (!folder && !asked.has("lacquer"))
    asked.missing("lacquer", "a lacquer, such as --lacquer phenolic_tung_varnish_fungicidal");
  if (const auto mixing = asked.quantity<double>("mixing-factor")) {
    if (*mixing > 0 && *mixing <= 1)
      workshop.shop.spray.mixing = *mixing;
    else
      asked.fault("mixing-factor", "\"" + *asked.text("mixing-factor") + "\"", "above 0 and at most 1");
  }
}

workbench::ChartsQuestion question_of(Asked& asked, const Printing& printing, bool ovens_known) {
  workbench::ChartsQuestion question;
  question.tools = {printing.words("chart_litres_gun"), printing.words("chart_litres_power_gun"),
                    printing.words("chart_litres_brush")};
  if (ovens_known) asked.out_of_place({"evenness"}, "where no oven is described");
  if (const auto evenness = asked.size<TemperatureStep>("evenness")) {
    question.evenness = *evenness;
    if (*evenness > 20 * kelvin) asked.fault("evenness", "an oven nobody can bake in", "at most 20 K");
  }
  return question;
}

}  // namespace

Answer charts(const Call& call) {
  Asked asked(call);
  const bool folder = !call.folder.empty();
  const auto printing = printing_of(call);
  if (!printing) return faulty(call, printing.problems());
  auto read = folder ? files::read_workshop(call.folder) : files::shipped_workshop();
  if (!read) return faulty(call, read.problems());
  workbench::Workshop workshop = std::move(read).value();
  set_shop(asked, workshop, folder);
  workbench::ChartsQuestion question = question_of(asked, *printing, !workshop.shop.ovens.empty());
  const auto path = weather_of(call, workshop.shop.site);
  Problems problems = asked.problems();
  if (!path) problems.insert(problems.end(), path.problems().begin(), path.problems().end());
  if (!problems.empty()) return faulty(call, problems);
  question.weather_file = path->filename().string();
  const auto weather = files::read_weather(*path, question.weather_file);
  if (!weather) return faulty(call, weather.problems());
  const auto made = workbench::wall_charts(workshop, *weather, question);
  if (!made) return faulty(call, made.problems());
  if (!call.out.empty()) {
    const auto pages = charts_output(*made, *printing);
    if (!pages) return faulty(call, pages.problems());
    if (const auto failure = files::write_out_folder(call.out, charts_stamp(*made, *pages), *pages))
      return not_written(call, *failure);
  }
  return {call.json ? files::charts_json(*made) : as_page(charts_summary(*made, call.out)), "",
          ExitCode::done};
}

}  // namespace dampward::cli
