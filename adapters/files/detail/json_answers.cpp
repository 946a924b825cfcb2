#include "adapters/files/detail/json_answers.h"

namespace dampward::files::detail {

Json cautions_json(const std::vector<workbench::Caution>& cautions) {
  Json list = Json::array();
  for (const workbench::Caution& caution : cautions) {
    list.push_back({{"id", caution.id.text},
                    {"step", caution.step},
                    {"text", caution.text},
                    {"guard", caution.guard},
                    {"stop_sign", caution.stop_sign},
                    {"effect", caution.effect},
                    {"source", caution.source},
                    {"defer", caution.defer}});
  }
  return list;
}

Json left_out_json(const std::vector<workbench::Refusal>& refused) {
  Json list = Json::array();
  for (const workbench::Refusal& refusal : refused) {
    list.push_back({{"unit", refusal.unit.text},
                    {"kind", refusal.kind.text},
                    {"reason", refusal.reason},
                    {"settle", refusal.settle}});
  }
  return list;
}

}  // namespace dampward::files::detail
