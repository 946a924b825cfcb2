#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "core/base/result.h"

namespace dampward::files {

// The example folders the program can write: "starter" (every key with its note) and whatever else data/ holds as a whole shop.
std::vector<std::string> example_folders();

// Writes a shop folder that can be planned as it stands, all of it or nothing; gives the names of its files.
// Faults: the folder holds something already, its parent is missing, it cannot be written, no such example.
Result<std::vector<std::string>> start_folder(const std::filesystem::path& folder,
                                              const std::string& example = "starter");

}  // namespace dampward::files
