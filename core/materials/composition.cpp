#include "core/materials/composition.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::materials {
namespace {

Range<Density> of_the_table(std::span<const Solvent> solvents) {
  std::vector<Density> known;
  for (const Solvent& s : solvents) {
    if (s.density) known.push_back(*s.density);
  }
  DAMPWARD_PROMISE(!known.empty(), "the solvent table holds densities");
  const auto [low, high] = std::minmax_element(known.begin(), known.end());
  return {*low, 0.5 * (*low + *high), *high};
}

}  // namespace

Problems faults_of_composition(std::span<const SolventPart> parts, std::span<const Solvent> solvents,
                               const std::string& owner) {
  Problems problems;
  std::vector<std::string> known;
  for (const Solvent& s : solvents) known.push_back(s.id.text);
  double sum = 0;
  for (const SolventPart& part : parts) {
    sum += part.share.typical.percent();
    if (!find_solvent(solvents, part.solvent)) {
      problems.push_back({{},
                          owner + " holds \"" + part.solvent.text + "\".",
                          "A solvent of the table.",
                          did_you_mean(part.solvent.text, known)});
    }
    // Written so that a share that is no number fails too.
    if (!(part.share.ordered() && part.share.low.fraction() >= 0 && part.share.high.fraction() <= 1)) {
      problems.push_back({{},
                          owner + " holds an impossible share of " + part.solvent.text + ".",
                          "Low, typical and high rise and lie between 0 and 100 %.",
                          ""});
    }
  }
  if (!parts.empty() && !(std::abs(sum - 100) <= 1)) {
    problems.push_back({{},
                        format("The volatile part of {} adds to {} %.", owner, fixed(sum, 1)),
                        "100 % within 1.",
                        "Take the shares from the safety sheet, or leave the composition out: it then counts "
                        "as the worst."});
  }
  return problems;
}

const Solvent* find_solvent(std::span<const Solvent> solvents, const SolventId& id) {
  const auto found =
      std::find_if(solvents.begin(), solvents.end(), [&](const Solvent& s) { return s.id == id; });
  return found == solvents.end() ? nullptr : &*found;
}

Range<Density> volatile_density(std::span<const SolventPart> parts, std::span<const Solvent> solvents) {
  double mass = 0, volume = 0;
  for (const SolventPart& part : parts) {
    const Solvent* solvent = find_solvent(solvents, part.solvent);
    if (!solvent || !solvent->density) return of_the_table(solvents);
    mass += part.share.typical.fraction();
    volume += part.share.typical.fraction() / solvent->density->si();
  }
  if (!(mass > 0)) return of_the_table(solvents);
  return Density::si(mass / volume);
}

}  // namespace dampward::materials
