#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/room_air/separation.h"
#include "workbench/detail/ladder_moves.h"

namespace dampward::workbench::moves {
namespace {

using shop::Cost;

std::string part_name(const Refusal& refusal, const Workshop& workshop) {
  const equipment::Kind* kind = workshop.kinds.find(refusal.kind);
  if (kind == nullptr) return refusal.what;
  const auto part = std::find_if(kind->parts.begin(), kind->parts.end(),
                                 [&](const auto& candidate) { return candidate.id.text == refusal.what; });
  return part == kind->parts.end() ? refusal.what : part->name;
}

}  // namespace

void measure_part(const Refusal& refusal, const Workshop& workshop, Candidates& all) {
  const std::string part = format("kinds.{}.parts.{}", refusal.kind.text, refusal.what);
  for (const int limit : {45, 55, 65, 80, 100}) {
    all.push_back(
        {"measuring",
         {{part + ".limit", format("\"{} °C\"", limit)}, {part + ".limit_source", "\"to be measured\""}},
         format("measure \"{}\": it may be treated if that stands {} °C or more",
                part_name(refusal, workshop), limit),
         Cost::measuring});
  }
}

void more_air(const shop::SprayPlace& place, Candidates& all) {
  const Volume size = place.length * place.width * place.height;
  const bool by_changes = !place.fan && place.air_changes_per_hour.has_value();
  const VolumeFlow said =
      by_changes ? *place.air_changes_per_hour * (size / hour) : place.fan.value_or(VolumeFlow{});
  const double here = place.opening_to_outside ? said.in(cubic_metre_per_minute) : 0;
  std::vector<double> flows = {20, 40, 60, 90, 150};
  if (here > 0) {
    flows.clear();
    for (const double more : {1.25, 1.5, 2.0, 3.0, 5.0, 10.0}) flows.push_back(std::ceil(here * more));
  }
  for (const double flow : flows) {
    const Piece air = by_changes ? Piece{"spray.air_changes", fixed(flow * 60 / size.in(cubic_metre), 1)}
                                 : Piece{"spray.fan", format("\"{} m3/min\"", fixed(flow, 0))};
    Candidate candidate{
        "fan",
        {air},
        format("{} m³/min of measured fresh air instead of {}", fixed(flow, 0), fixed(here, 0)),
        Cost::fan,
        flow - here};
    if (!place.opening_to_outside) {
      candidate.pieces.push_back({"spray.opening_to_outside", "true"});
      candidate.words += ", with an opening to the outside";
    }
    all.push_back(std::move(candidate));
  }
}

void drier_air(const shop::SprayPlace& place, Candidates& all) {
  for (const int humidity : {60, 50, 40}) {
    if (place.dried_to && place.dried_to->percent() <= humidity) continue;
    all.push_back({"dry air",
                   {{"spray.dried_to", format("\"{} %\"", humidity)}},
                   format("air of the {} dried to {} % or less while lacquer goes on", place.name, humidity),
                   Cost::dry_air,
                   1 + (60 - humidity) / 20.0});
  }
}

void smaller_nozzles(const shop::Shop& shop, Candidates& all) {
  for (const shop::Gun& gun : shop.guns) {
    if (gun.kind == shop::GunKind::brush) continue;
    const double rate = gun.fluid_rate.in(litre / minute);
    for (const double share : {0.75, 0.5, 0.25}) {
      all.push_back({"nozzle " + gun.id.text,
                     {{format("guns.{}.rate", gun.id.text), format("\"{} L/min\"", fixed(rate * share, 3))}},
                     format("a nozzle for the {} that lets {} L/min through instead of {}", gun.name,
                            fixed(rate * share, 3), fixed(rate, 3)),
                     Cost::nozzle});
    }
  }
}

void thin_less(const Workshop& workshop, Candidates& all) {
  const materials::Lacquer* lacquer = workshop.lacquers.find(workshop.shop.lacquer);
  if (lacquer == nullptr || !(lacquer->thinner_parts_for_spray > 0)) return;
  for (const double share : {0.5, 0.0}) {
    const double parts = lacquer->thinner_parts_for_spray * share;
    all.push_back({"thinning",
                   {{format("lacquers.{}.thin_spray", lacquer->id.text), fixed(parts, 2)}},
                   format("{} parts of thinner instead of {}, if the cup still allows it", fixed(parts, 2),
                          fixed(lacquer->thinner_parts_for_spray, 2)),
                   Cost::thinning});
  }
}

void other_lacquers(const Workshop& workshop, Candidates& all) {
  constexpr std::size_t most = 4;
  std::size_t taken = 0;
  for (const materials::Lacquer& lacquer : workshop.lacquers.rows()) {
    if (lacquer.id == workshop.shop.lacquer || lacquer.isocyanate || lacquer.composition.empty()) continue;
    if (taken++ == most) break;
    all.push_back(
        {"lacquer", {{"site.lacquer", quoted(lacquer.id.text)}}, "coat with " + lacquer.name, Cost::lacquer});
  }
}

void add_cleaners(const Workshop& workshop, const std::string& soil, Candidates& all) {
  constexpr std::size_t most = 3;
  std::size_t taken = 0;
  for (const materials::Liquid& liquid : workshop.thinners.rows()) {
    if (std::find(liquid.good_for.begin(), liquid.good_for.end(), soil) == liquid.good_for.end()) continue;
    if (taken++ == most) break;
    all.push_back({"cleaner " + liquid.id,
                   {{"cleaners.more_" + liquid.id, format("{{ like = {} }}", quoted(liquid.id))}},
                   format("{} against {}", liquid.name, soil),
                   Cost::cleaner});
  }
}

void move_heat(const shop::SprayPlace& place, Candidates& all) {
  Candidate candidate{"moving", {}, "", Cost::moving, 0};
  std::vector<std::string> names;
  for (std::size_t i = 0; i < place.heat_sources.size(); ++i) {
    const shop::HeatSource& source = place.heat_sources[i];
    if (room_air::may_be_on_together(place.room, source.room, source.distance)) continue;
    const std::string path = format("spray.heat.{}", i + 1);
    candidate.pieces.push_back({path + ".distance", "\"7 m\""});
    if (source.room.empty() || source.room == place.room)
      candidate.pieces.push_back({path + ".room", "\"another room\""});
    names.push_back(source.name);
  }
  if (names.empty()) return;
  candidate.amount = static_cast<double>(names.size());
  candidate.words = format("{} in another room, 7 m from the gun or more", listed(names));
  all.push_back(std::move(candidate));
}

}  // namespace dampward::workbench::moves
