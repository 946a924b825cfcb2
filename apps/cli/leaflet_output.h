#pragma once

#include <vector>

#include "adapters/files/out_folder.h"
#include "apps/cli/printing.h"
#include "core/base/result.h"
#include "workbench/leaflet.h"

namespace dampward::cli {

struct LeafletOutput {
  std::vector<files::OutFile> files;
  files::OutStamp stamp;
};

// The leaflet as a file of one page; the same leaflet gives the same bytes. Problem: words too long for the page.
// Promise: it is not refused.
Result<LeafletOutput> leaflet_output(const workbench::Leaflet& leaflet, const Printing& printing);

}  // namespace dampward::cli
