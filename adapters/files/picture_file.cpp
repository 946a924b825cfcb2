#include "adapters/files/picture_file.h"

#include <algorithm>

#include "adapters/files/text_file.h"

namespace dampward::files {
namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t largest_picture = 8'000'000;
constexpr const char* wanted = "an SVG drawing, a PNG or a JPEG photograph";

bool looks_like_a_picture(std::string_view bytes) {
  return bytes.starts_with("\x89PNG\r\n\x1a\n") || bytes.starts_with("\xFF\xD8\xFF") ||
         bytes.substr(0, 4096).find("<svg") != std::string_view::npos;
}

}  // namespace

Result<std::string> read_picture(const fs::path& folder, const std::string& name) {
  const fs::path path(name);
  const bool leads_out = path.is_absolute() || std::any_of(path.begin(), path.end(),
                                                           [](const fs::path& step) { return step == ".."; });
  if (leads_out) {
    return Problem{{name},
                   "a picture out of the shop folder",
                   "a file in it, such as pictures/radio.svg",
                   "Copy the picture into the folder."};
  }
  auto bytes = read_bytes(folder / path, name, largest_picture);
  if (!bytes) return bytes;
  if (!looks_like_a_picture(*bytes))
    return Problem{{name}, "which is no picture", wanted, "Save it as one of these, or take the line out."};
  return bytes;
}

}  // namespace dampward::files
