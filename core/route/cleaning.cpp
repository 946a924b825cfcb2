#include "core/route/cleaning.h"

#include <algorithm>
#include <optional>
#include <tuple>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/materials/composition.h"
#include "core/route/solvent_conflict.h"

namespace dampward::route {
namespace {

bool has(std::span<const std::string> words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// Flash point from which a cleaning liquid may be used in a spray area. Source: WAC 296-24-37013(5), as 29 CFR
// 1910.107(g)(5) (read).
constexpr Temperature spray_area_flash_point = Temperature::celsius(38);

// What a cleaner does to the parts still in the unit.
struct Cleaner {
  const materials::Liquid* liquid;
  std::vector<std::string> harms, may_soften;
  bool spray_area = false;
  bool watery = false;
  std::size_t serves = 0;  // of the unit's soils
};

bool only_water(const materials::Liquid& liquid) {
  return !liquid.composition.empty() &&
         std::all_of(liquid.composition.begin(), liquid.composition.end(),
                     [](const materials::SolventPart& part) { return part.solvent.text == "water"; });
}

// Largely water: it dries as water does, and a little of something else in it does not light.
bool mostly_water(const materials::Liquid& liquid) {
  return std::any_of(liquid.composition.begin(), liquid.composition.end(),
                     [](const materials::SolventPart& part) {
                       return part.solvent.text == "water" && part.share.low.fraction() >= 0.9;
                     });
}

bool chlorinated(const SolventContact& contact) {
  return has(contact.families, "chlorinated solvents");
}

bool is_out(std::span<const PartId> out, const PartId& part) {
  return std::find(out.begin(), out.end(), part) != out.end();
}

Cleaner look_at(const materials::Liquid& liquid, const SolventContact& contact, const equipment::Kind& kind,
                std::span<const PartId> out, std::span<const materials::Material> materials,
                std::span<const std::string> soils) {
  Cleaner cleaner{&liquid, {}, {}};
  for (const equipment::Part& part : kind.parts) {
    if (is_out(out, part.id)) continue;
    bool harmed = false, softened = false;
    for (const MaterialId& id : part.materials) {
      const auto material = std::find_if(materials.begin(), materials.end(),
                                         [&](const materials::Material& m) { return m.id == id; });
      if (material == materials.end()) continue;
      const Attack attack = attack_on(*material, contact);
      harmed = harmed || attack.named;
      softened = softened || !attack.agents.empty();
    }
    if (harmed) {
      cleaner.harms.push_back(part.name);
    } else if (softened) {
      cleaner.may_soften.push_back(part.name);
    }
  }
  cleaner.watery = mostly_water(liquid);
  cleaner.spray_area = liquid.flash_point ? *liquid.flash_point >= spray_area_flash_point
                                          : only_water(liquid) || cleaner.watery;
  for (const std::string& soil : soils) cleaner.serves += has(liquid.good_for, soil);
  return cleaner;
}

// Time until nothing of it is left. Estimates: slow spirits need warm air or one to two hours, fast ones 10 to 30 min of
// moving air (from memory of solvent data); water in damp air leaves slowly, and the oven takes what is left of it.
Range<Duration> standing_time(const Cleaner& cleaner) {
  if (cleaner.watery) return {20 * minute, 40 * minute, 90 * minute};
  if (cleaner.spray_area) return {60 * minute, 90 * minute, 120 * minute};
  return {10 * minute, 20 * minute, 30 * minute};
}

std::string place_of(const Cleaner& cleaner) {
  const auto& flash = cleaner.liquid->flash_point;
  if (cleaner.watery) return "it does not burn";
  if (!flash) return "its flash point is not known, so never in the spray area";
  const std::string degrees = fixed(flash->celsius(), 0);
  return cleaner.spray_area ? format("flash point {} °C, allowed in the spray area", degrees)
                            : format("flash point {} °C, so never in the spray area", degrees);
}

CleanerChoice chosen(const std::string& soil, const Cleaner& cleaner) {
  CleanerChoice choice;
  choice.soil = soil;
  choice.cleaner = cleaner.liquid->id;
  choice.name = cleaner.liquid->name;
  choice.spray_area = cleaner.spray_area;
  choice.keep_off = cleaner.harms;
  choice.try_first = cleaner.may_soften;
  choice.dries_in = standing_time(cleaner);
  choice.reason = format("{} takes off {}; {}", choice.name, soil, place_of(cleaner));
  if (!choice.keep_off.empty()) {
    choice.reason += format("; it attacks {}: cover them and wipe by hand", listed(choice.keep_off));
  }
  return choice;
}

CleanerChoice without_cleaner(const std::string& soil) {
  CleanerChoice choice;
  choice.soil = soil;
  choice.dry = soil == "dust";
  choice.found = choice.dry;
  choice.reason = choice.dry ? std::string("dust comes off dry, by soft brush and vacuum")
                             : format("no cleaner here takes off {}, and film on dirt peels", soil);
  return choice;
}

}  // namespace

std::vector<std::string> soils_of(std::span<const std::string> soils, std::span<const std::string> findings) {
  std::vector<std::string> all(soils.begin(), soils.end());
  const auto imply = [&](const char* finding, const char* soil) {
    if (has(findings, finding) && !has(all, soil)) all.emplace_back(soil);
  };
  imply("mould", "fungus");
  imply("corroded_contacts", "corrosion_products");
  if (all.empty()) all.emplace_back("dust");
  return all;
}

std::vector<CleanerChoice> choose_cleaners(std::span<const std::string> soils, const equipment::Kind& kind,
                                           std::span<const PartId> out,
                                           std::span<const materials::Liquid> cleaners,
                                           std::span<const materials::Material> materials,
                                           std::span<const materials::Solvent> solvents) {
  std::vector<Cleaner> fit;
  for (const materials::Liquid& liquid : cleaners) {
    const SolventContact contact = contact_of(liquid, solvents);
    const bool nothing_known = liquid.composition.empty() && liquid.attacks.empty() && !liquid.flash_point;
    if (chlorinated(contact) || nothing_known) continue;
    fit.push_back(look_at(liquid, contact, kind, out, materials, soils));
  }
  std::sort(fit.begin(), fit.end(), [](const Cleaner& a, const Cleaner& b) {
    const auto key = [](const Cleaner& c) {
      return std::tuple(c.harms.size(), !c.spray_area, -static_cast<int>(c.serves), c.may_soften.size(),
                        c.liquid->id);
    };
    return key(a) < key(b);
  });
  std::vector<CleanerChoice> choices;
  for (const std::string& soil : soils) {
    const auto best = std::find_if(
        fit.begin(), fit.end(), [&](const Cleaner& cleaner) { return has(cleaner.liquid->good_for, soil); });
    const bool dry_does = soil == "dust" && (best == fit.end() || !best->harms.empty());
    choices.push_back(best == fit.end() || dry_does ? without_cleaner(soil) : chosen(soil, *best));
  }
  return choices;
}

}  // namespace dampward::route
