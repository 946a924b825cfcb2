#include "apps/cli/detail/declared.h"

namespace dampward::cli {

void add_json(CLI::App& verb, Call& call) {
  verb.add_flag("--json", call.json, "print one JSON document on standard output (always SI units)");
}

void add_units(CLI::App& verb, Call& call) {
  verb.add_option("--units", call.unit_word, "metric (default) or us")->type_name("metric|us");
}

void ask(CLI::App& verb, Call& call, const std::string& name, const std::string& type,
         const std::string& help) {
  verb.add_option_function<std::string>(
          "--" + name, [&call, name](const std::string& written) { call.asked[name] = written; }, help)
      ->type_name(type);
}

}  // namespace dampward::cli
