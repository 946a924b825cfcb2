#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "adapters/files/proof.h"
#include "adapters/files/toml_document.h"

namespace dampward::files::detail {

// What a kind is, once everything it takes over from others by `like` stands in its own table. Parts and figures are taken
// over key by key; a kind's own key rules. A figure given anew loses the pedigree of the one it replaces, a material given anew
// replaces all plausible ones, a limit given anew comes without the other's source and margin, a cut replaces the whole cut; `drop` names parts it has not.
class KindHeritage {
 public:
  void add(const TomlNode& kind) { kinds_.emplace(kind.key, &kind); }
  std::vector<std::string> ids() const;

  // Faults: an unknown `like`, a circle of them, a dropped part that is not there.
  std::optional<TomlNode> complete(const TomlNode& kind, Proof& proof) const;

 private:
  std::optional<TomlNode> complete(const TomlNode& kind, std::vector<std::string>& way, Proof& proof) const;
  std::map<std::string, const TomlNode*> kinds_;
};

}  // namespace dampward::files::detail
