#pragma once

#include <CLI/CLI.hpp>
#include <string>

#include "apps/cli/call.h"

namespace dampward::cli {

// The whole command line: every verb is added to the app, and its options fill the call. Help, completion and the manual all
// speak from it. The name of a value tells what may stand there: "a4|letter" is one of these words, DIR and PLACE are folders,
// FILE, PROBLEM and ANSWER are files, and anything else is the person's own.
void declare(CLI::App& app, Call& call);

// A group of verbs each.
void declare_folder_verbs(CLI::App& app, Call& call);     // start, proofread, plan, note, exposure
void declare_timetable_verbs(CLI::App& app, Call& call);  // solve, verify, selfcheck
void declare_mix(CLI::App& app, Call& call);
void declare_air(CLI::App& app, Call& call);
void declare_leaflet(CLI::App& app, Call& call);
void declare_bake(CLI::App& app, Call& call);
void declare_window(CLI::App& app, Call& call);
void declare_charts(CLI::App& app, Call& call);
void declare_help_verbs(CLI::App& app, Call& call);  // completion, man

// Options several verbs share.
void add_json(CLI::App& verb, Call& call);
void add_units(CLI::App& verb, Call& call);
// An option whose text goes to `call.asked` under its own name, to be read as a quantity by the verb.
void ask(CLI::App& verb, Call& call, const std::string& name, const std::string& type,
         const std::string& help);

}  // namespace dampward::cli
