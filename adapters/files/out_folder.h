#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/base/problem.h"

namespace dampward::files {

// One file of an output folder.
struct OutFile {
  std::string name;  // without a folder
  std::string what;  // in a few words, for the manifest
  std::string bytes;
};

// What the manifest tells of the plan the files are of.
struct OutStamp {
  std::string shop, from, plan_id;
};

// Why nothing was written.
struct NotWritten {
  Problem problem;
  bool ran_out = false;  // a file could not be written although the place may be: a full disk, most likely
};

// Writes the files and a manifest.json that lists them (docs/formats/output.md), all or nothing: they are made whole beside the
// place and then take its name in one step. An earlier output there, which its own manifest tells, is replaced; a folder that holds
// anything else is a problem and stays as it is. The same files give the same bytes.
// Problems: a place that cannot be written, or is no output of ours.
std::optional<NotWritten> write_out_folder(const std::filesystem::path& place, const OutStamp& stamp,
                                           const std::vector<OutFile>& files);

}  // namespace dampward::files
