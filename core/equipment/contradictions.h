#pragma once

#include <string>
#include <vector>

#include "core/equipment/kind.h"

namespace dampward::equipment {

// What in a kind cannot be true, each as one sentence that names the part; empty when nothing is wrong. It looks for ranges out
// of order, figures that are not numbers, masses, counts and sizes that are not above zero, a body to dry without thickness or
// open face, two parts of one name, a heavy lump made of parts that are absent or taken out, a heat limit lower than its
// margin allows, and labour without people. It does not know materials: whether those exist is asked where their table is at hand.
std::vector<std::string> contradictions(const Kind& kind);

}  // namespace dampward::equipment
