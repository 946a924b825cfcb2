#include "apps/cli/verbs.h"

#include "adapters/files/json_documents.h"
#include "core/base/promise.h"

namespace dampward::cli {

Answer faulty(const Call& call, const Problems& problems) {
  Answer answer;
  answer.code = ExitCode::input_at_fault;
  for (const Problem& problem : problems) answer.err += to_text(problem) + "\n";
  if (call.json) answer.out = files::faults_json(problems);
  return answer;
}

Result<Instant> time_option(const std::string& option, const std::string& written, const WallClock& clock) {
  if (const auto instant = parse_instant(written)) return *instant;
  if (const auto local = parse_local_time(written)) return clock.instant(*local);
  return Problem{{"command line"},
                 option + " \"" + written + "\"",
                 "a date and time of day on the shop's clock, such as 2026-11-30 07:00",
                 ""};
}

Answer answer(const Call& call) {
  if (call.verb == "start") return start(call);
  if (call.verb == "proofread") return proofread(call);
  if (call.verb == "plan") return plan(call);
  if (call.verb == "note") return note(call);
  if (call.verb == "exposure") return exposure(call);
  if (call.verb == "solve") return solve(call);
  if (call.verb == "verify") return verify(call);
  DAMPWARD_PROMISE(call.verb == "selfcheck", "a call that was read names a known verb");
  return selfcheck(call);
}

}  // namespace dampward::cli
