#pragma once

#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "workbench/selfcheck.h"

namespace dampward::files {

// Published values from one table: columns id, model, quantity, inputs, unit, published, tolerance,
// tolerance_kind (rel or abs), tolerance_reason, source, status (read or memory), note. The decimal sign is a
// point.
Result<std::vector<workbench::PublishedRow>> read_published(const std::string& file, std::string_view text);

// All tables of data/published that the program carries inside it, in the order of their names.
Result<std::vector<workbench::PublishedRow>> shipped_published();

}  // namespace dampward::files
