#include <regex>

#include "adapters/files/json_documents.h"
#include "adapters/files/shop_folder.h"
#include "adapters/files/words.h"
#include "apps/cli/asked.h"
#include "apps/cli/page_text.h"
#include "apps/cli/verbs.h"
#include "apps/cli/window_summary.h"
#include "workbench/window_answer.h"

namespace dampward::cli {
namespace {

using Leaving = workbench::SurfaceQuestion::Leaving;

// "heavy iron 68 C 45 min": the last two are quantities, what stands before is the name.
std::optional<Leaving> surface(const std::string& written) {
  static const std::regex shape(R"(^\s*(.*\S)\s+([-+]?[0-9.]+\s*(?:°|º)?\s*[CFK])\s+([0-9.]+\s*[a-z]+)\s*$)");
  std::smatch match;
  if (!std::regex_match(written, match, shape)) return std::nullopt;
  const auto hot = files::quantity_from_text<Temperature>(match[2].str());
  const auto time = files::quantity_from_text<Duration>(match[3].str());
  if (!hot || !time || !(*time > Duration{})) return std::nullopt;
  return Leaving{match[1], *hot, *time};
}

std::optional<workbench::WindowQuestion::Air> air_of(Asked& asked) {
  const auto air = asked.air("air");
  if (!air) return std::nullopt;
  return workbench::WindowQuestion::Air{air->temperature, air->humidity};
}

workbench::WindowQuestion shop_question(Asked& asked) {
  workbench::WindowQuestion question;
  if (const auto unit = asked.text("unit")) question.unit = UnitId(*unit);
  if (const auto kind = asked.text("kind")) question.kind = KindId(*kind);
  if (asked.has("unit")) asked.out_of_place({"kind"}, "where no --unit is given");
  asked.out_of_place({"method", "coat-time"}, "without a shop folder");
  question.air = air_of(asked);
  return question;
}

workbench::SurfaceQuestion surface_question(Asked& asked, const std::vector<std::string>& surfaces) {
  workbench::SurfaceQuestion question;
  for (const std::string& written : surfaces) {
    if (const auto leaving = surface(written)) {
      question.surfaces.push_back(*leaving);
    } else {
      asked.fault("surface", "\"" + written + "\"",
                  "a name, its temperature on leaving the oven and the time constant of its cooling, such as "
                  "\"shell 60 C 12 min\"");
    }
  }
  if (surfaces.empty())
    asked.missing("surface", "a shop folder, or surfaces such as --surface \"shell 60 C 12 min\"");
  const auto method = asked.word("method", files::method_words);
  const auto coat = asked.size<Duration>("coat-time");
  const auto air = air_of(asked);
  if (!asked.has("method"))
    asked.missing("method", "how it is coated: --method hand_gun, power_gun or brush");
  if (!asked.has("coat-time")) asked.missing("coat-time", "hands-on time of one coat: --coat-time \"8 min\"");
  if (!asked.has("air")) asked.missing("air", "the air of the place: --air \"32 C 85 %\"");
  if (!asked.has("lacquer")) asked.missing("lacquer", "what is put on: --lacquer LACQUER");
  asked.out_of_place({"unit", "kind"}, "with a shop folder");
  question.method = method.value_or(question.method);
  question.one_coat = coat.value_or(Duration{});
  if (air) question.air = *air;
  return question;
}

}  // namespace

Answer window(const Call& call) {
  Asked asked(call);
  const bool folder = !call.folder.empty();
  auto read = folder ? files::read_workshop(call.folder) : files::shipped_workshop();
  if (!read) return faulty(call, read.problems());
  workbench::Workshop workshop = std::move(read).value();
  if (const auto lacquer = asked.known("lacquer", workshop.lacquers.ids()))
    workshop.shop.lacquer = LacquerId(*lacquer);
  if (folder && !call.surfaces.empty()) asked.fault("surface", "given", "it only without a shop folder");
  const auto of_shop = folder ? shop_question(asked) : workbench::WindowQuestion{};
  const auto of_surfaces = folder ? workbench::SurfaceQuestion{} : surface_question(asked, call.surfaces);
  if (!asked.problems().empty()) return faulty(call, asked.problems());
  const auto found =
      folder ? workbench::window_answer(workshop, files::FolderRecords(call.folder, workshop), of_shop)
             : workbench::window_answer(workshop, of_surfaces);
  if (!found) return faulty(call, found.problems());
  Answer answer;
  answer.out = call.json ? files::window_json(*found) : as_page(window_summary(*found, UnitText(call.units)));
  if (!found->any()) answer.code = ExitCode::no_safe_answer;
  return answer;
}

}  // namespace dampward::cli
