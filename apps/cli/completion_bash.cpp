#include <map>

#include "apps/cli/completion.h"
#include "apps/cli/detail/shell_text.h"
#include "core/base/format.h"

namespace dampward::cli {
namespace {

std::vector<std::string> names_of(const std::vector<OptionText>& options) {
  std::vector<std::string> names;
  for (const OptionText& option : options)
    names.insert(names.end(), option.names.begin(), option.names.end());
  return names;
}

std::vector<std::string> names_of(const std::vector<VerbText>& verbs) {
  std::vector<std::string> names;
  for (const VerbText& verb : verbs) names.push_back(verb.name);
  return names;
}

// For bash: what compgen is asked for in place of a value.
std::string bash_value(const ValueText& value) {
  switch (value.takes) {
    case Takes::folder:
      return "folder";
    case Takes::file:
      return "file";
    case Takes::choice:
      return joined(value.choices, " ");
    case Takes::own_words:
      break;
  }
  return "own";
}

// Cases of one variable by what they set it to.
std::string bash_cases(const std::map<std::string, std::vector<std::string>>& cases,
                       const std::string& variable) {
  std::string out;
  for (const auto& [value, patterns] : cases)
    out += format("    {}) {}={} ;;\n", joined(patterns, " | "), variable, quoted(value));
  return out;
}

}  // namespace

std::string bash_completion(const Description& all) {
  std::map<std::string, std::vector<std::string>> options, values, arguments;
  options[joined(names_of(all.options), " ")].emplace_back("''");
  for (const VerbText& verb : all.verbs) {
    options[joined(names_of(verb.options), " ")].push_back(verb.name);
    for (const OptionText& option : verb.options) {
      for (const ValueText& value : option.value)
        values[bash_value(value)].push_back("'" + verb.name + " " + option.name() + "'");
    }
    for (std::size_t i = 0; i < verb.arguments.size(); ++i)
      arguments[bash_value(verb.arguments[i].value)].push_back(format("'{} {}'", verb.name, i));
  }
  return R"(# bash completion for dampward, printed by: dampward completion bash

# What the option of a verb takes: a folder, a file, one of some words, own words, or nothing at all.
_dampward_takes() {
  takes=
  case "$1 $2" in
)" + bash_cases(values, "takes") +
         R"(  esac
}

# The same for a verb's arguments, counted from 0.
_dampward_argument() {
  takes=
  case "$1 $2" in
)" + bash_cases(arguments, "takes") +
         R"(  esac
}

_dampward_options() {
  case "$1" in
)" + bash_cases(options, "options") +
         R"(  esac
}

_dampward_offer() {
  case "$1" in
    own) ;;
    folder) compopt -o filenames 2>/dev/null; mapfile -t COMPREPLY < <(compgen -d -- "$2") ;;
    file) compopt -o filenames 2>/dev/null; mapfile -t COMPREPLY < <(compgen -f -- "$2") ;;
    *) mapfile -t COMPREPLY < <(compgen -W "$1" -- "$2") ;;
  esac
}

_dampward() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} verb=
  local takes= options= given=0 i
  COMPREPLY=()
  # bash parts --units=us into three words.
  if [[ $word == = ]]; then
    word=
  elif [[ $before == = ]]; then
    before=${COMP_WORDS[COMP_CWORD-2]}
  fi
  ((COMP_CWORD > 1)) && verb=${COMP_WORDS[1]}
  _dampward_takes "$verb" "$before"
  if [[ -n $takes ]]; then
    _dampward_offer "$takes" "$word"
    return
  fi
  _dampward_options "$verb"
  if [[ $word == -* ]]; then
    _dampward_offer "$options" "$word"
    return
  fi
  if [[ -z $verb ]]; then
    _dampward_offer ')" +
         joined(names_of(all.verbs), " ") + R"(' "$word"
    return
  fi
  # Arguments that stand before this word.
  for ((i = 2; i < COMP_CWORD; i++)); do
    case ${COMP_WORDS[i]} in
      =) ((i++)) ;;
      -*)
        _dampward_takes "$verb" "${COMP_WORDS[i]}"
        [[ -n $takes && ${COMP_WORDS[i+1]} != = ]] && ((i++))
        ;;
      *) ((given++)) ;;
    esac
  done
  _dampward_argument "$verb" "$given"
  _dampward_offer "${takes:-$options}" "$word"
}

complete -F _dampward dampward
)";
}

}  // namespace dampward::cli
