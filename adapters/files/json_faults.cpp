#include "adapters/files/json_documents.h"
#include "adapters/files/json_values.h"

namespace dampward::files {

std::string faults_json(const Problems& faults, const Problems& warnings) {
  return document({{"faults", problems_json(faults)}, {"warnings", problems_json(warnings)}});
}

}  // namespace dampward::files
