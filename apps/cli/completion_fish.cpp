#include <algorithm>

#include "apps/cli/completion.h"
#include "apps/cli/detail/shell_text.h"

namespace dampward::cli {
namespace {

std::string fish_quoted(const std::string& text) {
  return "'" + put_before("\\'", text, "\\") + "'";
}

std::string fish_value(const ValueText& value) {
  switch (value.takes) {
    case Takes::folder:
      return " -x -a '(__fish_complete_directories)'";
    case Takes::file:
      return " -r -F";
    case Takes::choice:
      return " -x -a " + fish_quoted(joined(value.choices, " "));
    case Takes::own_words:
      break;
  }
  return " -x";
}

void put_fish_options(std::string& script, const std::string& condition,
                      const std::vector<OptionText>& options) {
  for (const OptionText& option : options) {
    script += "complete -c dampward -n " + condition;
    for (const std::string& name : option.names)
      script += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
    for (const ValueText& value : option.value) script += fish_value(value);
    script += " -d " + fish_quoted(option.text) + "\n";
  }
}

}  // namespace

std::string fish_completion(const Description& all) {
  std::string script = R"(# fish completion for dampward, printed by: dampward completion fish

function __dampward_verb
    set -l words (commandline -opc)
    test (count $words) -gt 1; and test $words[2] = $argv[1]
end

function __dampward_no_verb
    test (count (commandline -opc)) -eq 1
end

complete -c dampward -f
)";
  put_fish_options(script, "__dampward_no_verb", all.options);
  for (const VerbText& verb : all.verbs) {
    script +=
        "complete -c dampward -n __dampward_no_verb -a " + verb.name + " -d " + fish_quoted(verb.text) + "\n";
  }
  for (const VerbText& verb : all.verbs) {
    const std::string condition = "'__dampward_verb " + verb.name + "'";
    std::vector<std::string> told;  // two arguments of one sort are offered once
    for (const ArgumentText& argument : verb.arguments) {
      const std::string offer = argument.value.takes == Takes::file ? " -F" : fish_value(argument.value);
      if (std::find(told.begin(), told.end(), offer) != told.end()) continue;
      told.push_back(offer);
      script += "complete -c dampward -n " + condition + offer + "\n";
    }
    put_fish_options(script, condition, verb.options);
  }
  return script;
}

}  // namespace dampward::cli
