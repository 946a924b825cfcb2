#include "core/equipment/contradictions.h"

#include <cmath>
#include <set>
#include <string_view>

#include "core/base/format.h"

namespace dampward::equipment {
namespace {

using Sentences = std::vector<std::string>;

enum class Floor { above_zero, zero };

// One figure against order, being a number, and its floor. `unit` is what it is printed in.
void judge(double low, double typical, double high, Floor floor, std::string_view what, std::string_view unit,
           Sentences& found) {
  if (!std::isfinite(low) || !std::isfinite(typical) || !std::isfinite(high)) {
    found.push_back(format("{} is not a number.", what));
  } else if (!(low <= typical && typical <= high)) {
    found.push_back(format("{} runs {:g}..{:g}..{:g} {}: the figures must rise from low to high.", what, low,
                           typical, high, unit));
  } else if (floor == Floor::above_zero ? low <= 0 : low < 0) {
    found.push_back(format("{} is {:g} {}: it must {}.", what, low, unit,
                           floor == Floor::above_zero ? "be above zero" : "not be below zero"));
  }
}

template <class Q>
void judge(const Range<Q>& range, Q unit, std::string_view unit_name, Floor floor, std::string_view what,
           Sentences& found) {
  judge(range.low.in(unit), range.typical.in(unit), range.high.in(unit), floor, what, unit_name, found);
}

void judge_whole(const Kind& kind, Sentences& found) {
  judge(kind.length.value, millimetre, "mm", Floor::above_zero, "The length", found);
  judge(kind.width.value, millimetre, "mm", Floor::above_zero, "The width", found);
  judge(kind.height.value, millimetre, "mm", Floor::above_zero, "The height", found);
  judge(kind.mass.value, kilogram, "kg", Floor::above_zero, "The mass", found);
  judge(kind.spray_area_stripped.value, square_metre, "m²", Floor::zero, "The area to spray when stripped",
        found);
  judge(kind.spray_area_assembled.value, square_metre, "m²", Floor::zero, "The area to spray when assembled",
        found);
  const Range<double>& contacts = kind.contacts.value;
  judge(contacts.low, contacts.typical, contacts.high, Floor::zero, "The number of contacts", "", found);
  judge(kind.masking.value, minute, "min", Floor::zero, "The masking time", found);
  if (kind.spray_area_assembled.value.low > kind.spray_area_stripped.value.high) {
    found.push_back(
        "More area is to be sprayed on the assembled unit than on the stripped one: one of the two is "
        "wrong.");
  }
}

void judge_part(const Part& part, Sentences& found) {
  const std::string who = format("Part \"{}\"", part.id.text);
  const Range<double>& count = part.count.value;
  judge(count.low, count.typical, count.high, Floor::above_zero, who + ": the count", "", found);
  judge(part.mass_each.value, kilogram, "kg", Floor::above_zero, who + ": the mass of one", found);
  if (part.shape != Shape::none) {
    judge(part.thickness.value, millimetre, "mm", Floor::above_zero, who + ": the thickness", found);
  }
  if (part.shape == Shape::plate && part.open_faces != 1 && part.open_faces != 2) {
    found.push_back(format("{} is a plate with {} open faces: water leaves a plate through 1 or 2.", who,
                           part.open_faces));
  }
  const bool dries_within = part.dry_target == DryTarget::porous || part.dry_target == DryTarget::deep;
  if (dries_within && part.shape == Shape::none) {
    found.push_back(format(
        "{} is to be dried within, but has no shape: give shape, thickness and, for a plate, faces.", who));
  }
  if (part.limit) {
    const double margin = part.limit->margin ? part.limit->margin->in(kelvin) : 0;
    if (!std::isfinite(part.limit->limit.celsius()) || !std::isfinite(margin)) {
      found.push_back(format("{}: the heat limit is not a number.", who));
    } else if (margin < 0) {
      found.push_back(
          format("{}: the margin below its heat limit is {:g} K: it must not be below zero.", who, margin));
    } else if (part.limit->limit.celsius() - margin <= 0) {
      found.push_back(format("{}: a limit of {:g} °C less a margin of {:g} K leaves nothing above freezing.",
                             who, part.limit->limit.celsius(), margin));
    }
  }
  if (part.valve && part.carrying) {
    found.push_back(format("{} is called both a valve and a carrying case: it can be one of them.", who));
  }
}

void judge_names(const Kind& kind, Sentences& found) {
  if (kind.parts.empty()) found.push_back("It has no parts: give at least one.");
  std::set<PartId> seen;
  for (const Part& part : kind.parts) {
    if (!seen.insert(part.id).second)
      found.push_back(format("Part \"{}\" stands there twice.", part.id.text));
  }
  for (const PartId& id : kind.heavy_lump) {
    const Part* part = find_part(kind, id);
    if (part == nullptr) {
      found.push_back(format("The heavy lump names \"{}\", but there is no such part.", id.text));
    } else if (part->treatment == Treatment::remove) {
      found.push_back(
          format("The heavy lump names \"{}\", but that part comes out before the bake.", id.text));
    }
  }
}

}  // namespace

std::vector<std::string> contradictions(const Kind& kind) {
  Sentences found;
  judge_whole(kind, found);
  judge_names(kind, found);
  for (const Part& part : kind.parts) judge_part(part, found);
  for (const auto& [operation, labour] : kind.labour) {
    judge(labour.hands_on, minute, "min", Floor::zero, "Hands-on time", found);
    if (labour.people < 1) found.push_back("An operation is done by no one: it takes 1 person or more.");
  }
  return found;
}

}  // namespace dampward::equipment
