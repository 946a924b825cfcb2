#include <algorithm>
#include <map>

#include "core/base/text.h"
#include "core/referee/detail/rules.h"
#include "core/referee/detail/shares.h"

namespace dampward::referee {
namespace {

bool may_serve(const Station& station, const Operation& operation) {
  if (!operation.stations.empty())
    return std::count(operation.stations.begin(), operation.stations.end(), station.id) > 0;
  return std::count(station.serves.begin(), station.serves.end(), *operation.station_skill) > 0;
}

// The place listed is the oven the operation goes into, told once more.
bool lists_its_oven(const Case& open, const Work& work) {
  if (work.what->needs_station() || !work.at->station) return false;
  const Load* load = open.load_of(work.what->id);
  const OvenStay* stay = load ? open.stay(load->id) : nullptr;
  return load && (stay ? stay->oven == *work.at->station : open.oven(*work.at->station) != nullptr);
}

void judge_station(const Case& open, const Work& work, Violations& found) {
  const auto& listed = work.at->station;
  std::string what;
  if (!work.what->needs_station()) {
    if (!listed || lists_its_oven(open, work)) return;
    what = format("lists the place \"{}\", but needs none there", *listed);
  } else if (!listed) {
    what = "has no place, but needs one";
  } else {
    const Station* station = open.station(*listed);
    if (!station || may_serve(*station, *work.what)) return;
    what = format("is at \"{}\", which does not serve it", *listed);
  }
  std::vector<std::string> ids = {work.what->id};
  if (listed) ids.push_back(*listed);
  found.push_back({"station", std::move(ids), format("\"{}\" {}.", work.what->id, what)});
}

void judge_crowds(const Case& open, Violations& found) {
  std::map<std::string_view, std::vector<Share>> filled;
  for (const Work& work : open.works()) {
    if (!work.at->station || !open.station(*work.at->station) || lists_its_oven(open, work)) continue;
    filled[*work.at->station].push_back({work.when(), 1, work.fixed, work.what->id});
  }
  for (const auto& [id, shares] : filled) {
    const Station& station = *open.station(id);
    const Minute always = std::min_element(shares.begin(), shares.end(), [](const Share& a, const Share& b) {
                            return a.when.from < b.when.from;
                          })->when.from;
    for (const Excess& excess : excesses(shares, {{always, station.places}})) {
      std::vector<std::string> ids = {station.id};
      ids.insert(ids.end(), excess.who.begin(), excess.who.end());
      found.push_back({"crowded", ids,
                       format("Station \"{}\" has {} at once from minute {} to {} ({}), but places for {}.",
                              id, excess.taken, excess.when.from, excess.when.to,
                              listed(std::vector<std::string>(ids.begin() + 1, ids.end())), excess.there)});
    }
  }
}

}  // namespace

void judge_stations(const Case& open, Violations& found) {
  for (const Work& work : open.works()) {
    if (!work.fixed) judge_station(open, work, found);
  }
  judge_crowds(open, found);
}

}  // namespace dampward::referee
