#pragma once

#include <string>

#include "apps/cli/description.h"

namespace dampward::cli {

// A script that makes the shell complete verbs, options and their values: words where the choice is fixed, folders and files
// where one belongs, nothing where the value is a person's own.
std::string bash_completion(const Description& all);
std::string zsh_completion(const Description& all);
std::string fish_completion(const Description& all);

}  // namespace dampward::cli
