#pragma once

#include "core/papers/leaflet.h"
#include "workbench/leaflet.h"

namespace dampward::workbench {

// The leaflet as it is printed; its foot is left empty. Promise: it is not refused.
papers::LeafletSheet leaflet_sheet(const Leaflet& leaflet);

}  // namespace dampward::workbench
