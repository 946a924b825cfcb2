#pragma once

#include <string>
#include <vector>

#include "apps/cli/unit_text.h"
#include "workbench/leaflet.h"

namespace dampward::cli {

// The leaflet as one page of 80 columns, to be read by somebody who never did this before.
std::vector<std::string> leaflet_page(const workbench::Leaflet& page, const UnitText& units);

}  // namespace dampward::cli
