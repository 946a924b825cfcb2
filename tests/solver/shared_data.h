#pragma once

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "adapters/files/project_file.h"

namespace dampward::solver::test {

// Instances of ../shared, outside this project; tests that want them skip where they are absent.
inline const std::filesystem::path shared =
    std::filesystem::path(DAMPWARD_SOURCE_DIR) / "../shared/data/scheduling";

inline std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

inline Result<Problem> read(const std::filesystem::path& path) {
  return files::read_project(text_of(path), *files::project_format(path.filename().string()),
                             path.filename().string());
}

}  // namespace dampward::solver::test
