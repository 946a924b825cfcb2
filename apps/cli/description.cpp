#include "apps/cli/description.h"

#include "apps/cli/detail/declared.h"
#include "core/base/text.h"

namespace dampward::cli {
namespace {

ValueText value_text(const std::string& name) {
  ValueText value{name};
  if (name == "DIR" || name == "PLACE") value.takes = Takes::folder;
  if (name == "FILE" || name == "PROBLEM" || name == "ANSWER") value.takes = Takes::file;
  if (name.find('|') != std::string::npos) {
    value.takes = Takes::choice;
    for (std::string_view word : split(name, '|')) value.choices.emplace_back(word);
  }
  return value;
}

OptionText option_text(const CLI::Option& option) {
  OptionText text{{}, option.get_description()};
  for (const std::string& name : option.get_snames()) text.names.push_back("-" + name);
  for (const std::string& name : option.get_lnames()) text.names.push_back("--" + name);
  if (option.get_items_expected_max() > 0) text.value = {value_text(option.get_type_name())};
  text.required = option.get_required();
  text.repeats = option.get_expected_max() > 1;
  return text;
}

ArgumentText argument_text(const CLI::Option& option) {
  const std::string name = option.get_name(true);
  const std::string type = option.get_type_name();
  return {name, option.get_description(), value_text(type == "TEXT" ? name : type), option.get_required()};
}

std::vector<OptionText> options_of(const CLI::App& app) {
  std::vector<OptionText> texts;
  for (const CLI::Option* option : app.get_options()) {
    if (!option->get_positional()) texts.push_back(option_text(*option));
  }
  return texts;
}

VerbText verb_text(const CLI::App& verb) {
  VerbText text{verb.get_name(), verb.get_description()};
  for (const CLI::Option* option : verb.get_options()) {
    if (option->get_positional()) text.arguments.push_back(argument_text(*option));
  }
  text.options = options_of(verb);
  return text;
}

}  // namespace

Description description() {
  CLI::App app;
  Call call;
  declare(app, call);
  Description all{app.get_description(), app.get_footer(), options_of(app), {}};
  for (const CLI::App* verb : app.get_subcommands([](const CLI::App*) { return true; }))
    all.verbs.push_back(verb_text(*verb));
  return all;
}

}  // namespace dampward::cli
