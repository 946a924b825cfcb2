#pragma once

#include <set>
#include <string>

// The verbs that `dampward --help` lists.
std::set<std::string> verbs_in_help();

// The long options at the beginnings of the lines of a verb's help, without --help. An empty verb: the program's own.
std::set<std::string> options_in_help(const std::string& verb);
