#include "adapters/files/starter.h"

#include <algorithm>

#include "adapters/files/safe_write.h"
#include "core/base/format.h"
#include "core/base/text.h"
#include "embedded_data.h"

namespace dampward::files {
namespace {

namespace fs = std::filesystem;

// A folder in which everything is made ready; it is gone again unless it was moved to its place.
class Stage {
 public:
  explicit Stage(fs::path path) : path_(std::move(path)) {
    std::error_code error;
    made_ = fs::create_directory(path_, error) && !error;
  }
  ~Stage() {
    std::error_code ignored;
    if (made_) fs::remove_all(path_, ignored);
  }
  Stage(const Stage&) = delete;
  Stage& operator=(const Stage&) = delete;

  bool made() const { return made_; }
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
  bool made_ = false;
};

Problem cannot_write(const fs::path& folder) {
  return {{folder.string()},
          "a folder that cannot be written",
          "a place with room and the right to write",
          "Check the owner and the free space, or name another place."};
}

// Moves all that lies in the stage up into the folder the stage lies in; on a failure what was moved is taken back.
bool move_up(const fs::path& stage, const fs::path& folder) {
  std::vector<fs::path> moved;
  std::error_code error;
  for (const fs::directory_entry& entry : fs::directory_iterator(stage, error)) {
    const fs::path name = entry.path().filename();
    fs::rename(entry.path(), folder / name, error);
    if (!error) {
      moved.push_back(folder / name);
      continue;
    }
    for (const fs::path& taken_back : moved) fs::remove_all(taken_back, error);
    return false;
  }
  return !error;
}

}  // namespace

std::vector<std::string> example_folders() {
  std::vector<std::string> names;
  for (const EmbeddedFile& file : embedded_files()) {
    constexpr std::string_view marker = "/site.toml";
    if (file.path.ends_with(marker))
      names.emplace_back(file.path.substr(0, file.path.size() - marker.size()));
  }
  return names;
}

Result<std::vector<std::string>> start_folder(const fs::path& written, const std::string& example) {
  const std::vector<std::string> examples = example_folders();
  if (std::find(examples.begin(), examples.end(), example) == examples.end()) {
    return Problem{{},
                   format("the example \"{}\"", example),
                   "one of " + listed(examples),
                   did_you_mean(example, examples)};
  }
  std::error_code error;
  const fs::path folder = fs::weakly_canonical(fs::absolute(written), error);
  if (error || folder.empty()) return cannot_write(written);
  const bool there = fs::exists(fs::symlink_status(folder, error));
  if (there && !fs::is_directory(folder, error)) {
    return Problem{
        {written.string()}, "a file of this name", "the name of a new folder", "Name another one."};
  }
  if (there && !fs::is_empty(folder, error)) {
    return Problem{{written.string()},
                   "a folder that holds something already",
                   "a new or empty folder",
                   "Name another one; nothing was changed."};
  }
  if (!there && !fs::is_directory(folder.parent_path(), error)) {
    return Problem{{written.string()},
                   format("no folder {} to put it in", folder.parent_path().string()),
                   "a place that is there",
                   "Make that folder first."};
  }

  fs::path place = there ? folder / ".starting" : folder;
  if (!there) place += ".starting";
  const Stage stage(place);
  if (!stage.made() && fs::exists(place, error)) {
    return Problem{{place.string()},
                   "a folder left by a start that was cut short",
                   "a free name",
                   "Remove it, then start again."};
  }
  if (!stage.made()) return cannot_write(written);
  std::vector<std::string> names;
  for (const EmbeddedFile& file : embedded_files()) {
    if (!file.path.starts_with(example + "/")) continue;
    const std::string name(file.path.substr(example.size() + 1));
    if (name == "README.md") continue;
    fs::create_directories((stage.path() / name).parent_path(), error);
    if (error) return cannot_write(written);
    if (write_whole(stage.path() / name, file.text)) return cannot_write(written);
    names.push_back(name);
  }
  if (there) {
    if (!move_up(stage.path(), folder)) return cannot_write(written);
  } else {
    fs::rename(stage.path(), folder, error);
    if (error) return cannot_write(written);
  }
  return names;
}

}  // namespace dampward::files
