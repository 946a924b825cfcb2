#pragma once

#include <string>

#include "core/papers/pen.h"

namespace dampward::papers {

// The sign that stands before the caution of this row of the hazard table.
Danger danger_of(const std::string& hazard);

}  // namespace dampward::papers
