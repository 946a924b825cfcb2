#include "core/route/solvent_conflict.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/materials/composition.h"

namespace dampward::route {
namespace {

void add_once(std::vector<std::string>& list, const std::string& word) {
  if (std::find(list.begin(), list.end(), word) == list.end()) list.push_back(word);
}

// Families of a recipe; a recipe nobody knows, or a solvent the table lacks, leaves the contact unknown.
void add_recipe(SolventContact& contact, std::span<const materials::SolventPart> recipe,
                std::span<const materials::Solvent> solvents) {
  if (recipe.empty()) contact.known = false;
  for (const materials::SolventPart& part : recipe) {
    const materials::Solvent* solvent = materials::find_solvent(solvents, part.solvent);
    if (solvent == nullptr || solvent->family.empty()) {
      contact.known = false;
    } else {
      add_once(contact.families, solvent->family);
    }
  }
}

const materials::Material* find(std::span<const materials::Material> materials, const MaterialId& id) {
  const auto it = std::find_if(materials.begin(), materials.end(),
                               [&](const materials::Material& material) { return material.id == id; });
  return it == materials.end() ? nullptr : &*it;
}

// Metals and glass take no harm from any organic solvent; their rows list acids, alkalis, ammonia or nothing.
bool organic(const std::string& family) {
  return family != "water" && family != "strong acid" && family != "strong alkali" && family != "ammonia";
}

SolventConflict conflict_of(const equipment::Part& part, const MaterialId& material,
                            const SolventContact& contact, const Attack& attack) {
  SolventConflict conflict{part.id, part.name, material, listed(attack.agents), "", attack.named};
  if (attack.named) {
    conflict.why =
        format("{} is said to attack the material of {}: mask it or take it out", contact.name, part.name);
  } else {
    conflict.why = format("{} in {} may soften {} while wet: try a drop on a stray piece first",
                          conflict.agent, contact.name, part.name);
  }
  return conflict;
}

}  // namespace

SolventContact contact_of(const materials::Lacquer& lacquer, const materials::Liquid* thinner,
                          std::span<const materials::Solvent> solvents) {
  SolventContact contact{lacquer.name, {}, lacquer.attacks, true};
  add_recipe(contact, lacquer.composition, solvents);
  if (thinner != nullptr) {
    add_recipe(contact, thinner->composition, solvents);
  } else if (!lacquer.thinner.empty()) {
    contact.known = false;
  }
  return contact;
}

SolventContact contact_of(const materials::Liquid& cleaner, std::span<const materials::Solvent> solvents) {
  SolventContact contact{cleaner.name, {}, cleaner.attacks, true};
  add_recipe(contact, cleaner.composition, solvents);
  return contact;
}

Attack attack_on(const materials::Material& material, const SolventContact& contact) {
  Attack attack;
  for (const std::string& name : contact.attacks) {
    if (materials::counts_as(material, name)) add_once(attack.agents, name);
    const auto& by = material.attacked_by;
    if (std::find(by.begin(), by.end(), name) != by.end()) add_once(attack.agents, name);
  }
  attack.named = !attack.agents.empty();
  if (attack.named) return attack;
  for (const std::string& family : material.attacked_by) {
    const auto& in = contact.families;
    if (std::find(in.begin(), in.end(), family) != in.end()) {
      attack.agents.push_back(family);
    } else if (!contact.known && organic(family)) {
      attack.agents.push_back(family + " (its recipe is not known)");
    }
  }
  return attack;
}

std::vector<SolventConflict> solvent_conflicts(const equipment::Kind& kind,
                                               std::span<const materials::Material> materials,
                                               const SolventContact& contact) {
  std::vector<SolventConflict> conflicts;
  for (const equipment::Part& part : kind.parts) {
    if (part.treatment != equipment::Treatment::spray && part.treatment != equipment::Treatment::brush)
      continue;
    std::optional<SolventConflict> worst;
    for (const MaterialId& id : part.materials) {
      const materials::Material* material = find(materials, id);
      const Attack attack = material ? attack_on(*material, contact)
                                     : Attack{false, {format("any solvent (no row for {})", id.text)}};
      if (attack.agents.empty() || (worst && worst->named >= attack.named)) continue;
      worst = conflict_of(part, id, contact, attack);
    }
    if (part.materials.empty())
      worst = conflict_of(part, {}, contact, {false, {"any solvent (nobody knows what it is)"}});
    if (worst) conflicts.push_back(*worst);
  }
  return conflicts;
}

}  // namespace dampward::route
