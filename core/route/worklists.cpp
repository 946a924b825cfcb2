#include "core/route/worklists.h"

#include <algorithm>
#include <optional>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::route {
namespace {

using equipment::Part;
using equipment::Treatment;
using equipment::ValveChoice;

ListedPart line(const Part& part, std::string what, std::string why) {
  return {part.id, part.name, part.count.value.typical, std::move(what), std::move(why)};
}

// Why the material itself sends the part out; nothing where it may stay. Of several plausible ones any will do.
std::optional<std::string> out_by_material(const Part& part, std::span<const materials::Material> materials) {
  for (const MaterialId& id : part.materials) {
    for (const materials::Material& material : materials) {
      if (material.id == id && material.out_before_bake == materials::OutBeforeBake::yes) {
        return format("{} comes out before heat", material.name);
      }
    }
  }
  return std::nullopt;
}

bool is_cell(const Part& part) {
  return std::any_of(part.materials.begin(), part.materials.end(), [](const MaterialId& id) {
    return id.text.starts_with("cell_primary") || id.text.starts_with("cell_secondary") ||
           id.text.starts_with("cell_lithium");
  });
}

std::optional<std::string> why_out(const Part& part, std::span<const materials::Material> materials,
                                   ValveChoice valves) {
  if (is_cell(part)) return "cells come out before heat and solvent, always";
  if (part.treatment == Treatment::remove) {
    if (part.carrying) return "a case or strap is treated apart";
    return part.note.empty() ? std::string("treated apart, out of heat and solvent") : part.note;
  }
  if (part.valve && valves == ValveChoice::come_out)
    return "valves come out in this shop; their sockets are plugged";
  if (part.shield) return "a shield hides what is under it from air and lacquer";
  return out_by_material(part, materials);
}

std::string covered(const Part& part) {
  return part.mask.empty() ? std::string("the whole part") : listed(part.mask);
}

std::string why_masked(const Part& part) {
  if (part.valve) return "stays in as the mask of its own socket; its glass is wiped after";
  return part.note.empty() ? std::string("film on it would stop it from working") : part.note;
}

}  // namespace

bool Worklists::is_removed(const PartId& part) const {
  return std::any_of(removed.begin(), removed.end(), [&](const ListedPart& l) { return l.part == part; });
}

Worklists worklists(const equipment::Kind& kind, std::span<const materials::Material> materials,
                    ValveChoice valves, std::span<const SolventConflict> conflicts) {
  Worklists lists;
  for (const Part& part : kind.parts) {
    if (auto why = why_out(part, materials, valves)) {
      lists.removed.push_back(line(part, part.shield ? "take off, put back after" : "take out", *why));
      // A shield or a cover is coated by itself while it is off; everything else of the part is done apart.
      if (!part.shield) continue;
    }
    if (!part.tighten.empty()) {
      lists.tighten.push_back(line(part, part.tighten, "film under a fastening insulates"));
    }
    if (!part.loosen.empty())
      lists.loosen.push_back(line(part, part.loosen, "so that both sides are reached"));

    const auto attacked = std::find_if(
        conflicts.begin(), conflicts.end(),
        [&](const SolventConflict& conflict) { return conflict.part == part.id && conflict.named; });
    const bool coated = part.treatment == Treatment::spray || part.treatment == Treatment::brush;
    if (coated && attacked != conflicts.end()) {
      lists.mask.push_back(line(part, "the whole part", attacked->why));
      continue;
    }
    if (part.treatment == Treatment::mask || !part.mask.empty()) {
      lists.mask.push_back(line(part, covered(part), why_masked(part)));
    }
    if (part.treatment == Treatment::brush) lists.brush.push_back(line(part, "by brush", part.note));
    if (part.treatment == Treatment::bare && part.mask.empty())
      lists.bare.push_back(line(part, "stays bare", part.note));
    if (!part.touch_up.empty())
      lists.touch_up.push_back(line(part, part.touch_up, "its mask or its edge left it bare"));
  }
  return lists;
}

std::vector<std::string> lines_of(const std::vector<ListedPart>& list) {
  std::vector<std::string> lines;
  for (const ListedPart& part : list) {
    std::string line = part.name;
    if (part.count > 1) line += format(" ({})", fixed(part.count, 0));
    if (!part.what.empty()) line += ": " + part.what;
    lines.push_back(line);
  }
  return lines;
}

std::string valve_views(const equipment::Kind& kind, ValveChoice chosen) {
  double valves = 0;
  for (const Part& part : kind.parts) {
    if (part.valve) valves += part.count.value.typical;
  }
  if (valves < 0.5) return "";
  const bool stay = chosen == ValveChoice::stay_as_masks;
  return format(
      "{} valves {}: left in they mask their own sockets and save plugs, but hide the socket rims and meet "
      "the "
      "heat; taken out they are safe and the rims are reached, but each socket is plugged and each valve "
      "goes "
      "back to its own socket. This shop {}.",
      fixed(valves, 0), stay ? "stay in" : "come out",
      stay ? "leaves them in (valves = \"stay\")" : "takes them out (valves = \"come_out\")");
}

}  // namespace dampward::route
