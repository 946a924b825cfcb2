#include "adapters/files/detail/json_answers.h"
#include "adapters/files/json_documents.h"
#include "adapters/files/words.h"
#include "workbench/leaflet.h"

namespace dampward::files {
namespace {

using workbench::Leaflet;

double celsius(Temperature t) {
  return rounded(t.celsius(), 1);
}

Json box_json(const workbench::BoxSize& box) {
  return {{"length_m", rounded(box.length.in(metre), 3)},
          {"width_m", rounded(box.width.in(metre), 3)},
          {"height_m", rounded(box.height.in(metre), 3)}};
}

Json drying_json(const workbench::HomeDrying& drying) {
  Json json = {{"box", box_json(drying.box)},
               {"heat_w", rounded(std::floor(drying.heat.in(watt)), 0)},
               {"strongest_w", rounded(std::floor(drying.strongest.in(watt)), 0)}};
  detail::put_or_why(json, "black_lid_m2",
                     drying.black_lid ? Json(rounded(drying.black_lid->in(square_metre), 3)) : Json(nullptr),
                     "the sun is not asked");
  json.update({{"reading_low_c", celsius(drying.reading_low)},
               {"reading_high_c", celsius(drying.reading_high)},
               {"never_above_c", celsius(drying.never_above)},
               {"weakest_part", drying.weakest},
               {"usual_h", rounded(drying.usual.in(hour), 1)},
               {"safe_h", rounded(drying.safe.in(hour), 1)},
               {"sunny_days", drying.sunny_days},
               {"desiccant_kg", rounded(drying.desiccant.in(kilogram), 2)},
               {"stays_damp", drying.stays_damp}});
  return json;
}

Json coat_json(const workbench::HomeCoat& coat) {
  Json json = {{"method", "brush"},
               {"lacquer", coat.lacquer},
               {"coats", coat.coats},
               {"lacquer_l", range_json(coat.needed, litre, 4)},
               {"thinner_l", rounded(coat.thinner.in(litre), 4)},
               {"flash_min", rounded(coat.flash.in(minute), 0)},
               {"opens_after_min", rounded(coat.opens.in(minute), 1)},
               {"closes_after_min", rounded(coat.closes.in(minute), 1)},
               {"closed_by", coat.closed_by}};
  json["touch_dry_h"] = rounded(coat.touch_dry.in(hour), 1);
  json.update({{"before_closing_h", rounded(coat.before_closing.in(hour), 0)},
               {"before_use_h", rounded(coat.before_use.in(hour), 0)}});
  return json;
}

Json spray_json(const workbench::SprayedAtHome& spray) {
  return {{"room_m3", rounded(spray.room.in(cubic_metre), 0)},
          {"lacquer_sprayed_l", rounded(spray.lacquer_sprayed.in(litre), 3)},
          {"lacquer_brushed_l", rounded(spray.lacquer_brushed.in(litre), 3)},
          {"lfl_pct", rounded(std::ceil(spray.share_of_limit * 1000) / 10, 1)},
          {"times_limit", rounded(std::ceil(spray.times_limit), 0)}};
}

}  // namespace

std::string leaflet_json(const Leaflet& leaflet) {
  Json json = {{"verb", "leaflet"},
               {"kind", leaflet.kind},
               {"heat", std::string(word_of(home_heat_words, leaflet.heat))},
               {"air_c", celsius(leaflet.air)},
               {"humidity_pct", rounded(leaflet.humidity.percent(), 1)},
               {"refused", Json::array()},
               {"take_out", route::lines_of(leaflet.lists.removed)},
               {"mask", route::lines_of(leaflet.lists.mask)},
               {"tighten", route::lines_of(leaflet.lists.tighten)},
               {"touch_up", route::lines_of(leaflet.lists.touch_up)}};
  if (leaflet.refused) {
    json["refused"].push_back({{"rule", std::string(workbench::word(leaflet.refused->rule))},
                               {"reason", leaflet.refused->reason},
                               {"settle", leaflet.refused->settle}});
    json["reason"] = leaflet.refused->reason;
    json["drying"] = json["coat"] = json["spray"] = nullptr;
  } else {
    json["drying"] = drying_json(leaflet.drying);
    json["coat"] = coat_json(leaflet.coat);
    json["spray"] = spray_json(leaflet.spray);
  }
  json["warnings"] = leaflet.warnings;
  json["cautions"] = detail::cautions_json(leaflet.cautions);
  json["faults"] = Json::array();
  return document(json);
}

}  // namespace dampward::files
