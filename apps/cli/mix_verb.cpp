#include "adapters/files/json_documents.h"
#include "adapters/files/shop_folder.h"
#include "adapters/files/words.h"
#include "apps/cli/asked.h"
#include "apps/cli/mix_summary.h"
#include "apps/cli/page_text.h"
#include "apps/cli/verbs.h"

namespace dampward::cli {
namespace {

constexpr int most_units = 10'000;
constexpr int most_coats = 20;

// "2:1" is half a part of thinner to one of lacquer.
std::optional<double> thinner_parts(Asked& asked) {
  const auto written = asked.text("ratio");
  if (!written) return std::nullopt;
  const std::size_t colon = written->find(':');
  if (colon != std::string::npos) {
    const auto lacquer = files::quantity_from_text<double>(written->substr(0, colon));
    const auto thinner = files::quantity_from_text<double>(written->substr(colon + 1));
    if (lacquer && thinner && *lacquer > 0 && *thinner <= 10 * *lacquer) return *thinner / *lacquer;
  }
  asked.fault("ratio", "\"" + *written + "\"",
              "parts of lacquer, a colon, parts of thinner, such as 2:1; at most ten of thinner to one");
  return std::nullopt;
}

coating::Measured measured(Asked& asked) {
  std::vector<std::string> cups;
  for (const coating::FlowCup& cup : coating::flow_cups()) cups.emplace_back(cup.id);
  coating::Measured found;
  found.cup = coating::find_cup(asked.known("cup", cups).value_or("ford_4"));
  found.drain = asked.size<Duration>("drain");
  found.wet_coat = asked.size<Length>("wet-coat");
  if (asked.has("cup") && !asked.has("drain")) asked.missing("drain", "the seconds that cup took");
  return found;
}

workbench::MixQuestion question_of(Asked& asked, bool folder) {
  workbench::MixQuestion question;
  question.thinner_parts = thinner_parts(asked);
  question.coats = asked.whole("coats", 1, most_coats);
  question.film = asked.sizes<Length>("film");
  question.measured = measured(asked);
  const auto area = asked.sizes<Area>("area");
  const auto method = asked.word("method", files::method_words);
  question.efficiency = asked.sizes<TransferEfficiency>("efficiency");
  const int count = asked.whole("count", 1, most_units).value_or(1);
  if (asked.has("kind")) question.work = workbench::UnitsOfKind{KindId(*asked.text("kind")), count};
  if (area) question.work = workbench::SomeArea{*area};
  const bool planned = folder && !asked.has("area");
  if (asked.has("kind")) asked.out_of_place({"area"}, "where no --kind is given");
  if (!asked.has("kind")) asked.out_of_place({"count"}, "beside --kind KIND");
  if (planned)
    asked.out_of_place({"method", "efficiency"},
                       "beside --area or without a folder: the shop's plan says how its units are coated");
  if (!folder && !asked.has("area") && !asked.has("kind"))
    asked.missing("area", "a shop folder, or --area AREA, or --kind KIND");
  if (!planned && !asked.has("method"))
    asked.missing("method", "how it is coated: --method hand_gun, power_gun or brush");
  question.method = method.value_or(question.method);
  return question;
}

}  // namespace

Answer mix(const Call& call) {
  Asked asked(call);
  const bool folder = !call.folder.empty();
  const workbench::MixQuestion question = question_of(asked, folder);
  if (!asked.problems().empty()) return faulty(call, asked.problems());
  auto workshop = folder ? files::read_workshop(call.folder) : files::shipped_workshop();
  if (!workshop) return faulty(call, workshop.problems());
  workbench::Workshop shop = std::move(workshop).value();
  if (const auto lacquer = asked.text("lacquer")) shop.shop.lacquer = LacquerId(*lacquer);
  const files::FolderRecords records(call.folder, shop);
  const auto mixed = workbench::mix_answer(shop, folder ? &records : nullptr, question);
  if (!mixed) return faulty(call, mixed.problems());
  Answer answer;
  answer.out = call.json ? files::mix_json(*mixed) : as_page(mix_summary(*mixed, UnitText(call.units)));
  if (mixed->works.empty() && !mixed->left_out.empty()) answer.code = ExitCode::no_safe_answer;
  return answer;
}

}  // namespace dampward::cli
