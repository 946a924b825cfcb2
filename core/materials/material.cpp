#include "core/materials/material.h"

#include <algorithm>

namespace dampward::materials {

bool counts_as(const Material& material, std::string_view id) {
  return material.id.text == id ||
         std::any_of(material.stands_for.begin(), material.stands_for.end(),
                     [id](const MaterialId& plainer) { return plainer.text == id; });
}

}  // namespace dampward::materials
