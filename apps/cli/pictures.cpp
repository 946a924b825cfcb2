#include "apps/cli/pictures.h"

#include <set>

#include "adapters/pdf/pdf.h"

namespace dampward::cli {

Problems undrawable(const workbench::Workshop& workshop) {
  Problems problems;
  std::set<std::string> told;
  for (const equipment::Kind& kind : workshop.kinds.rows()) {
    if (!kind.picture || !kind.picture->bytes || !told.insert(kind.picture->file).second) continue;
    if (pdf::can_draw(*kind.picture->bytes)) continue;
    problems.push_back({{kind.picture->file},
                        "a picture that cannot be drawn",
                        "a whole SVG drawing, PNG or JPEG photograph",
                        "Save it again, or take the picture of [kinds." + kind.id.text + "] out."});
  }
  return problems;
}

}  // namespace dampward::cli
