#include "workbench/detail/home_drying.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/base/text.h"
#include "core/drying/no_heat.h"

namespace dampward::workbench {
namespace {

// A hand's breadth of air about the set on every side.
constexpr Length around = 80 * millimetre;
// Silica gel that has a tenth of its mass in water still keeps a box under 30 %: an estimate on the safe side.
constexpr double water_in_gel = 0.10;
constexpr Mass least_gel = 0.5 * kilogram;
std::string degrees(Temperature t) {
  return fixed(std::floor(t.celsius()), 0) + " °C";
}

BoxSize box_of(const HomeSet& set) {
  if (set.question.box) return *set.question.box;
  const equipment::Kind& kind = set.kind;
  return {kind.length.value.high + 2 * around, kind.width.value.high + 2 * around,
          kind.height.value.high + 2 * around};
}

std::optional<Barrier> no_room(const BoxSize& box, const equipment::Kind& kind) {
  std::array<Length, 3> inside = {box.length, box.width, box.height},
                        set = {kind.length.value.high, kind.width.value.high, kind.height.value.high};
  std::sort(inside.begin(), inside.end());
  std::sort(set.begin(), set.end());
  for (std::size_t i = 0; i < set.size(); ++i) {
    if (set[i] + around <= inside[i]) continue;
    const auto cm = [](Length l) { return fixed(std::ceil(l.in(centimetre)), 0); };
    return Barrier{Rule::station, "",
                   format("The {} is up to {} x {} x {} cm and does not stand in that box with air about it.",
                          kind.name, cm(set[2]), cm(set[1]), cm(set[0])),
                   format("A box of {} x {} x {} cm inside or more.", cm(set[2] + 2 * around),
                          cm(set[1] + 2 * around), cm(set[0] + 2 * around))};
  }
  return std::nullopt;
}

// Lamp or sun, no stronger than the weakest part can stand with nobody watching. A barrier where none is.
std::optional<Barrier> heat_the_box(HomeDrying& drying, const HomeBox& box, const HomeSet& set) {
  const auto strongest = strongest_heat(box, drying.never_above, set.question.air);
  const std::string weak =
      format("{} may become no hotter than {}", drying.weakest, degrees(drying.never_above));
  const bool lamp = set.question.heat == HomeHeat::lamp_box;
  const auto usual = usual_lamp(strongest.value_or(Power{}));
  if (!strongest || (lamp && !usual && !set.question.lamp)) {
    return Barrier{
        Rule::room_above_limit, "",
        format("{}, and in air of {} any lamp may bring it there.", weak, degrees(set.question.air)),
        "Dry it without heat: --heat dry_box."};
  }
  drying.strongest = *strongest;
  if (!lamp) {
    const Area lid = drying.box.length * drying.box.width;
    const Area black = std::min(lid, (*strongest / sun_on(square_metre, sun_most)) * square_metre);
    drying.black_lid = black;
    drying.heat = sun_on(black, sun_most);
    return std::nullopt;
  }
  drying.heat = set.question.lamp.value_or(usual.value_or(Power{}));
  if (drying.heat <= *strongest) return std::nullopt;
  const HomeWarmth warmth = warmth_of(box, drying.heat, drying.heat, drying.heat, set.question.air);
  return Barrier{
      Rule::limit_unknown, "",
      format("A lamp of {} W may bring the set to {} with nobody watching, and {}.",
             fixed(drying.heat.in(watt), 0), fixed(std::ceil(warmth.hottest.celsius()), 0) + " °C", weak),
      format("A lamp of {} W or less in that box, or a larger box.",
             fixed(std::floor(strongest->in(watt)), 0))};
}

HomeWarmth warmth(const HomeDrying& drying, const HomeBox& box, const HomeSet& set) {
  const Temperature air = set.question.air;
  if (!drying.black_lid) return warmth_of(box, drying.heat, drying.heat, drying.heat, air);
  const Area black = *drying.black_lid;
  return warmth_of(box, sun_on(black, sun_least), sun_on(black, sun_usual), sun_on(black, sun_most), air);
}

void tell_what_stays(HomeDrying& drying, const drying::OvenPiece& piece) {
  std::vector<std::string> names;
  for (const drying::OvenPart& part : piece.parts) {
    if (part.target == equipment::DryTarget::deep && !part.asked) names.push_back(part.name);
  }
  if (!names.empty()) {
    drying.stays_damp.push_back(
        format("Damp stays inside {}: only their surface dries, and the readings decide.", listed(names)));
  }
}

}  // namespace

std::optional<Barrier> dry_at_home(HomeDrying& drying, HomeWarmth& now, const HomeSet& set) {
  const drying::Wall* wall = set.workshop.walls.find("bare_steel");
  DAMPWARD_PROMISE(wall != nullptr, "a box of bare steel is among the shipped walls");
  drying.box = box_of(set);
  if (auto small = no_room(drying.box, set.kind)) return small;
  const HomeBox box{drying.box, *wall};
  const drying::OvenPart* weakest = set.piece.weakest();
  DAMPWARD_PROMISE(weakest != nullptr, "a piece without refusals has a limit for every part");
  drying.never_above = weakest->limit->allowed();
  drying.weakest = weakest->name;
  if (drying.never_above < set.question.air + day_spread) {
    return Barrier{Rule::room_above_limit, weakest->id.text,
                   format("{} may become no hotter than {}, and the day may be.", weakest->name,
                          degrees(drying.never_above)),
                   "Wait for a cooler season, or let a workshop measure what it stands."};
  }
  if (set.question.heat != HomeHeat::dry_box) {
    if (auto barrier = heat_the_box(drying, box, set)) return barrier;
  }
  now = warmth(drying, box, set);
  drying.reading_low = now.reading_low;
  drying.reading_high = now.reading_high;
  moist_air::HumidAir cool = set.air();
  cool.temperature = cool.temperature - day_spread;
  const auto time_at = [&](Temperature warm) {
    drying::DryBox dry_box;
    dry_box.warm = warm;
    return drying::dry_without_heat(set.piece, cool, dry_box);
  };
  const drying::NoHeatPlan slow = time_at(now.coolest), usual = time_at(now.usual);
  drying.safe = slow.time;
  drying.usual = std::min(usual.time_nominal, slow.time);
  if (drying.black_lid) drying.sunny_days = static_cast<int>(std::ceil(drying.safe / sunny_hours));
  drying.desiccant = std::max(least_gel, slow.water / water_in_gel);
  tell_what_stays(drying, set.piece);
  for (const PartId& part : slow.unknown) {
    drying.stays_damp.push_back(part.text + ": nobody knows how fast it dries; weigh it before and after.");
  }
  return std::nullopt;
}

}  // namespace dampward::workbench
