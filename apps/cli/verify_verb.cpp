#include "adapters/files/json_documents.h"
#include "adapters/files/text_file.h"
#include "adapters/referee_json/verdict.h"
#include "apps/cli/verbs.h"
#include "apps/cli/violation_text.h"

namespace dampward::cli {

std::string violation_text(const std::vector<referee::Violation>& violations) {
  std::string text;
  for (const referee::Violation& each : violations) text += each.rule + ": " + each.sentence + "\n";
  return text;
}

Answer verify(const Call& call) {
  const auto problem = files::read_text(call.problem, call.problem);
  const auto answer = files::read_text(call.answer, call.answer);
  Problems unreadable;
  if (!problem) unreadable = problem.problems();
  if (!answer) unreadable.insert(unreadable.end(), answer.problems().begin(), answer.problems().end());
  if (!unreadable.empty()) return faulty(call, unreadable);

  const auto verdict = referee_json::verdict({*problem, call.problem}, {*answer, call.answer});
  if (!verdict) return faulty(call, verdict.problems());
  if (call.json)
    return {files::verify_json(call.problem, call.answer, *verdict), "",
            verdict->empty() ? ExitCode::done : ExitCode::our_fault};
  if (verdict->empty()) return {"No rule is broken.\n", "", ExitCode::done};
  return {violation_text(*verdict), "", ExitCode::our_fault};
}

}  // namespace dampward::cli
