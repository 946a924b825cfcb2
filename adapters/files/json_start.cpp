#include "adapters/files/json_documents.h"
#include "adapters/files/json_values.h"

namespace dampward::files {

std::string start_json(const std::string& folder, const std::vector<std::string>& files) {
  return document({{"verb", "start"}, {"folder", folder}, {"files", files}, {"faults", Json::array()}});
}

}  // namespace dampward::files
