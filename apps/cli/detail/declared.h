#pragma once

#include <CLI/CLI.hpp>
#include <string>

#include "apps/cli/call.h"

namespace dampward::cli {

// What the command line may hold, a group of verbs each: every verb is added to the app, and its options fill the call.
void declare_folder_verbs(CLI::App& app, Call& call);     // start, proofread, plan, note, exposure
void declare_timetable_verbs(CLI::App& app, Call& call);  // solve, verify, selfcheck
void declare_mix(CLI::App& app, Call& call);
void declare_air(CLI::App& app, Call& call);
void declare_leaflet(CLI::App& app, Call& call);
void declare_bake(CLI::App& app, Call& call);
void declare_window(CLI::App& app, Call& call);
void declare_charts(CLI::App& app, Call& call);

// Options several verbs share.
void add_json(CLI::App& verb, Call& call);
void add_units(CLI::App& verb, Call& call);
// An option whose text goes to `call.asked` under its own name, to be read as a quantity by the verb.
void ask(CLI::App& verb, Call& call, const std::string& name, const std::string& type,
         const std::string& help);

}  // namespace dampward::cli
