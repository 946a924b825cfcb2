#include <algorithm>

#include "adapters/files/json_documents.h"
#include "adapters/files/shop_folder.h"
#include "adapters/files/words.h"
#include "apps/cli/asked.h"
#include "apps/cli/leaflet_output.h"
#include "apps/cli/leaflet_page.h"
#include "apps/cli/page_text.h"
#include "apps/cli/verbs.h"

namespace dampward::cli {
namespace {

constexpr const char* usual_lacquer = "phenolic_tung_varnish_fungicidal";

workbench::LeafletQuestion question_of(Asked& asked) {
  workbench::LeafletQuestion question;
  if (const auto kind = asked.text("kind"))
    question.kind = KindId(*kind);
  else
    asked.missing("kind", "the set, one of the shipped archetypes, such as --kind receiver_base");
  if (!asked.has("heat")) asked.missing("heat", "--heat lamp_box, sun_box or dry_box");
  question.heat = asked.word("heat", files::home_heat_words).value_or(question.heat);
  question.lamp = asked.size<Power>("lamp");
  if (question.heat != workbench::HomeHeat::lamp_box) asked.out_of_place({"lamp"}, "beside --heat lamp_box");
  if (const auto sides = asked.box("box")) {
    question.box = workbench::BoxSize{(*sides)[0], (*sides)[1], (*sides)[2]};
    if (std::min({(*sides)[0], (*sides)[1], (*sides)[2]}) <= Length{})
      asked.fault("box", "a side of no length", "three sides above zero");
  }
  question.air = asked.quantity<Temperature>("air").value_or(question.air);
  question.humidity = asked.quantity<RelativeHumidity>("humidity").value_or(question.humidity);
  if (question.air < Temperature::celsius(5) || question.air > Temperature::celsius(50))
    asked.fault("air", "a temperature no living room has", "between 5 and 50 °C");
  if (question.humidity < RelativeHumidity::percent(10) || question.humidity > RelativeHumidity::percent(100))
    asked.fault("humidity", "a humidity no day has", "between 10 and 100 %");
  question.lacquer = LacquerId(asked.text("lacquer").value_or(usual_lacquer));
  return question;
}

}  // namespace

Answer leaflet(const Call& call) {
  Asked asked(call);
  const workbench::LeafletQuestion question = question_of(asked);
  const auto printing = printing_of(call);
  Problems problems = asked.problems();
  if (!printing) problems.insert(problems.end(), printing.problems().begin(), printing.problems().end());
  if (!problems.empty()) return faulty(call, problems);
  const auto page = workbench::leaflet(files::shipped_workshop(), question);
  if (!page) return faulty(call, page.problems());
  if (!call.out.empty() && !page->refused) {
    const auto output = leaflet_output(*page, *printing);
    if (!output) return faulty(call, output.problems());
    if (const auto failure = files::write_out_folder(call.out, output->stamp, output->files))
      return not_written(call, *failure);
  }
  Answer answer;
  answer.out = call.json ? files::leaflet_json(*page) : as_page(leaflet_page(*page, UnitText(call.units)));
  if (!call.json && !call.out.empty())
    answer.out += page->refused ? "\nNothing was written.\n" : "\nWritten into " + call.out + ".\n";
  if (page->refused) answer.code = ExitCode::no_safe_answer;
  return answer;
}

}  // namespace dampward::cli
