#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace dampward::files {

// The text of `bytes` as UTF-8 without byte-order mark. UTF-16 is known by its mark; bytes that are no UTF-8 are taken
// for Windows-1252, the other encoding in which spreadsheets save.
std::string as_utf8(std::string_view bytes);

// A whole file as UTF-8 text. Faults: missing, a folder, unreadable, over 64 MB, not text (it holds zero bytes).
// Problems name the file by `shown`, the way the person knows it.
Result<std::string> read_text(const std::filesystem::path& path, const std::string& shown);

// The bytes of a file as they are. Faults: missing, a folder, unreadable, larger than `most` bytes. `what` it should be, for the problem.
Result<std::string> read_bytes(const std::filesystem::path& path, const std::string& shown,
                               std::uintmax_t most, const std::string& what = "file");

}  // namespace dampward::files
