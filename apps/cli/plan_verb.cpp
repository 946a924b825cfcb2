#include <unistd.h>

#include "adapters/files/json_documents.h"
#include "adapters/files/shop_folder.h"
#include "adapters/files/what_if.h"
#include "apps/cli/asked.h"
#include "apps/cli/interrupt.h"
#include "apps/cli/judged.h"
#include "apps/cli/pictures.h"
#include "apps/cli/plan_output.h"
#include "apps/cli/plan_summary.h"
#include "apps/cli/progress.h"
#include "apps/cli/verbs.h"
#include "apps/cli/what_if_summary.h"
#include "core/base/format.h"
#include "workbench/ladder.h"
#include "workbench/plan.h"
#include "workbench/plan_difference.h"

namespace dampward::cli {
namespace {

constexpr int most_effort = 1'000'000'000;

Problem not_a_time(const std::string& written) {
  return {{"command line"},
          "--from \"" + written + "\"",
          "a date and time of day on the shop's clock, such as 2026-11-30 07:00",
          ""};
}

// The folder with a change more than those already asked for.
workbench::WorkshopWith changer(const std::string& folder, const workbench::Workshop& as_is,
                                const std::vector<std::string>& asked) {
  return [folder, &as_is, asked](const std::string& change) -> Result<workbench::Workshop> {
    const auto first = files::changes_from_text(asked);
    if (!first) return first.problems();
    const auto then = files::changes_from_text(std::vector<std::string>{change});
    if (!then) return then.problems();
    std::vector<files::Change> changes = *first;
    changes.insert(changes.end(), then->begin(), then->end());
    auto changed = files::read_changed_workshop(folder, changes, as_is);
    if (!changed) return changed.problems();
    return std::move(changed).value().workshop;
  };
}

// The plan of the folder with the changes in its files, beside the plan of the folder as it is.
Answer what_if(const Call& call, const workbench::Workshop& as_is, const workbench::Plan& before,
               const workbench::PlanOptions& options) {
  const auto changes = files::changes_from_text(call.what_if);
  if (!changes) return faulty(call, changes.problems());
  const auto changed = files::read_changed_workshop(call.folder, *changes, as_is);
  if (!changed) return faulty(call, changed.problems());
  const files::FolderRecords records(call.folder, changed->workshop);
  const auto after = workbench::make_plan(changed->workshop, records, options);
  if (!after) return faulty(call, after.problems());
  if (const auto broken = broken_timetable(call, texts_of(after->problem, after->answer))) return *broken;
  const auto difference = workbench::plan_difference(before, *after, changed->changes);
  workbench::Plan shown = *after;
  workbench::add_ladders(shown, changed->workshop, records, options,
                         changer(call.folder, changed->workshop, call.what_if));
  Answer answer;
  answer.out = call.json ? files::plan_json(shown, changed->warnings, &difference)
                         : as_page(what_if_summary(before, shown, difference, UnitText(call.units),
                                                   page_columns(call.screen)),
                                   call.screen.colour);
  for (const Problem& warning : changed->warnings) answer.err += "Suspicious: " + to_text(warning) + "\n";
  if (after->queued > 0 && after->units.empty()) answer.code = ExitCode::no_safe_answer;
  return answer;
}

Answer stopped(const Call& call) {
  Answer answer;
  answer.err = "Stopped. No plan was made; nothing was written.\n";
  answer.code = ExitCode::our_fault;
  if (call.json)
    answer.out = files::faults_json({{{"command line"}, "Ctrl-C", "time to finish", "Plan again."}});
  return answer;
}

// Writes the output folder where the call asks for one, and tells people so in `told`. An answer: it could not be written.
std::optional<Answer> put_out(const Call& call, const workbench::Plan& plan, const TimetableTexts& texts,
                              std::string& told) {
  if (call.out.empty()) return std::nullopt;
  const auto printing = printing_of(call);
  if (!printing) return faulty(call, printing.problems());
  const std::vector<files::OutFile> sheets = output_of(plan, *printing);
  const auto failure = files::write_out_folder(call.out, stamp_of(plan, texts.answer), sheets);
  if (failure) return not_written(call, *failure);
  told =
      format("\n{} files written into {}; its manifest.json tells what each is.\n", sheets.size(), call.out);
  return std::nullopt;
}

}  // namespace

Answer plan(const Call& call) {
  Asked asked(call);
  workbench::PlanOptions options;
  options.effort = asked.whole("work-limit", 0, most_effort).value_or(0);
  if (!asked.problems().empty()) return faulty(call, asked.problems());
  options.keep_going = [] { return !interrupted(); };
  Progress progress(screen_of(STDERR_FILENO));
  options.progress = [&](const std::string& what) { progress.say(what); };
  if (!call.from.empty()) {
    options.from = parse_local_time(call.from);
    if (!options.from) return faulty(call, {not_a_time(call.from)});
  }
  if (const auto printing = printing_of(call); !printing) return faulty(call, printing.problems());
  // Every fault of every file at once, daily records too.
  const files::Proof proof = files::proofread(call.folder);
  if (!proof.faults.empty()) return faulty(call, proof.faults);
  const auto workshop = files::read_workshop(call.folder);
  if (!workshop) return faulty(call, workshop.problems());
  if (const Problems pictures = undrawable(*workshop); !pictures.empty()) return faulty(call, pictures);
  if (!call.at.empty()) {
    const auto at = time_option("--at", call.at, workshop->shop.site.clock);
    if (!at) return faulty(call, at.problems());
    options.at = *at;
  }
  const files::FolderRecords records(call.folder, *workshop);
  auto made = workbench::make_plan(*workshop, records, options);
  if (!made) return faulty(call, made.problems());
  if (interrupted()) return stopped(call);
  std::string written;
  const TimetableTexts texts = texts_of(made->problem, made->answer, iso_text(made->from, made->clock));
  if (const auto broken = broken_timetable(call, texts)) return *broken;
  if (const auto failed = unwritten(call, texts)) return *failed;
  if (!call.what_if.empty()) {
    if (!call.out.empty()) progress.say("drawing the sheets");
    if (const auto failed = put_out(call, *made, texts, written)) return *failed;
    Answer answer = what_if(call, *workshop, *made, options);
    if (!call.json) answer.out += written;
    return interrupted() ? stopped(call) : answer;
  }
  workbench::Plan plan = std::move(made).value();
  workbench::add_ladders(plan, *workshop, records, options, changer(call.folder, *workshop, {}));
  if (interrupted()) return stopped(call);
  // The sheets tell a refused unit's ladder too.
  if (!call.out.empty()) progress.say("drawing the sheets");
  if (const auto failed = put_out(call, plan, texts, written)) return *failed;
  Answer answer;
  for (const Problem& warning : proof.warnings) answer.err += "Suspicious: " + to_text(warning) + "\n";
  answer.out = call.json ? files::plan_json(plan, proof.warnings)
                         : as_page(plan_summary(plan, UnitText(call.units), page_columns(call.screen)),
                                   call.screen.colour) +
                               written;
  if (plan.queued > 0 && plan.units.empty()) answer.code = ExitCode::no_safe_answer;
  return answer;
}

}  // namespace dampward::cli
