#pragma once

#include <vector>

#include "adapters/files/out_folder.h"
#include "apps/cli/printing.h"
#include "core/base/result.h"
#include "workbench/charts.h"

namespace dampward::cli {

// The charts as files, one page each. The same charts give the same bytes. Problems: words too long for a page, of every chart at once.
Result<std::vector<files::OutFile>> charts_output(const workbench::WallCharts& charts,
                                                  const Printing& printing);

// Of which charts they are; the id is the same for the same pages.
files::OutStamp charts_stamp(const workbench::WallCharts& charts, const std::vector<files::OutFile>& files);

}  // namespace dampward::cli
