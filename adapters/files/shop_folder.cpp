#include "adapters/files/shop_folder.h"

#include <algorithm>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <tuple>

#include "adapters/files/detail/daily_records.h"
#include "adapters/files/detail/put_changes.h"
#include "adapters/files/detail/shop_readers.h"
#include "adapters/files/event_log.h"
#include "adapters/files/picture_file.h"
#include "adapters/files/shipped.h"
#include "adapters/files/text_file.h"
#include "adapters/files/weather.h"
#include "adapters/files/what_if.h"
#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/base/text.h"
#include "core/history/history.h"
#include "core/shop/faults.h"
#include "workbench/log_names.h"

namespace dampward::files {
namespace {

namespace fs = std::filesystem;
using detail::KnownIds;
using workbench::Workshop;

Workshop shipped_tables() {
  const Shipped& tables = shipped();
  Workshop workshop;
  workshop.materials = tables.materials;
  workshop.solvents = tables.solvents;
  workshop.lacquers = tables.lacquers;
  for (const ShippedLiquid& row : tables.liquids) workshop.thinners.put(row.liquid);
  workshop.hazards = tables.hazards;
  workshop.walls = tables.walls;
  return workshop;
}

void check_lacquer_in_use(const detail::ShopDocument& document, const Workshop& workshop, Proof& proof) {
  const std::string& name = workshop.shop.lacquer.text;
  if (name.empty() || workshop.lacquers.find(name) != nullptr) return;
  Proof told_already;
  const TomlNode* site = document.single("site", told_already);
  const TomlNode* value = site == nullptr ? nullptr : site->find("lacquer");
  const std::vector<std::string> known = workshop.lacquers.ids();
  proof.faults.push_back({value == nullptr ? Place{} : value->place,
                          format("lacquer = \"{}\", a lacquer nobody knows", name), "one of " + listed(known),
                          did_you_mean(name, known)});
}

// Where a dotted key of a value ("ovens.cabinet.heater") stands; nothing where a table or no such key is named.
std::optional<Place> place_of(const detail::ShopDocument& document, const std::string& dotted) {
  for (const TomlNode& file : document.documents) {
    const TomlNode* node = &file;
    for (std::string_view key : split(dotted, '.')) {
      if (node != nullptr) node = node->find(key);
    }
    if (node != nullptr && node->type != TomlNode::Type::table) return node->place;
  }
  return std::nullopt;
}

// The pictures the kinds name, each file once. A file at fault is told where the first kind names it.
void read_pictures(const fs::path& folder, const detail::ShopDocument& document, Workshop& workshop,
                   Proof& proof) {
  std::map<std::string, std::shared_ptr<const std::string>> read;
  for (const std::string& id : workshop.kinds.ids()) {
    const equipment::Kind* known = workshop.kinds.find(id);
    if (!known->picture || known->picture->file.empty()) continue;
    const std::string& file = known->picture->file;
    if (!read.contains(file)) {
      auto bytes = read_picture(folder, file);
      if (bytes)
        read[file] = std::make_shared<const std::string>(std::move(bytes).value());
      else {
        Problem problem = bytes.problems().front();
        if (const auto place = place_of(document, "kinds." + id + ".picture.file")) problem.place = *place;
        problem.found = format("file = \"{}\", {}", file, problem.found);
        proof.faults.push_back(std::move(problem));
        read[file] = nullptr;
      }
    }
    equipment::Kind with = *known;
    with.picture->bytes = read[file];
    workshop.kinds.put(std::move(with));
  }
}

// What only the whole shop shows. A value already told of, or missing, which the readers told, is not told twice.
void check_shop(const detail::ShopDocument& document, const shop::Shop& shop, Proof& proof) {
  const Problems told = proof.faults;
  for (const shop::Fault& fault : shop::faults(shop)) {
    const auto place = place_of(document, fault.key);
    if (!place) continue;
    const bool told_already = std::any_of(told.begin(), told.end(), [&](const Problem& problem) {
      return problem.place.file == place->file && problem.place.line == place->line;
    });
    if (!told_already)
      proof.faults.push_back({*place, fault.key + " with " + fault.found, fault.expected, ""});
  }
}

// A kind that is like a faulty one has its faults too: each is told once.
void keep_first_of_equals(Problems& problems) {
  std::set<std::tuple<std::string, int, int, std::string>> seen;
  std::erase_if(problems, [&](const Problem& problem) {
    return !seen.emplace(problem.place.file, problem.place.line, problem.place.column, problem.found).second;
  });
}

KnownIds known_ids(const Workshop& workshop) {
  KnownIds known;
  known.kinds = workshop.kinds.ids();
  for (const auto& ids : {workshop.lacquers.ids(), workshop.thinners.ids(), workshop.cleaners.ids()}) {
    known.liquids.insert(known.liquids.end(), ids.begin(), ids.end());
  }
  return known;
}

// The climate of the weather file the site names; a site that names none has none.
void read_climate(const fs::path& folder, Workshop& workshop, Proof& proof) {
  const std::string& name = workshop.shop.site.weather_file;
  std::error_code error;
  if (name.empty() || !fs::is_regular_file(folder / name, error))
    return;  // a missing file is told with the site
  const auto weather = read_weather(folder / name, name);
  if (weather.ok()) {
    workshop.climate = exposure::climate_of(*weather);
  } else {
    proof.faults.insert(proof.faults.end(), weather.problems().begin(), weather.problems().end());
  }
}

struct Reading {
  Workshop workshop;
  KnownIds known;
};

// What the parsed files say. `before` is the same folder as it is: its climate is taken over where the site still names
// the same weather file.
Reading read_everything(const fs::path& folder, const detail::ShopDocument& document, Proof& proof,
                        const Workshop* before = nullptr) {
  Reading reading{shipped_tables(), {}};
  Workshop& workshop = reading.workshop;
  if (!document.documents.empty()) {
    detail::read_site(document, folder, workshop.shop, proof);
    detail::read_ovens(document, workshop.walls, workshop.shop, proof);
    detail::read_spray(document, workshop.shop, proof);
    detail::read_power(document, workshop.shop, proof);
    detail::read_crew(document, workshop.shop, proof);
    detail::read_costs(document, workshop.shop, proof);
    detail::read_own_materials(document, workshop.materials, proof);
    detail::read_own_liquids(document, workshop, proof);
    detail::read_kinds(document, shipped().archetypes, workshop, proof);
    read_pictures(folder, document, workshop, proof);
    if (before != nullptr && before->shop.site.weather_file == workshop.shop.site.weather_file) {
      workshop.climate = before->climate;
    } else {
      read_climate(folder, workshop, proof);
    }
    if (document.complete) check_lacquer_in_use(document, workshop, proof);
    check_shop(document, workshop.shop, proof);
  }
  keep_first_of_equals(proof.faults);
  keep_first_of_equals(proof.warnings);
  reading.known = known_ids(workshop);
  reading.known.complete = document.complete;
  // A kind at fault is known all the same: its units are not called unknown on top.
  Proof told_already;
  for (const TomlNode* kind : document.entries("kinds", told_already)) {
    if (workshop.kinds.find(kind->key) == nullptr) reading.known.kinds.push_back(kind->key);
  }
  return reading;
}

Reading read_everything(const fs::path& folder, Proof& proof) {
  return read_everything(folder, detail::read_shop_document(folder, proof), proof);
}

// Reads one sheet of the folder with `read`; a missing one counts as empty where that is allowed.
template <class T>
Result<T> sheet(const fs::path& folder, const std::string& name, bool may_be_missing,
                const std::function<T(std::string_view, Proof&)>& read, Problems* warnings = nullptr) {
  std::error_code error;
  if (may_be_missing && !fs::exists(folder / name, error)) return T{};
  const auto text = read_text(folder / name, name);
  if (!text) return text.problems();
  Proof proof;
  T value = read(*text, proof);
  if (warnings != nullptr) warnings->insert(warnings->end(), proof.warnings.begin(), proof.warnings.end());
  if (!proof.faults.empty()) return std::move(proof.faults);
  return value;
}

Result<records::Queue> read_queue(const fs::path& folder, const KnownIds& known,
                                  Problems* warnings = nullptr) {
  return sheet<records::Queue>(
      folder, "queue.csv", false,
      [&](std::string_view text, Proof& proof) {
        return detail::read_queue("queue.csv", text, known, proof);
      },
      warnings);
}

Result<std::vector<records::StockLot>> read_stock(const fs::path& folder, const KnownIds& known,
                                                  Problems* warnings = nullptr) {
  return sheet<std::vector<records::StockLot>>(
      folder, "stock.csv", true,
      [&](std::string_view text, Proof& proof) {
        return detail::read_stock("stock.csv", text, known, proof);
      },
      warnings);
}

Result<std::vector<records::AirReading>> read_air(const fs::path& folder, Problems* warnings = nullptr) {
  return sheet<std::vector<records::AirReading>>(
      folder, "air.csv", true,
      [&](std::string_view text, Proof& proof) { return detail::read_air("air.csv", text, proof); },
      warnings);
}

}  // namespace

Workshop shipped_workshop() {
  Workshop workshop = shipped_tables();
  Proof proof;
  detail::read_kinds({}, shipped().archetypes, workshop, proof);
  DAMPWARD_PROMISE(proof.faults.empty(), "the carried archetypes hold no fault");
  return workshop;
}

struct FolderRecords::Known {
  KnownIds ids;
};

FolderRecords::FolderRecords(fs::path folder, const Workshop& workshop)
    : folder_(std::move(folder)), known_(new Known{known_ids(workshop)}) {}

FolderRecords::~FolderRecords() = default;

Result<records::Queue> FolderRecords::queue() const {
  return read_queue(folder_, known_->ids);
}

Result<std::vector<records::StockLot>> FolderRecords::stock() const {
  return read_stock(folder_, known_->ids);
}

Result<std::vector<records::AirReading>> FolderRecords::air() const {
  return read_air(folder_);
}

Result<std::vector<history::Event>> FolderRecords::log() const {
  return read_log(folder_);
}

Result<Workshop> read_workshop(const fs::path& folder) {
  Proof proof;
  Reading reading = read_everything(folder, proof);
  if (!proof.faults.empty()) return std::move(proof.faults);
  return std::move(reading.workshop);
}

Result<ChangedWorkshop> read_changed_workshop(const fs::path& folder, std::span<const Change> changes,
                                              const Workshop& as_is) {
  Proof proof;
  detail::ShopDocument document = detail::read_shop_document(folder, proof);
  ChangedWorkshop changed;
  changed.changes = detail::put_changes(document, changes, as_is, proof);
  if (!proof.faults.empty()) return std::move(proof.faults);
  changed.workshop = read_everything(folder, document, proof, &as_is).workshop;
  if (!proof.faults.empty()) return std::move(proof.faults);
  changed.warnings = std::move(proof.warnings);
  return changed;
}

Proof proofread(const fs::path& folder) {
  Proof proof;
  const Reading reading = read_everything(folder, proof);
  std::error_code error;
  if (!fs::is_directory(folder, error)) return proof;
  const KnownIds& known = reading.known;
  const auto add = [&](const auto& result) {
    if (!result.ok())
      proof.faults.insert(proof.faults.end(), result.problems().begin(), result.problems().end());
  };
  const auto queue = read_queue(folder, known, &proof.warnings);
  add(queue);
  add(read_stock(folder, known, &proof.warnings));
  add(read_air(folder, &proof.warnings));
  const auto log = read_log(folder);
  add(log);
  if (!log) return proof;
  add(history::read_history(*log));
  // What has left the shop since is no fault of the log, but a unit or person misspelt looks the same.
  if (!queue || !proof.faults.empty()) return proof;
  for (const history::Event& event : *log) {
    for (const Problem& doubt : workbench::unknown_names(event, reading.workshop, *queue))
      proof.warnings.push_back(doubt);
  }
  return proof;
}

}  // namespace dampward::files
