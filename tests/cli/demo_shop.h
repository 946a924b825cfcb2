#pragma once

#include <cstddef>
#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "tests/files/scratch_folder.h"

// All bytes of a file.
std::string whole_text(const std::filesystem::path& file);

// A copy of the demo workshop in a folder of its own, in which things can be changed.
class DemoShop {
 public:
  DemoShop();

  std::string folder() const { return scratch_.path().string(); }
  std::filesystem::path path(const std::string& name) const { return scratch_.path() / name; }
  std::string text(const std::string& name) const { return whole_text(path(name)); }
  void write(const std::string& name, std::string_view text) const { scratch_.write(name, text); }

  // Puts `by` where `old` stands first; gives the line it stands in, from 1.
  int replace(const std::string& name, std::string_view old, std::string_view by) const;

  // Rows of queue.csv below its two heading lines, and back.
  std::vector<std::string> queue_rows() const;
  void write_queue(const std::vector<std::string>& rows) const;

 private:
  ScratchFolder scratch_;
};

// So many rows with serials of their own, of the kinds, findings and soils of the demo's queue in turn.
std::vector<std::string> long_queue(const DemoShop& shop, int count);

// The demo's weather file with these texts in place of its own in every hour's row: by column, from 0.
std::string weather_with(const std::map<std::size_t, std::string>& columns);
