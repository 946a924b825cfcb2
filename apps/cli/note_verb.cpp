#include "adapters/files/event_line.h"
#include "adapters/files/event_log.h"
#include "adapters/files/json_documents.h"
#include "adapters/files/shop_folder.h"
#include "apps/cli/verbs.h"
#include "core/base/format.h"
#include "core/base/text.h"
#include "workbench/log_names.h"

namespace dampward::cli {
namespace {

const Place command_line{"command line"};

// The event as the options tell it.
Result<history::Event> event_of(const Call& call, const WallClock& clock) {
  Problems problems;
  history::Event event;
  const auto kind = history::kind_of(call.kind);
  if (!kind) {
    problems.push_back({command_line, "--kind " + call.kind + ", which nobody knows",
                        "one of " + listed(history::kind_words()),
                        did_you_mean(call.kind, history::kind_words())});
  }
  const auto at = time_option("--at", call.at, clock);
  const auto data = files::read_event_data(call.data, command_line);
  const auto gather = [&](const auto& result) {
    if (!result.ok()) problems.insert(problems.end(), result.problems().begin(), result.problems().end());
  };
  gather(at);
  gather(data);
  if (!problems.empty()) return problems;
  event.kind = *kind;
  event.at = *at;
  event.by = PersonId(call.by);
  event.unit = UnitId(call.unit);
  event.oven = OvenId(call.oven);
  event.person = PersonId(call.person);
  event.step = call.step;
  event.data = *data;
  event.corrects = call.corrects;
  event.place = command_line;
  return event;
}

}  // namespace

Answer note(const Call& call) {
  const auto workshop = files::read_workshop(call.folder);
  if (!workshop) return faulty(call, workshop.problems());
  const auto queue = files::FolderRecords(call.folder, *workshop).queue();
  if (!queue) return faulty(call, queue.problems());
  auto event = event_of(call, workshop->shop.site.clock);
  if (!event) return faulty(call, event.problems());
  const Problems unknown = workbench::unknown_names(*event, *workshop, *queue);
  if (!unknown.empty()) return faulty(call, unknown);
  const auto noted = files::note(call.folder, *event);
  if (!noted) return faulty(call, noted.problems());
  Answer answer;
  answer.out = call.json ? files::note_json(noted->event, noted->hash)
                         : format("Noted as {} in {}.\n", noted->event.id, files::log_name);
  return answer;
}

}  // namespace dampward::cli
