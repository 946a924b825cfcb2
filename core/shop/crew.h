#pragma once

#include <string_view>

#include "core/shop/shop.h"

namespace dampward::shop {

// Whether the person comes in at all. Somebody ill or away stands in the crew with no shift, and counts for nothing.
bool comes_in(const Person& person);

// Whether anybody who comes in has the skill.
bool crew_can(const Shop& shop, std::string_view skill);

}  // namespace dampward::shop
