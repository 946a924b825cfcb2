#pragma once

#include <string>
#include <vector>

#include "adapters/files/table_reader.h"
#include "core/equipment/kind.h"
#include "core/materials/table.h"

namespace dampward::files::detail {

// How the figures of one table are known: its keys `marks`, `source` and `settle`.
class Pedigree {
 public:
  explicit Pedigree(TableReader& table);

  // The figure under this key of `marks`. Without a mark it is the shop's own: one value counts as measured, a range as an
  // estimate.
  template <class T>
  Figure<T> figure(const Range<T>& range, std::string_view key) const {
    const auto mark = mark_of(key);
    if (!mark)
      return {range, range.exact() ? Mark::measured : Mark::estimate, "the shop's own figure", settle_};
    return {range, *mark, source_, settle_};
  }
  std::optional<Mark> mark_of(std::string_view key) const;
  const std::string& source() const { return source_; }

 private:
  std::vector<std::pair<std::string, Mark>> marks_;
  std::string source_, settle_;
};

// The words a part may use for what lies outside its own table.
struct PartVocabulary {
  const materials::MaterialTable& materials;
  std::vector<std::string> material_ids;
  std::vector<std::string> hazard_ids;
};

// [kinds.<kind>.parts.<part>]. Keys that are no part keys, missing or contradictory ones are faults.
equipment::Part read_part(const TomlNode& node, const std::string& kind, const PartVocabulary& words,
                          Proof& proof);

}  // namespace dampward::files::detail
