#include "bench.h"

#include <algorithm>

namespace dampward::route::test {
namespace {

using equipment::Operation;
using equipment::Part;
using equipment::Treatment;

materials::Material material(const std::string& id, std::vector<std::string> attacked_by,
                             materials::OutBeforeBake out = materials::OutBeforeBake::no) {
  materials::Material m;
  m.id = MaterialId(id);
  m.name = id;
  m.attacked_by = std::move(attacked_by);
  m.out_before_bake = out;
  return m;
}

Part part_of(const std::string& id, const std::string& material, Treatment treatment) {
  Part part;
  part.id = PartId(id);
  part.name = id;
  part.materials = {MaterialId(material)};
  part.count.value = 1;
  part.treatment = treatment;
  return part;
}

materials::Solvent solvent(const std::string& id, const std::string& family) {
  materials::Solvent s;
  s.id = SolventId(id);
  s.family = family;
  return s;
}

materials::Liquid liquid(const std::string& id, std::vector<std::string> recipe, std::optional<double> flash,
                         std::vector<std::string> good_for, std::vector<std::string> attacks) {
  materials::Liquid l;
  l.id = l.name = id;
  for (const std::string& solvent : recipe) {
    l.composition.push_back(
        {SolventId(solvent), MassShare::fraction(1.0 / static_cast<double>(recipe.size()))});
  }
  if (flash) l.flash_point = Temperature::celsius(*flash);
  l.good_for = std::move(good_for);
  l.attacks = std::move(attacks);
  return l;
}

Range<Duration> minutes(double low, double typical, double high) {
  return {low * minute, typical * minute, high * minute};
}

}  // namespace

Bench::Bench() {
  kind.id = KindId("river_set");
  kind.name = "river set";
  kind.spray_area_stripped.value = Range<Area>(0.9 * square_metre);
  kind.spray_area_assembled.value = Range<Area>(0.2 * square_metre);
  kind.contacts.value = Range<double>(55);
  kind.masking.value = minutes(15, 46, 160);
  kind.usual_way = equipment::CoatingWay::spray_stripped;
  kind.way_reason = "The works are open on all sides once out.";
  kind.parts = {
      part_of("chassis", "steel", Treatment::spray),      part_of("cells", "cell_primary", Treatment::remove),
      part_of("cans", "steel", Treatment::spray),         part_of("valves", "glass", Treatment::mask),
      part_of("formers", "polystyrene", Treatment::bare), part_of("gang", "steel", Treatment::mask),
      part_of("strap", "webbing", Treatment::remove),     part_of("box", "steel", Treatment::brush),
      part_of("display", "lcd", Treatment::mask)};
  part("chassis").tighten = "earth lugs";
  part("chassis").touch_up = "rims of the valve sockets";
  part("cans").shield = true;
  part("valves").valve = true;
  part("valves").count.value = 5;
  part("gang").loosen = "two screws";
  part("strap").carrying = true;
  const auto give = [&](Operation operation, Range<Duration> time, int people) {
    kind.labour[operation] = {time, people, Mark::estimate, ""};
  };
  give(Operation::strip, minutes(17, 35, 70), 1);
  give(Operation::mask, minutes(15, 46, 160), 1);
  give(Operation::coat, minutes(7, 12, 24), 1);
  give(Operation::unmask, minutes(7, 15, 33), 1);
  give(Operation::reassemble, minutes(27, 45, 90), 2);

  shop::Gun gun;
  gun.kind = shop::GunKind::gravity_gun;
  shop.guns = {gun};
  shop::Person hand;
  hand.skills = {"make_safe", "test",  "strip",    "clean", "mask",    "oven",
                 "spray",     "brush", "touch_up", "mark",  "assemble"};
  hand.shifts.days[1] = {
      {std::chrono::hours(7), std::chrono::hours(15)}};  // who never comes in can do nothing
  shop.crew = {hand};

  lacquer.id = LacquerId("varnish");
  lacquer.name = "varnish";
  lacquer.composition = {{SolventId("xylene"), MassShare::fraction(1)}};
  lacquer.thinner = "spirits";
  lacquer.attacks = {"polystyrene"};
  // Trade figures: common practice, no source.
  lacquer.coats = {{materials::Method::hand_gun, 3, minutes(15, 17, 20)},
                   {materials::Method::power_gun, 2, minutes(15, 17, 20)},
                   {materials::Method::brush, 2, minutes(20, 40, 60)}};
  lacquer.touch_dry = Range<Duration>(1 * hour, 2 * hour, 4 * hour);
  lacquer.recoat_latest = Range<Duration>(48 * hour, 72 * hour, 96 * hour);

  solvents = {solvent("xylene", "aromatic hydrocarbons"), solvent("spirits", "aliphatic hydrocarbons"),
              solvent("isopropanol", "alcohols"), solvent("water", "water"),
              solvent("dcm", "chlorinated solvents")};
  thinner = liquid("spirits", {"spirits"}, 40, {}, {});
  cleaners = {liquid("alcohol", {"isopropanol"}, 12, {"fungus", "flux_rosin"}, {"polystyrene"}),
              liquid("spirits", {"spirits"}, 40, {"oil_grease"}, {"rubber"}),
              liquid("soapy water", {"water"}, std::nullopt, {"dust", "oil_grease", "fungus", "salts"}, {}),
              liquid("stripper", {"dcm"}, std::nullopt, {"old_lacquer", "oil_grease"}, {})};
  materials = {material("steel", {}),
               material("cell_primary", {}, materials::OutBeforeBake::yes),
               material("glass", {}),
               material("polystyrene", {"aromatic hydrocarbons", "esters"}),
               material("webbing", {"strong acid"}),
               material("lcd", {"ketones"}, materials::OutBeforeBake::yes),
               material("rubber", {"aromatic hydrocarbons"}),
               material("paper", {"water"})};
  hazards::Hazard mercury, charge;
  mercury.id = HazardId("H06");
  mercury.name = "mercury relays";
  mercury.guard = "whole, upright, in a sealed box";
  mercury.isolate = true;
  charge.id = HazardId("H01");
  charge.name = "stored charge";
  hazards = {mercury, charge};
  facts.drying = Heat{Temperature::celsius(66), Temperature::celsius(71),
                      Range<Duration>(3 * hour, 3.5 * hour, 4 * hour)};
}

Part& Bench::part(const std::string& id) {
  return *std::find_if(kind.parts.begin(), kind.parts.end(), [&](const Part& p) { return p.id.text == id; });
}

Means Bench::means() const {
  return {shop, lacquer, &thinner, cleaners, materials, solvents, hazards};
}

const Step* step(const Route& route, StepCode code, int turn) {
  const int at = place(route, code, turn);
  return at < 0 ? nullptr : &route.steps[static_cast<std::size_t>(at)];
}

int place(const Route& route, StepCode code, int turn) {
  for (std::size_t i = 0; i < route.steps.size(); ++i) {
    if (route.steps[i].code == code && route.steps[i].turn == turn) return static_cast<int>(i);
  }
  return -1;
}

const StepGap* gap(const Route& route, GapKind kind, const std::string& from, const std::string& to) {
  const auto it = std::find_if(route.gaps.begin(), route.gaps.end(), [&](const StepGap& g) {
    return g.kind == kind && g.from == from && g.to == to;
  });
  return it == route.gaps.end() ? nullptr : &*it;
}

bool lists(const std::vector<ListedPart>& list, const std::string& part) {
  return std::any_of(list.begin(), list.end(), [&](const ListedPart& l) { return l.part.text == part; });
}

}  // namespace dampward::route::test
