#pragma once

#include <optional>

#include "core/line/answer.h"
#include "core/line/detail/model.h"

namespace dampward::line::detail {

// Why the operation has no place in this shop even if nothing else were to be done; nothing where it would have one.
std::optional<Unplaced> reason_in_itself(const Model& model, int op);

}  // namespace dampward::line::detail
