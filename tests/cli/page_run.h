#pragma once

#include <string>
#include <vector>

#include "tests/cli/page.h"

// Follows a page as its reader would, in a folder, with `dampward` among the shell's commands.

// What a shell shows for these commands, both outputs together, and how it ended.
struct Shown {
  int exit_code = -1;
  std::string text;
};
Shown run_in_shell(const std::string& commands, const std::string& folder);

// Does every step and checks each command's end and what it shows.
void follow(const std::vector<PageStep>& steps, const std::string& folder);

// The page of docs/ in an empty folder of its own.
void follow_page(const std::string& name);
