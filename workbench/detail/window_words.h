#pragma once

#include <string>
#include <vector>

#include "workbench/detail/unit_draft.h"

namespace dampward::workbench {

// Which rule sets each end of a window, in words.
std::string opened_words(const coating::WarmWindow& window);
std::string closed_words(const coating::WarmWindow& window);

// What of the water driven out is back in each part of the unit so long after leaving the oven.
std::vector<DampBackIn> damp_back_in(const UnitDraft& unit, Duration after_oven);

// How loads are held, and what takes damp back whatever the hurry.
std::vector<std::string> window_warnings(const Plan& plan);

}  // namespace dampward::workbench
