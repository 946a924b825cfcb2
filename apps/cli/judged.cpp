#include "apps/cli/judged.h"

#include "adapters/files/json_documents.h"
#include "adapters/files/safe_write.h"
#include "adapters/files/timetable_json.h"
#include "adapters/referee_json/verdict.h"
#include "apps/cli/verbs.h"
#include "apps/cli/violation_text.h"

namespace dampward::cli {

TimetableTexts texts_of(const line::Problem& problem, const line::Answer& answer,
                        const std::string& starts_at) {
  return {files::problem_text(problem, starts_at), files::answer_text(answer)};
}

std::optional<Answer> broken_timetable(const Call& call, const TimetableTexts& texts) {
  const auto found =
      referee_json::verdict({texts.problem, "timetable problem"}, {texts.answer, "timetable answer"});
  if (found && found->empty()) return std::nullopt;
  Answer answer;
  answer.code = ExitCode::our_fault;
  answer.err = "Our own mistake, please report it: the timetable breaks its rules, so it is not shown.\n";
  if (!found) {
    for (const Problem& problem : found.problems()) answer.err += to_text(problem) + "\n";
    if (call.json) answer.out = files::faults_json(found.problems());
    return answer;
  }
  answer.err += violation_text(*found);
  if (call.json) answer.out = files::verify_json("timetable problem", "timetable answer", *found);
  return answer;
}

std::optional<Answer> unwritten(const Call& call, const TimetableTexts& texts) {
  const auto write = [&](const std::string& path, const std::string& text) -> std::optional<Answer> {
    const auto problem = path.empty() ? std::nullopt : files::write_whole(path, text);
    return problem ? std::optional(faulty(call, {*problem})) : std::nullopt;
  };
  if (auto answer = write(call.verb == "plan" ? call.problem : "", texts.problem)) return answer;
  return write(call.answer, texts.answer);
}

}  // namespace dampward::cli
