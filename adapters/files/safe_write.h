#pragma once

#include <filesystem>
#include <optional>
#include <string_view>

#include "core/base/problem.h"

namespace dampward::files {

// Writes a whole file or nothing, on the disk before it returns: into a file beside it first, which then takes its name. A file
// of that name is replaced.
// The problem names the path, and what was there before stays as it was.
std::optional<Problem> write_whole(const std::filesystem::path& path, std::string_view text);

}  // namespace dampward::files
