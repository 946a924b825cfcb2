#include "adapters/files/json_documents.h"
#include "adapters/files/json_values.h"
#include "core/referee/judge.h"

namespace dampward::files {

std::string verify_json(const std::string& problem, const std::string& answer,
                        const std::vector<referee::Violation>& violations) {
  Json list = Json::array();
  for (const referee::Violation& each : violations)
    list.push_back({{"rule", each.rule}, {"ids", each.ids}, {"sentence", each.sentence}});
  return document({{"verb", "verify"},
                   {"problem", problem},
                   {"answer", answer},
                   {"violations", list},
                   {"faults", Json::array()}});
}

}  // namespace dampward::files
