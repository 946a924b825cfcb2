#include "workbench/leaflet_sheet.h"

#include <algorithm>

#include "core/base/promise.h"

namespace dampward::workbench {
namespace {

papers::LeafletSheet::Heat heat_of(HomeHeat heat) {
  switch (heat) {
    case HomeHeat::lamp_box:
      return papers::LeafletSheet::Heat::lamp;
    case HomeHeat::sun_box:
      return papers::LeafletSheet::Heat::sun;
    case HomeHeat::dry_box:
      break;
  }
  return papers::LeafletSheet::Heat::none;
}

void add_once(std::vector<std::string>& all, const std::string& words) {
  if (std::find(all.begin(), all.end(), words) == all.end()) all.push_back(words);
}

// Each part by name.
std::vector<std::string> parts_of(const std::vector<route::ListedPart>& list) {
  std::vector<std::string> names;
  for (const route::ListedPart& part : list) add_once(names, part.name);
  return names;
}

// What is covered, tightened or touched up, without the parts it is on: there is one set, and its owner looks for them all over.
std::vector<std::string> places_of(const std::vector<route::ListedPart>& list) {
  std::vector<std::string> places;
  for (const route::ListedPart& part : list)
    add_once(places, part.what.empty() || part.what == "the whole part" ? part.name : part.what);
  return places;
}

}  // namespace

papers::LeafletSheet leaflet_sheet(const Leaflet& leaflet) {
  DAMPWARD_PROMISE(!leaflet.refused, "what is refused has no sheet");
  const HomeDrying& drying = leaflet.drying;
  const HomeCoat& coat = leaflet.coat;
  papers::LeafletSheet sheet;
  sheet.kind = leaflet.kind;
  sheet.heat = heat_of(leaflet.heat);
  sheet.length = drying.box.length;
  sheet.width = drying.box.width;
  sheet.height = drying.box.height;
  sheet.lamp = drying.heat;
  sheet.black_lid = drying.black_lid.value_or(Area{});
  sheet.reads_from = drying.reading_low;
  sheet.reads_to = drying.reading_high;
  sheet.never_above = drying.never_above;
  sheet.weakest = drying.weakest;

  sheet.safe = drying.safe;
  sheet.sunny_days = drying.sunny_days;
  sheet.desiccant = drying.desiccant;
  sheet.damp_inside = !drying.stays_damp.empty();
  sheet.take_out = parts_of(leaflet.lists.removed);
  sheet.cover = places_of(leaflet.lists.mask);
  sheet.tighten = places_of(leaflet.lists.tighten);
  sheet.touch_up = places_of(leaflet.lists.touch_up);

  sheet.lacquer = coat.lacquer;
  sheet.needed = coat.needed;
  sheet.thinner = coat.thinner;
  sheet.coats = coat.coats;
  sheet.opens = coat.opens;
  sheet.closes = coat.closes;
  sheet.flash = coat.flash;
  sheet.sweats = coat.closes_by != coating::Closes::damp_back;
  sheet.touch_dry = coat.touch_dry;
  sheet.before_closing = coat.before_closing;
  sheet.before_use = coat.before_use;
  sheet.fungicide = leaflet.fungicide;
  sheet.room = leaflet.spray.room;

  sheet.share_of_limit = leaflet.spray.share_of_limit;
  sheet.times_limit = leaflet.spray.times_limit;
  for (const HazardId& hazard : leaflet.of_this_kind) sheet.hazards.push_back(hazard.text);
  sheet.air = leaflet.air;
  sheet.humidity = leaflet.humidity;
  return sheet;
}

}  // namespace dampward::workbench
