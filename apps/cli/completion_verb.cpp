#include "apps/cli/completion.h"
#include "apps/cli/verbs.h"

namespace dampward::cli {

Answer completion(const Call& call) {
  if (call.shell == "bash") return {bash_completion(description()), "", ExitCode::done};
  if (call.shell == "zsh") return {zsh_completion(description()), "", ExitCode::done};
  if (call.shell == "fish") return {fish_completion(description()), "", ExitCode::done};
  return faulty(call, {{{"command line"}, "the shell \"" + call.shell + "\"", "bash, zsh or fish", ""}});
}

}  // namespace dampward::cli
