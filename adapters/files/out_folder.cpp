#include "adapters/files/out_folder.h"

#include <fcntl.h>
#include <stdio.h>
#include <unistd.h>

#include <algorithm>
#include <set>

#include "adapters/files/json_values.h"
#include "adapters/files/safe_write.h"
#include "adapters/files/sha256.h"
#include "adapters/files/text_file.h"

namespace dampward::files {

namespace fs = std::filesystem;

namespace {

constexpr const char* manifest_name = "manifest.json";
constexpr const char* format_word = "dampward output";
constexpr int version = 1;

std::string manifest_text(const OutStamp& stamp, const std::vector<OutFile>& files) {
  Json listed = Json::array();
  for (const OutFile& file : files) {
    listed.push_back({{"name", file.name},
                      {"what", file.what},
                      {"bytes", file.bytes.size()},
                      {"sha256", sha256_hex(file.bytes)}});
  }
  return document({{"format", format_word},
                   {"version", version},
                   {"shop", stamp.shop},
                   {"from", stamp.from},
                   {"plan", stamp.plan_id},
                   {"files", listed}});
}

// The names an earlier output's manifest lists, itself among them; none: there is no such manifest.
std::optional<std::set<std::string>> names_of_ours(const fs::path& place) {
  const auto text = read_text(place / manifest_name, manifest_name);
  if (!text) return std::nullopt;
  const Json json = Json::parse(*text, nullptr, false);
  if (json.is_discarded() || !json.is_object() || json.value("format", "") != format_word ||
      !json.contains("files"))
    return std::nullopt;
  std::set<std::string> names{manifest_name};
  for (const Json& file : json["files"]) {
    if (file.is_object()) names.insert(file.value("name", ""));
  }
  return names;
}

// What stands in the way of putting an output there; none: nothing, or an earlier output.
std::optional<Problem> in_the_way(const fs::path& place) {
  std::error_code error;
  if (!fs::exists(place, error)) return std::nullopt;
  Problem foreign{{place.string()},
                  "",
                  "a folder that is not there yet, an empty one, or an earlier output",
                  "Name another place; nothing was written."};
  if (!fs::is_directory(place, error)) {
    foreign.found = "a file";
    return foreign;
  }
  const auto ours = names_of_ours(place);
  for (const fs::directory_entry& entry : fs::directory_iterator(place, error)) {
    const std::string name = entry.path().filename().string();
    if (ours && ours->contains(name)) continue;
    foreign.found = "a folder that holds " + name + ", which is no part of an output";
    return foreign;
  }
  return std::nullopt;
}

Problem cannot_write(const fs::path& place) {
  return {{place.string()},
          "a place that cannot be written",
          "a folder with room and the right to write",
          "Check the owner and the free space, or name another place; what was there is unchanged."};
}

// The new folder takes the place of the old in one step, where the file system can.
bool take_place(const fs::path& fresh, const fs::path& place) {
  std::error_code error;
  if (!fs::exists(place, error)) {
    fs::rename(fresh, place, error);
    return !error;
  }
  if (::renameat2(AT_FDCWD, fresh.c_str(), AT_FDCWD, place.c_str(), RENAME_EXCHANGE) == 0) return true;
  fs::path old = fresh;
  old += ".old";
  fs::rename(place, old, error);
  if (error) return false;
  fs::rename(fresh, place, error);
  if (!error) {
    fs::rename(old, fresh, error);
    return true;
  }
  std::error_code ignored;
  fs::rename(old, place, ignored);
  return false;
}

}  // namespace

std::optional<NotWritten> write_out_folder(const fs::path& named, const OutStamp& stamp,
                                           const std::vector<OutFile>& files) {
  // "sheets/" is the same place as "sheets".
  const fs::path place = named.has_filename() ? named : named.parent_path();
  if (const auto problem = in_the_way(place)) return NotWritten{*problem, false};
  fs::path fresh = place;
  fresh += ".part";
  std::error_code error;
  fs::remove_all(fresh, error);
  std::vector<OutFile> all = files;
  all.push_back({manifest_name, "", manifest_text(stamp, files)});
  const bool made = fs::create_directory(fresh, error) && !error;
  const bool written = made && std::all_of(all.begin(), all.end(), [&](const OutFile& file) {
                         return !write_whole(fresh / file.name, file.bytes);
                       });
  const bool placed = written && take_place(fresh, place);
  fs::remove_all(fresh, error);
  if (placed) return std::nullopt;
  return NotWritten{cannot_write(place), made && !written};
}

}  // namespace dampward::files
