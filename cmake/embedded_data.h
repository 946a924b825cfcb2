#pragma once
// The files of data/, carried inside the program. Written into the build folder by cmake/embed.cmake.

#include <span>
#include <string_view>

namespace dampward::files {

struct EmbeddedFile {
  std::string_view path;  // below data/, with forward slashes: "materials/waxes.csv"
  std::string_view text;
};

// Every file of data/, sorted by path.
std::span<const EmbeddedFile> embedded_files();

// The text of one file of data/, named by its path below data/. A view whose data() is null when there is none.
std::string_view find_embedded(std::string_view path);

}  // namespace dampward::files
