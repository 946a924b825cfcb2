#include "apps/cli/verbs.h"

#include <map>

#include "adapters/files/json_documents.h"
#include "core/base/promise.h"

namespace dampward::cli {

Answer not_written(const Call& call, const files::NotWritten& failure) {
  Answer answer = faulty(call, {failure.problem});
  if (failure.ran_out) answer.code = ExitCode::our_fault;
  return answer;
}

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
  using Verb = Answer (*)(const Call&);
  static const std::map<std::string, Verb> verbs = {
      {"start", start},   {"proofread", proofread}, {"plan", plan},
      {"note", note},     {"exposure", exposure},   {"solve", solve},
      {"verify", verify}, {"selfcheck", selfcheck}, {"mix", mix},
      {"air", air},       {"leaflet", leaflet},     {"bake", bake},
      {"window", window}, {"charts", charts},       {"completion", completion},
      {"man", man}};
  const auto verb = verbs.find(call.verb);
  DAMPWARD_PROMISE(verb != verbs.end(), "a call that was read names a known verb");
  return verb->second(call);
}

}  // namespace dampward::cli
