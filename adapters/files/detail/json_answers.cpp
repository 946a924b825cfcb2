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

Json part_json(const workbench::PartInOven& part) {
  Json told = {{"unit", part.unit.text},
               {"part", part.part.text},
               {"name", part.name},
               {"peak_c", rounded(part.peak.celsius(), 1)},
               {"limit_c", rounded(part.limit.celsius(), 1)},
               {"margin_c", rounded((part.limit - part.peak).in(kelvin), 1)},
               {"limit_source", part.limit_source},
               {"target", part.target},
               {"asked", part.asked},
               {"dry", part.dry}};
  put_or_why(told, "residual_pct", part.residual ? Json(rounded(*part.residual * 100, 1)) : Json(nullptr),
             part.target == "surface" ? "it takes up next to no water" : part.note);
  told["note"] = part.note;
  return told;
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
