#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

// The built program, run as a person runs it.

using Json = nlohmann::json;

struct Run {
  int exit_code = -1;  // -1: it did not end by itself
  std::string out;     // standard output
  std::string err;     // standard error
};

// Runs `dampward arguments…` in a folder, with both outputs going into files.
Run dampward_run(const std::vector<std::string>& arguments, const std::string& from = ".");

// The same with standard error on a terminal, as for somebody who sits in front of it.
Run dampward_run_at_terminal(const std::vector<std::string>& arguments);

// Standard output as one JSON document that ends with its line; fails the test where anything stands before
// or behind it.
Json only_document(const Run& run);

inline bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}
