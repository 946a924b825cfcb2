#include "adapters/files/shipped.h"

#include "adapters/files/detail/shipped_tables.h"
#include "core/base/promise.h"

namespace dampward::files {
namespace {

template <class Row>
materials::Table<Row> table_of(const std::string& file, std::vector<Row> rows, Proof& proof) {
  std::vector<std::string> ids;
  for (const Row& row : rows) {
    if constexpr (std::is_same_v<decltype(row.id), std::string>) {
      ids.push_back(row.id);
    } else {
      ids.push_back(row.id.text);
    }
  }
  detail::check_unique(file, ids, proof);
  return materials::Table<Row>(std::move(rows));
}

}  // namespace

Shipped read_shipped(Proof& proof) {
  Shipped all;
  all.sources = detail::read_sources(proof);
  all.materials = table_of("materials/materials.csv", detail::read_materials(proof), proof);
  all.solvents = table_of("coatings/solvents.csv", detail::read_solvents(proof), proof);
  all.liquids = detail::read_liquids(all.solvents, proof);
  all.lacquers = table_of("coatings/lacquers.csv", detail::read_lacquers(all.solvents, proof), proof);
  all.hazards = detail::read_hazards(proof);
  all.walls = table_of("ovens/walls.csv", detail::read_walls(proof), proof);
  all.archetypes = detail::read_archetypes(proof);
  return all;
}

const Shipped& shipped() {
  static const Shipped all = [] {
    Proof proof;
    Shipped read = read_shipped(proof);
    DAMPWARD_PROMISE(proof.faults.empty(), proof.faults.empty() ? "" : to_text(proof.faults.front()).c_str());
    return read;
  }();
  return all;
}

}  // namespace dampward::files
