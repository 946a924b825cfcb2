#include <unistd.h>

#include <cstdio>

#include "adapters/files/json_documents.h"
#include "adapters/files/shop_folder.h"
#include "apps/cli/interrupt.h"
#include "apps/cli/page_text.h"
#include "apps/cli/plan_summary.h"
#include "apps/cli/verbs.h"
#include "workbench/plan.h"

namespace dampward::cli {
namespace {

Problem not_a_time(const std::string& written) {
  return {{"command line"},
          "--from \"" + written + "\"",
          "a date and time of day on the shop's clock, such as 2026-11-30 07:00",
          ""};
}

// Says on standard error what goes on, where somebody sits in front of it.
void show_progress(const std::string& what) {
  if (isatty(STDERR_FILENO) != 0) std::fprintf(stderr, "%s ...\n", what.c_str());
}

}  // namespace

Answer plan(const Call& call) {
  workbench::PlanOptions options;
  options.keep_going = [] { return !interrupted(); };
  options.progress = show_progress;
  if (!call.from.empty()) {
    options.from = parse_local_time(call.from);
    if (!options.from) return faulty(call, {not_a_time(call.from)});
  }
  // Every fault of every file at once, daily records too.
  const files::Proof proof = files::proofread(call.folder);
  if (!proof.faults.empty()) return faulty(call, proof.faults);
  const auto workshop = files::read_workshop(call.folder);
  if (!workshop) return faulty(call, workshop.problems());
  const files::FolderRecords records(call.folder, *workshop);
  const auto made = workbench::make_plan(*workshop, records, options);
  if (!made) return faulty(call, made.problems());

  Answer answer;
  if (interrupted()) {
    answer.err = "Stopped. No plan was made; nothing was written.\n";
    answer.code = ExitCode::our_fault;
    if (call.json)
      answer.out = files::faults_json({{{"command line"}, "Ctrl-C", "time to finish", "Plan again."}});
    return answer;
  }
  for (const Problem& warning : proof.warnings) answer.err += "Suspicious: " + to_text(warning) + "\n";
  answer.out = call.json ? files::plan_json(*made, proof.warnings)
                         : as_page(plan_summary(*made, UnitText(call.units)));
  if (made->queued > 0 && made->units.empty()) answer.code = ExitCode::no_safe_answer;
  return answer;
}

}  // namespace dampward::cli
