#include <filesystem>

#include "adapters/files/json_documents.h"
#include "adapters/files/shop_folder.h"
#include "adapters/files/weather.h"
#include "apps/cli/exposure_summary.h"
#include "apps/cli/page_text.h"
#include "apps/cli/verbs.h"
#include "workbench/exposure_report.h"

namespace dampward::cli {
namespace {

// The weather file to read and what to ask of it.
struct Asked {
  std::filesystem::path weather;
  std::string shown;
  workbench::ExposureQuestion question;
};

Result<Asked> asked(const Call& call) {
  if (call.folder.empty()) return Asked{call.weather, call.weather, {}};
  const auto workshop = files::read_workshop(call.folder);
  if (!workshop) return workshop.problems();
  const shop::Site& site = workshop->shop.site;
  if (site.weather_file.empty()) {
    return Problem{{"site.toml"},
                   "no weather file",
                   "weather = \"name of an EPW, TMY3 or NSRDB file in the folder\" under [site]",
                   "Or name one with: exposure --weather FILE"};
  }
  Asked question{std::filesystem::path(call.folder) / site.weather_file, site.weather_file, {}};
  question.question.storage = site.storage;
  question.question.salt = site.salt;
  question.question.surf_distance = site.surf_distance;
  return question;
}

}  // namespace

Answer exposure(const Call& call) {
  const auto question = asked(call);
  if (!question) return faulty(call, question.problems());
  const auto weather = files::read_weather(question->weather, question->shown);
  if (!weather) return faulty(call, weather.problems());
  const workbench::ExposureReport report = workbench::exposure_report(*weather, question->question);
  return {call.json ? files::exposure_json(report) : as_page(exposure_summary(report, UnitText(call.units))),
          "", ExitCode::done};
}

}  // namespace dampward::cli
