#include "workbench/detail/cautions.h"

namespace dampward::workbench {

std::vector<Caution> cautions_at(const std::set<std::string>& steps,
                                 const std::vector<hazards::Hazard>& table) {
  std::vector<Caution> cautions;
  for (const hazards::Hazard& hazard : table) {
    if (!steps.contains(hazard.step)) continue;
    cautions.push_back({hazard.id, hazard.step, hazard.name + ": " + hazard.harm, hazard.guard,
                        hazard.stop_sign, hazard.effect, hazard.source, hazard.defer});
  }
  return cautions;
}

}  // namespace dampward::workbench
