#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "apps/cli/exit_code.h"
#include "apps/cli/screen.h"
#include "apps/cli/unit_text.h"

namespace dampward::cli {

// What a person asked for on the command line.
struct Call {
  std::string verb;
  std::string folder;                // start, proofread, plan, note; exposure and the questions (or empty)
  std::string weather;               // exposure --weather, charts --weather
  std::string from;                  // plan --from, as written
  std::vector<std::string> what_if;  // plan --what-if, each as written
  std::string problem, answer;       // solve, verify: files; plan --problem, --answer: to be written
  std::string out;                   // plan --out, charts --out, leaflet --out: folder to be written
  std::string paper = "a4", language = "en";                       // --paper, --lang: of the pages in it
  std::string at;                                                  // plan --at, note --at, as written
  std::string kind, unit, oven, person, step, by, data, corrects;  // note, as written
  std::string shell;                                               // completion SHELL
  bool example = false;                                            // start --example
  bool json = false;
  // Options of a question (mix, air, bake, window), by name without dashes and as written; absent: not given.
  std::map<std::string, std::string> asked;
  std::vector<std::string> surfaces;  // window --surface, each as written
  std::string unit_word = "metric";   // --units as written
  UnitSystem units = UnitSystem::metric;
  Screen screen;  // what standard output is read on
};

// Text for standard output and standard error, and how the program ends.
struct Answer {
  std::string out;
  std::string err;
  ExitCode code = ExitCode::done;
};

// The call written in the arguments (without the program's name), or the answer that ends the program at once
// (help, version, or what is wrong with the arguments).
struct Reading {
  Call call;
  std::optional<Answer> ends_with;
};
Reading read_call(const std::vector<std::string>& arguments);

}  // namespace dampward::cli
