#pragma once

#include <filesystem>
#include <string>

#include "core/base/result.h"

namespace dampward::files {

// A picture that lies in a shop folder or below it, as its bytes. Problems: a name that leads out of the folder, no such file,
// over 8 MB, neither SVG nor PNG nor JPEG by its first bytes.
Result<std::string> read_picture(const std::filesystem::path& folder, const std::string& name);

}  // namespace dampward::files
