#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/files/proof.h"
#include "adapters/files/toml_document.h"

namespace dampward::files::detail {

// Every table of every *.toml file at the top of a shop folder, whichever file a person put it in.
struct ShopDocument {
  std::vector<TomlNode> documents;
  bool complete = true;  // false: a file could not be read, so what seems missing may stand there

  // A table that stands there once ([site]); null when there is none. Its second copy is a fault.
  const TomlNode* single(std::string_view name, Proof& proof) const;
  // The entries of a table of tables ([ovens.cabinet], …) over all files. An id that stands twice is a fault.
  std::vector<const TomlNode*> entries(std::string_view name, Proof& proof) const;
};

// The tables a shop folder may hold, and which of them stand there once ([site]) rather than once for each name ([ovens.…]).
const std::vector<std::string>& shop_table_names();
bool table_stands_once(std::string_view name);

// Faults: no such folder, no TOML file in it, files that cannot be read, tables nobody knows.
ShopDocument read_shop_document(const std::filesystem::path& folder, Proof& proof);

}  // namespace dampward::files::detail
