#pragma once

#include "core/papers/pen.h"
#include "core/papers/safety_sheet.h"

namespace dampward::papers {

// Vapour in the room over its worst day under the walls of fire and people, from y on, over three or four tens: people's limit lies far
// below fire's. Gives where it ends. Promise: the sheet has a curve and an allowed share.
double vapour_curve(Pen& pen, double y, const SafetySheet& sheet, const Words& words);

}  // namespace dampward::papers
