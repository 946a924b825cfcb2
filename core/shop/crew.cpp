#include "core/shop/crew.h"

#include <algorithm>

namespace dampward::shop {

bool comes_in(const Person& person) {
  return std::any_of(person.shifts.days.begin(), person.shifts.days.end(),
                     [](const auto& day) { return !day.second.empty(); });
}

bool crew_can(const Shop& shop, std::string_view skill) {
  return std::any_of(shop.crew.begin(), shop.crew.end(), [&](const Person& person) {
    return comes_in(person) &&
           std::find(person.skills.begin(), person.skills.end(), skill) != person.skills.end();
  });
}

}  // namespace dampward::shop
