#include "adapters/files/json_documents.h"
#include "adapters/files/json_values.h"
#include "workbench/selfcheck.h"

namespace dampward::files {

std::string selfcheck_json(const workbench::SelfCheck& check) {
  Json checks = Json::array();
  for (const auto& row : check.checks) {
    checks.push_back({{"id", row.id},
                      {"model", row.model},
                      {"quantity", row.quantity},
                      {"inputs", row.inputs},
                      {"unit", row.unit},
                      {"published", row.published},
                      {"computed", row.computed},
                      {"difference", row.difference},
                      {"tolerance", row.tolerance},
                      {"tolerance_reason", row.tolerance_reason},
                      {"within", row.within},
                      {"source", row.source},
                      {"status", row.read ? "read" : "memory"}});
  }
  return document({{"verb", "selfcheck"},
                   {"rows", check.rows},
                   {"from_memory", check.from_memory},
                   {"out_of_tolerance", check.out_of_tolerance},
                   {"checks", checks},
                   {"faults", Json::array()}});
}

}  // namespace dampward::files
