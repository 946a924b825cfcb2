#pragma once

#include <string_view>
#include <vector>

#include "adapters/files/json_values.h"
#include "core/quantity/range.h"
#include "workbench/plan.h"

namespace dampward::files::detail {

// The rows of the hazard table beside an answer.
Json cautions_json(const std::vector<workbench::Caution>& cautions);

// One part as a bake leaves it.
Json part_json(const workbench::PartInOven& part);

// What cannot be treated safely, and what would let it.
Json left_out_json(const std::vector<workbench::Refusal>& refused);

// {"low": …, "typical": …, "high": …} of a share, in per cent.
template <class Share>
Json percent_json(const Range<Share>& range) {
  return {{"low", rounded(range.low.percent(), 1)},
          {"typical", rounded(range.typical.percent(), 1)},
          {"high", rounded(range.high.percent(), 1)}};
}

// A value, or null beside `<key>_reason`.
inline void put_or_why(Json& json, const std::string& key, const Json& value, std::string_view why) {
  json[key] = value;
  if (value.is_null()) json[key + "_reason"] = std::string(why);
}

}  // namespace dampward::files::detail
