#include "adapters/files/safe_write.h"

#include <fstream>

namespace dampward::files {

namespace fs = std::filesystem;

std::optional<Problem> write_whole(const fs::path& path, std::string_view text) {
  fs::path beside = path;
  beside += ".part";
  std::error_code error;
  {
    std::ofstream out(beside, std::ios::binary | std::ios::trunc);
    out.write(text.data(), static_cast<std::streamsize>(text.size()));
    out.close();
    if (out) fs::rename(beside, path, error);
    if (out && !error) return std::nullopt;
  }
  std::error_code ignored;
  fs::remove(beside, ignored);
  return Problem{{path.string()},
                 "a place that cannot be written",
                 "a folder with room and the right to write",
                 "Check the folder's owner and the free space, or name another place."};
}

}  // namespace dampward::files
