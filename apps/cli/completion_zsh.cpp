#include "apps/cli/completion.h"
#include "apps/cli/detail/shell_text.h"

namespace dampward::cli {
namespace {

// For zsh: ":TIME:" with what completes it.
std::string zsh_value(const ValueText& value) {
  const std::string name = value.takes == Takes::choice ? "word" : put_before(":\\", value.name, "\\");
  switch (value.takes) {
    case Takes::folder:
      return ":" + name + ":_files -/";
    case Takes::file:
      return ":" + name + ":_files";
    case Takes::choice:
      return ":" + name + ":(" + joined(value.choices, " ") + ")";
    case Takes::own_words:
      break;
  }
  return ":" + name + ": ";
}

std::string zsh_options(const std::vector<OptionText>& options) {
  std::string out;
  for (const OptionText& option : options) {
    for (const std::string& name : option.names) {
      std::string spec = (option.repeats ? "*" : "") + name;
      if (!option.value.empty()) spec += "=";
      spec += "[" + put_before("[]:\\", option.text, "\\") + "]";
      for (const ValueText& value : option.value) spec += zsh_value(value);
      out += " \\\n        " + quoted(spec);
    }
  }
  return out;
}

}  // namespace

std::string zsh_completion(const Description& all) {
  std::string script = R"(#compdef dampward
# zsh completion for dampward, printed by: dampward completion zsh

_dampward() {
  local curcontext="$curcontext" state line
  local -A opt_args
  local -a verbs
  _arguments -C)" + zsh_options(all.options) +
                       R"( \
        '1: :->verb' '*:: :->rest' && return
  case $state in
    verb)
      verbs=(
)";
  for (const VerbText& verb : all.verbs)
    script += "        " + quoted(verb.name + ":" + put_before(":\\", verb.text, "\\")) + "\n";
  script += R"(      )
      _describe verb verbs
      ;;
    rest)
      case $words[1] in
)";
  for (const VerbText& verb : all.verbs) {
    script += "        " + verb.name + ")\n      _arguments" + zsh_options(verb.options);
    for (std::size_t i = 0; i < verb.arguments.size(); ++i) {
      script += " \\\n        " + quoted(std::to_string(i + 1) + zsh_value(verb.arguments[i].value));
    }
    script += "\n      ;;\n";
  }
  return script + R"(      esac
      ;;
  esac
}

# Read as a function of that name, or sourced.
if [[ $funcstack[1] == _dampward ]]; then
  _dampward "$@"
else
  compdef _dampward dampward
fi
)";
}

}  // namespace dampward::cli
