#pragma once

#include <filesystem>
#include <span>
#include <string>
#include <vector>

#include "adapters/files/toml_document.h"
#include "core/base/result.h"
#include "workbench/plan_difference.h"
#include "workbench/workshop.h"

namespace dampward::files {

// A value somebody wonders about: ovens.locker.lamps.count=3. The path is that of the key in the shop's TOML files; an item of
// a list goes by its number from 1.
struct Change {
  std::string path;  // as typed, without blanks
  std::vector<std::string> keys;
  TomlNode value;  // placed at the change itself, so that every complaint about it names the change
};

// The changes in texts such as "ovens.locker.lamps.count=3; crew.painter=ill". A value is written as in the files; a word or
// figure may stand without its quotes, which a command line tends to swallow. Problems: no path or no value, what cannot be
// read, a path given twice, or one inside another.
Result<std::vector<Change>> changes_from_text(std::span<const std::string> texts);

// A shop folder as it would be read with the changes in its files, and what each of them replaces.
struct ChangedWorkshop {
  workbench::Workshop workshop;
  std::vector<workbench::ChangedValue> changes;
  Problems warnings;
};

// No file is touched. The changes are made in order: the values are put over the folder's own after reading them from disk and before anything is made of them,
// so that every check of a file holds. `as_is` is the same folder without changes: parts that no file names are known from
// it, and its climate serves again unless another weather file is asked for.
// Short forms: a number for a table that counts (ovens.locker.lamps=3 is its count), and crew.painter=ill (or away), who then
// has no shift. Problems: a path into nothing, with the likely one; a value the files could not hold; whatever is wrong with
// the folder itself.
Result<ChangedWorkshop> read_changed_workshop(const std::filesystem::path& folder,
                                              std::span<const Change> changes,
                                              const workbench::Workshop& as_is);

}  // namespace dampward::files
