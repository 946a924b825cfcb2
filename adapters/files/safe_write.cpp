#include "adapters/files/safe_write.h"

#include <fcntl.h>
#include <unistd.h>

namespace dampward::files {

namespace fs = std::filesystem;

namespace {

bool write_all(int file, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(file, text.data(), text.size());
    if (written <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

// The text in a new file, on the disk before this returns.
bool write_durably(const fs::path& path, std::string_view text) {
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666);
  if (file < 0) return false;
  const bool whole = write_all(file, text) && ::fsync(file) == 0;
  return (::close(file) == 0) && whole;
}

// A new name is kept through a loss of power once its folder is on the disk too; some file systems cannot be asked.
void keep_names(const fs::path& folder) {
  const int handle = ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (handle < 0) return;
  ::fsync(handle);
  ::close(handle);
}

}  // namespace

std::optional<Problem> write_whole(const fs::path& path, std::string_view text) {
  fs::path beside = path;
  beside += ".part";
  std::error_code error;
  const bool written = write_durably(beside, text);
  if (written) fs::rename(beside, path, error);
  if (written && !error) {
    keep_names(path.parent_path());
    return std::nullopt;
  }
  std::error_code ignored;
  fs::remove(beside, ignored);
  return Problem{{path.string()},
                 "a place that cannot be written",
                 "a folder with room and the right to write",
                 "Check the folder's owner and the free space, or name another place."};
}

}  // namespace dampward::files
