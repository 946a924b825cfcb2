#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/route/route.h"

namespace dampward::route::test {

// A small river station's workshop: one hand gun, people for everything, four cleaners, the varnish family's figures.
struct Bench {
  Bench();

  equipment::Part& part(const std::string& id);
  Means means() const;
  Subject subject() const { return {kind, findings, soils}; }
  Route route() const { return make_route(subject(), means(), facts); }

  equipment::Kind kind;  // a portable set that is usually sprayed stripped
  shop::Shop shop;
  materials::Lacquer lacquer;
  materials::Liquid thinner;
  std::vector<materials::Liquid> cleaners;
  std::vector<materials::Material> materials;
  std::vector<materials::Solvent> solvents;
  std::vector<hazards::Hazard> hazards;
  std::vector<std::string> findings, soils{"dust"};
  RouteFacts facts;
};

const Step* step(const Route& route, StepCode code, int turn = 0);
// Where the step stands; -1: not there.
int place(const Route& route, StepCode code, int turn = 0);
const StepGap* gap(const Route& route, GapKind kind, const std::string& from, const std::string& to);
bool lists(const std::vector<ListedPart>& list, const std::string& part);

}  // namespace dampward::route::test
