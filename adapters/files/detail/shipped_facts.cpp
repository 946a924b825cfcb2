#include <algorithm>

#include "adapters/files/detail/shipped_tables.h"
#include "embedded_data.h"

namespace dampward::files::detail {

std::vector<hazards::Hazard> read_hazards(Proof& proof) {
  std::vector<hazards::Hazard> all;
  ShippedSheet sheet("hazards/hazards.csv",
                     {"id", "step", "hazard", "harm", "who", "effect", "guard", "stop_sign", "source", "mark",
                      "defer", "isolate"},
                     proof);
  sheet.each_row([&](RowReader& row) {
    hazards::Hazard hazard;
    hazard.id = HazardId(row.text("id"));
    hazard.step = row.text("step");
    hazard.name = row.text("hazard");
    hazard.harm = row.text("harm") + (row.blank("who") ? "" : " (" + row.text("who") + ")");
    hazard.effect = row.text("effect");
    hazard.guard = row.text("guard");
    hazard.stop_sign = row.text("stop_sign");
    hazard.source = row.text("source");
    hazard.mark = mark_of(row, "mark");
    hazard.defer = row.text("defer");
    hazard.isolate = row.yes("isolate");
    row.needed("defer", "who decides in the end");
    all.push_back(std::move(hazard));
  });
  return all;
}

std::vector<drying::Wall> read_walls(Proof& proof) {
  std::vector<drying::Wall> all;
  ShippedSheet sheet("ovens/walls.csv", {"id", "name", "loss", "mark", "source", "settle"}, proof);
  sheet.each_row([&](RowReader& row) {
    drying::Wall wall;
    wall.id = row.text("id");
    wall.name = row.text("name");
    const auto loss = row.range<HeatTransferCoefficient>("loss");
    if (!loss && row.blank("loss")) row.needed("loss", "a heat transfer coefficient such as 5 W/m2K");
    if (loss) wall.loss = {*loss, mark_of(row, "mark"), row.text("source"), row.text("settle")};
    all.push_back(std::move(wall));
  });
  return all;
}

std::vector<Source> read_sources(Proof& proof) {
  std::vector<Source> all;
  ShippedSheet sheet("sources.csv", {"key", "title", "where_read", "status"}, proof);
  sheet.each_row([&](RowReader& row) {
    all.push_back({row.text("key"), row.text("title"), row.text("where_read"), row.text("status")});
    if (!row.choice("status", mark_words) && row.blank("status")) {
      row.needed("status", "read, memory, computed or estimate");
    }
  });
  return all;
}

std::vector<TomlNode> read_archetypes(Proof& proof) {
  std::vector<TomlNode> all;
  for (const EmbeddedFile& file : embedded_files()) {
    if (!file.path.starts_with("equipment/") || !file.path.ends_with(".toml")) continue;
    const auto document = read_toml(std::string(file.path), file.text);
    if (!document) {
      proof.faults.insert(proof.faults.end(), document.problems().begin(), document.problems().end());
      continue;
    }
    const TomlNode* kinds = document->find("kinds");
    if (kinds == nullptr || document->items.size() != 1) {
      proof.faults.push_back(
          {{std::string(file.path)}, "other tables than kinds", "one table [kinds.<id>]", ""});
    }
    if (kinds != nullptr) all.insert(all.end(), kinds->items.begin(), kinds->items.end());
  }
  return all;
}

}  // namespace dampward::files::detail
