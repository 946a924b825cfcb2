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

Answer answer(const Call& call) {
  if (call.verb == "start") return start(call);
  if (call.verb == "proofread") return proofread(call);
  if (call.verb == "plan") return plan(call);
  if (call.verb == "exposure") return exposure(call);
  if (call.verb == "solve") return solve(call);
  if (call.verb == "verify") return verify(call);
  DAMPWARD_PROMISE(call.verb == "selfcheck", "a call that was read names a known verb");
  return selfcheck(call);
}

}  // namespace dampward::cli
