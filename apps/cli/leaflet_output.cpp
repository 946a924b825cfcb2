#include "apps/cli/leaflet_output.h"

#include "adapters/files/sha256.h"
#include "adapters/pdf/pdf.h"
#include "workbench/leaflet_sheet.h"

namespace dampward::cli {
namespace {

// A leaflet hangs on no day; the file must name some hour, always the same.
constexpr Instant no_day{};

}  // namespace

Result<LeafletOutput> leaflet_output(const workbench::Leaflet& leaflet, const Printing& printing) {
  const auto measure = pdf::measure();
  papers::LeafletSheet sheet = workbench::leaflet_sheet(leaflet);
  const auto bare = papers::leaflet(sheet, printing.paper, printing.words, *measure);
  if (!bare) return bare.problems();
  sheet.id = sheet_id({*bare});
  const std::string title = "leaflet for the " + leaflet.kind;
  const auto page = papers::leaflet(sheet, printing.paper, printing.words, *measure);
  if (!page) return page.problems();
  const std::string bytes = pdf::pdf_of({*page}, {title, no_day});
  return LeafletOutput{{{"leaflet.pdf", title, bytes}},
                       {"", leaflet.kind, files::sha256_hex(bytes).substr(0, 12)}};
}

}  // namespace dampward::cli
