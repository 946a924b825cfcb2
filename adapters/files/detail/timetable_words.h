#pragma once

#include "adapters/files/json_values.h"
#include "core/line/answer.h"

namespace dampward::files::detail {

// One late unit, and one thing left out, as every document tells them.
Json late_json(const line::Lateness& late);
Json unplaced_json(const line::Unplaced& unplaced);

}  // namespace dampward::files::detail
