#include "apps/cli/call.h"

#include <CLI/CLI.hpp>
#include <algorithm>

#include "adapters/files/json_documents.h"
#include "core/base/text.h"

namespace dampward::cli {
namespace {

const std::vector<std::string> verb_names = {"start",    "proofread", "plan",   "note",
                                             "exposure", "solve",     "verify", "selfcheck"};

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
  std::string units = "metric";
  CLI::App app{
      "Dampward plans the drying and lacquering of electronic equipment in hot, damp places.\n"
      "It plans and permits nothing: local codes and licensed practice decide.",
      "dampward"};
  app.set_version_flag("--version", DAMPWARD_VERSION);
  app.require_subcommand(1);

  const auto add_json = [&](CLI::App* verb) {
    verb->add_flag("--json", call.json, "print one JSON document on standard output (always SI units)");
  };
  const auto add_units = [&](CLI::App* verb) {
    verb->add_option("--units", units, "metric (default) or us")->type_name("metric|us");
  };

  CLI::App* start = app.add_subcommand("start", "write a commented starter folder");
  start->add_option("DIR", call.folder, "folder to make; it must not exist or be empty")->required();
  start->add_flag("--example", call.example, "the demo workshop instead of the starter");
  add_json(start);

  CLI::App* proofread = app.add_subcommand("proofread", "read a shop folder and name every fault in it");
  proofread->add_option("DIR", call.folder, "the shop folder")->required();
  add_json(proofread);

  CLI::App* plan = app.add_subcommand("plan", "plan the treatment of everything in the queue");
  plan->add_option("DIR", call.folder, "the shop folder")->required();
  plan->add_option("--from", call.from,
                   "when work starts, e.g. \"2026-11-30 07:00\" (default: the queue's own start)")
      ->type_name("TIME");
  plan->add_option(
          "--at", call.at,
          "plan on from what the log says until then: what has begun stays, the rest is planned anew")
      ->type_name("TIME");
  plan->add_option("--what-if", call.what_if,
                   "show what a change would move, e.g. \"ovens.locker.lamps=3\"; several allowed")
      ->type_name("PATH=VALUE")
      ->allow_extra_args(false);
  plan->add_option("--problem", call.problem, "write the timetable problem there, as JSON")
      ->type_name("FILE");
  plan->add_option("--answer", call.answer, "write the timetable itself there, as JSON")->type_name("FILE");
  add_units(plan);
  add_json(plan);

  CLI::App* solve = app.add_subcommand("solve", "plan a timetable problem (docs/formats/timetable.md)");
  solve->add_option("PROBLEM", call.problem, "the problem, a JSON file")->required();
  solve->add_option("--answer", call.answer, "write the timetable there, as JSON")->type_name("FILE");
  add_json(solve);

  CLI::App* note = app.add_subcommand("note", "write down what happened, at the end of the folder's log");
  note->add_option("DIR", call.folder, "the shop folder")->required();
  note->add_option("--kind", call.kind, "what happened, e.g. step_finished (docs/formats/events.md)")
      ->required()
      ->type_name("KIND");
  note->add_option("--by", call.by, "who notes it, an id of the crew")->required()->type_name("PERSON");
  note->add_option("--at", call.at, "when it happened, e.g. \"2026-11-30 09:20\"")
      ->required()
      ->type_name("TIME");
  note->add_option("--unit", call.unit, "serial of the unit it is about")->type_name("SERIAL");
  note->add_option("--step", call.step, "id of the step, as in the plan's JSON: r1.coat1")->type_name("STEP");
  note->add_option("--oven", call.oven, "id of the oven it is about")->type_name("OVEN");
  note->add_option("--person", call.person, "who it is about, or who did the step (default: --by)")
      ->type_name("PERSON");
  note->add_option("--data", call.data, "what its kind holds beside, e.g. '{\"why\": \"rain\"}'")
      ->type_name("JSON");
  note->add_option("--corrects", call.corrects, "id of the earlier event it stands in for")
      ->type_name("EVENT");
  add_json(note);

  CLI::App* exposure = app.add_subcommand("exposure", "what a climate does to stored equipment");
  CLI::Option* folder = exposure->add_option("DIR", call.folder, "a shop folder that names its weather file");
  exposure->add_option("--weather", call.weather, "an EPW, TMY3 CSV or NSRDB CSV file")
      ->type_name("FILE")
      ->excludes(folder);
  add_units(exposure);
  add_json(exposure);

  CLI::App* verify = app.add_subcommand("verify", "judge a timetable by every rule of its problem");
  verify->add_option("PROBLEM", call.problem, "a timetable problem, JSON")->required();
  verify->add_option("ANSWER", call.answer, "an answer to it, JSON")->required();
  add_json(verify);

  CLI::App* selfcheck =
      app.add_subcommand("selfcheck", "hold every model against the published values it rests on");
  add_json(selfcheck);

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
  if (units != "metric" && units != "us") {
    reading.ends_with =
        refused({{"command line"}, "--units " + units, "--units metric or --units us", ""}, json_wanted);
    return reading;
  }
  call.units = units == "us" ? UnitSystem::us : UnitSystem::metric;
  if (call.verb == "exposure" && call.folder.empty() && call.weather.empty()) {
    reading.ends_with =
        refused(wrong_arguments(app, arguments, "neither a folder nor --weather FILE"), json_wanted);
  }
  return reading;
}

}  // namespace dampward::cli
