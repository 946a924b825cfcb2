#include "apps/cli/call.h"

#include <CLI/CLI.hpp>
#include <algorithm>

#include "adapters/files/json_documents.h"
#include "apps/cli/detail/declared.h"
#include "core/base/text.h"

namespace dampward::cli {
namespace {

std::vector<std::string> verbs_of(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::App* verb : app.get_subcommands([](const CLI::App*) { return true; }))
    names.push_back(verb->get_name());
  return names;
}

std::vector<std::string> options_of(const CLI::App& verb) {
  std::vector<std::string> names;
  for (const CLI::Option* option : verb.get_options()) {
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  }
  return names;
}

// What CLI11 found wrong, with what would be right.
Problem wrong_arguments(const CLI::App& app, const std::vector<std::string>& arguments,
                        const std::string& found) {
  Problem problem{{"command line"},
                  found,
                  "one of the verbs and options of docs/cli.md",
                  "Ask for help with: dampward --help"};
  const std::vector<std::string> verb_names = verbs_of(app);
  const bool verb_given = !app.get_subcommands().empty();
  if (!verb_given && !arguments.empty() && !arguments.front().starts_with("-")) {
    problem.found = "\"" + arguments.front() + "\" where a verb belongs";
    problem.expected = "one of " + listed(verb_names);
    const std::string guess = did_you_mean(arguments.front(), verb_names);
    if (!guess.empty()) problem.next = guess;
  } else if (verb_given) {
    const CLI::App& verb = *app.get_subcommands().front();
    problem.next = "Ask for help with: dampward " + verb.get_name() + " --help";
    const std::vector<std::string> known = options_of(verb);
    for (const std::string& argument : arguments) {
      const std::string option = argument.substr(0, argument.find('='));
      if (!option.starts_with("--") || std::find(known.begin(), known.end(), option) != known.end()) continue;
      problem.found = "the option " + option;
      problem.expected = "one of " + listed(known);
      const std::string guess = did_you_mean(option, known);
      if (!guess.empty()) problem.next = guess;
    }
  } else if (arguments.empty()) {
    problem.found = "no verb";
    problem.expected = "one of " + listed(verb_names);
  }
  return problem;
}

Answer refused(const Problem& problem, bool json) {
  Answer answer{"", to_text(problem) + "\n", ExitCode::input_at_fault};
  if (json) answer.out = files::faults_json({problem});
  return answer;
}

std::string one_line(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  return text;
}

}  // namespace

Reading read_call(const std::vector<std::string>& arguments) {
  Reading reading;
  Call& call = reading.call;
  CLI::App app;
  declare(app, call);

  // CLI11 takes its arguments from the back.
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
  const bool json_wanted = std::find(arguments.begin(), arguments.end(), "--json") != arguments.end();
  try {
    app.parse(reversed);
  } catch (const CLI::Success&) {
    const bool version = std::find(arguments.begin(), arguments.end(), "--version") != arguments.end();
    const auto asked = app.get_subcommands();
    reading.ends_with = Answer{version         ? std::string("dampward ") + DAMPWARD_VERSION + "\n"
                               : asked.empty() ? app.help()
                                               : asked.front()->help(),
                               "", ExitCode::done};
    return reading;
  } catch (const CLI::ParseError& error) {
    reading.ends_with = refused(wrong_arguments(app, arguments, one_line(error.what())), json_wanted);
    return reading;
  }
  call.verb = app.get_subcommands().front()->get_name();
  if (call.unit_word != "metric" && call.unit_word != "us") {
    reading.ends_with = refused(
        {{"command line"}, "--units " + call.unit_word, "--units metric or --units us", ""}, json_wanted);
    return reading;
  }
  call.units = call.unit_word == "us" ? UnitSystem::us : UnitSystem::metric;
  if (call.verb == "exposure" && call.folder.empty() && call.weather.empty()) {
    reading.ends_with =
        refused(wrong_arguments(app, arguments, "neither a folder nor --weather FILE"), json_wanted);
  }
  return reading;
}

}  // namespace dampward::cli
