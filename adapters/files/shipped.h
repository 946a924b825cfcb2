#pragma once

#include <string>
#include <vector>

#include "adapters/files/proof.h"
#include "adapters/files/toml_document.h"
#include "core/drying/wall.h"
#include "core/hazards/hazard.h"
#include "core/materials/table.h"

namespace dampward::files {

// One row of data/sources.csv.
struct Source {
  std::string key, title, where_read;
  std::string status;  // how it is known: read, memory, computed or estimate
};

// A liquid of the shipped table with what it is for: cleaner, thinner, rinse, retarder or remover.
struct ShippedLiquid {
  materials::Liquid liquid;
  std::string use;
};

// The tables the program carries inside itself, made from the files of data/.
struct Shipped {
  std::vector<Source> sources;
  materials::MaterialTable materials;
  materials::SolventTable solvents;
  materials::LacquerTable lacquers;
  std::vector<ShippedLiquid> liquids;
  std::vector<hazards::Hazard> hazards;
  materials::Table<drying::Wall> walls;
  std::vector<TomlNode> archetypes;  // tables [kinds.<id>], in order of their files' names
};

// Reads every carried table; what is wrong with them goes to the proof (places below data/).
Shipped read_shipped(Proof& proof);

// The carried tables, read once. Promise: they hold no fault.
const Shipped& shipped();

}  // namespace dampward::files
