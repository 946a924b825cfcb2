#include "adapters/files/detail/json_mixing.h"

#include "adapters/files/detail/json_answers.h"
#include "adapters/files/words.h"

namespace dampward::files::detail {

Json mixing_json(const std::vector<workbench::MixedPot>& pots, const WallClock& clock) {
  Json list = Json::array();
  for (const workbench::MixedPot& pot : pots) {
    Json lots = Json::array();
    for (const workbench::PotShare& share : pot.lots) {
      lots.push_back(
          {{"item", share.item}, {"lot", share.lot.text}, {"take_l", rounded(share.amount.in(litre), 3)}});
    }
    list.push_back({{"pot", pot.id},
                    {"method", std::string(word_of(method_words, pot.method))},
                    {"units", texts(pot.units)},
                    {"mix_at", iso_text(pot.mix, clock)},
                    {"use_by_at", iso_text(pot.use_by, clock)},
                    {"use_by_because", pot.use_by_because},
                    {"thinner_parts", rounded(pot.thinner_parts, 3)},
                    {"ready_l", range_json(pot.ready, litre, 3)},
                    {"lacquer_l", range_json(pot.lacquer, litre, 3)},
                    {"thinner_l", range_json(pot.thinner, litre, 3)},
                    {"non_volatile_pct", percent_json(pot.non_volatile)},
                    {"lots", lots},
                    {"missing_l", rounded(pot.missing.in(litre), 3)},
                    {"outlasts_pot_life", pot.outlasted}});
  }
  return list;
}

}  // namespace dampward::files::detail
