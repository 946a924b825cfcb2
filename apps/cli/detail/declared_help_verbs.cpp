#include "apps/cli/detail/declared.h"

namespace dampward::cli {

void declare_help_verbs(CLI::App& app, Call& call) {
  CLI::App* completion =
      app.add_subcommand("completion", "print what makes a shell complete dampward's verbs and options");
  completion->add_option("SHELL", call.shell, "the shell to print it for")
      ->required()
      ->type_name("bash|zsh|fish");
  app.add_subcommand("man", "print the manual page, for man(1)");
}

}  // namespace dampward::cli
