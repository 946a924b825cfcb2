#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/files/detail/number_lines.h"

namespace dampward::files::detail {

// A value of a MiniZinc data file as far as whole numbers go: one, a list [1, 2], a table [| 1, 2 | 3, 4 |], or a list of sets
// [{1, 2}, 3..5].
struct DznValue {
  enum class Kind { number, list, table, sets } kind = Kind::number;
  int line = 0;                        // where its name stands
  std::vector<std::vector<int>> rows;  // number, list: one row; sets: a row each
};

using DznValues = std::map<std::string, DznValue, std::less<>>;

// The values of those names; others are passed over. False: the text is not of this form, and the fault says where.
bool read_dzn(std::string_view text, const std::vector<std::string_view>& names, DznValues& values,
              ReadFault& fault);

}  // namespace dampward::files::detail
