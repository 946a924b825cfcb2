#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "core/base/promise.h"
#include "core/materials/composition.h"
#include "workbench/detail/plan_air.h"
#include "workbench/detail/plan_report.h"
#include "workbench/detail/solvent_habits.h"

namespace dampward::workbench {
namespace {

using room_air::Release;
using room_air::Worst;
using route::StepCode;

int whole(line::Minute minute) {
  return static_cast<int>(minute);
}

std::vector<PersonId> ids_of(const std::vector<std::string>& people) {
  std::vector<PersonId> ids;
  for (const std::string& person : people) ids.emplace_back(person);
  return ids;
}

// A coat by a gun.
struct Sprayed {
  std::string unit;
  const line::Placement* coat = nullptr;
};

// Puts scenes together release by release.
class SceneWriter {
 public:
  SceneWriter(const PaintShop& paint, const Workshop& workshop) : paint_(paint), workshop_(workshop) {
    for (auto* scene : {&scenes_.fire, &scenes_.people}) {
      scene->room = paint.room;
      scene->air = paint.air;
    }
    scenes_.fire.liquids.push_back(paint.worst_for_fire);
    scenes_.people.liquids.push_back(paint.worst_for_people);
  }

  // A liquid by its recipe, worst for each harm; the lacquer's mix is number 0.
  std::size_t liquid(const std::string& id, const std::vector<materials::SolventPart>& recipe) {
    const auto [place, added] = liquids_.try_emplace(id, scenes_.fire.liquids.size());
    if (added) {
      const auto& solvents = workshop_.solvents.rows();
      scenes_.fire.liquids.push_back(room_air::worst_mixture(recipe, solvents, Worst::fire));
      scenes_.people.liquids.push_back(room_air::worst_mixture(recipe, solvents, Worst::people));
    }
    return place->second;
  }

  void release(const Release& release, std::vector<PersonId> hands) {
    if (!(release.volatiles > Mass{}) || release.to <= release.from) return;
    scenes_.fire.releases.push_back(release);
    scenes_.people.releases.push_back(release);
    scenes_.hands.push_back(std::move(hands));
  }

  void coat(const UnitDraft& unit, const line::Placement& placed, bool first) {
    const CoatCase& coat = *unit.coat;
    Release release;
    release.by = unit.queued->serial.text;
    release.what = "coat";
    release.from = whole(placed.start);
    release.to = whole(placed.end);
    release.volatiles =
        std::min(coat.volatiles_of_coat, (release.to - release.from) * (coat.volatiles * minute));
    release.at_once = 1 - coat.gun->efficiency.typical.fraction();
    release.sprays_isocyanate = paint_.lacquer->isocyanate && coat.method != materials::Method::brush;
    release.nine_tenths = coat.work.one_flash;
    release.near = coat.zone;
    this->release(release, ids_of(placed.people));
    if (!first) return;
    Release mixing = release;
    mixing.what = "mixing";
    mixing.to = release.from;
    mixing.from = std::max(0, release.from - mixing_minutes);
    mixing.volatiles = lost_in_mixing * (coat.work.coats * release.volatiles);
    mixing.at_once = 1;
    mixing.sprays_isocyanate = false;
    mixing.near = bench();
    this->release(mixing, ids_of(placed.people));
  }

  void touch_up(const UnitDraft& unit, const line::Placement& placed) {
    const auto places = static_cast<double>(std::max<std::size_t>(1, unit.route.lists.touch_up.size()));
    const double parts = paint_.lacquer->thinner_parts_for_brush;
    Release release;
    release.by = unit.queued->serial.text;
    release.what = "touch-up";
    release.from = whole(placed.start);
    release.to = whole(placed.end);
    release.volatiles = volatiles_per_volume(paint_, parts) * (places * touch_up_each);
    release.nine_tenths = unit.coat->work.one_flash;
    release.near = bench();
    this->release(release, ids_of(placed.people));
    rag(release);
  }

  void cleaning(const UnitDraft& unit, const line::Placement& placed) {
    std::set<std::string> used;
    for (const route::CleanerChoice& choice : unit.route.cleaning) {
      const materials::Liquid* cleaner =
          choice.dry || !choice.found ? nullptr : workshop_.cleaners.find(choice.cleaner);
      if (cleaner == nullptr || !used.insert(cleaner->id).second) continue;
      const Density density =
          cleaner->density
              ? *cleaner->density
              : materials::volatile_density(cleaner->composition, workshop_.solvents.rows()).high;
      const double square_metres = unit.kind->kind->spray_area_assembled.value.high / square_metre;
      Release release;
      release.by = unit.queued->serial.text;
      release.what = "cleaning";
      release.liquid = liquid(cleaner->id, cleaner->composition);
      release.from = whole(placed.start);
      release.to = whole(placed.end);
      const Mass wiped = density * (square_metres * cleaner_per_square_metre);
      release.volatiles = (1 - kept_in_rag) * wiped;
      release.nine_tenths = choice.dries_in.low;
      release.near = bench();
      this->release(release, ids_of(placed.people));
      release.volatiles = wiped;
      rag(release);
    }
  }

  // The gun is rinsed where no coat follows for a while, by whoever held it last.
  void rinsing(std::vector<Sprayed> sprayed) {
    std::sort(sprayed.begin(), sprayed.end(), [](const Sprayed& a, const Sprayed& b) {
      return std::tie(a.coat->end, a.coat->operation) < std::tie(b.coat->end, b.coat->operation);
    });
    for (std::size_t i = 0; i < sprayed.size(); ++i) {
      if (i + 1 < sprayed.size() && sprayed[i + 1].coat->start < sprayed[i].coat->end + rinsed_after)
        continue;
      Release release;
      release.by = sprayed[i].unit;
      release.what = "rinsing the gun";
      if (paint_.thinner != nullptr)
        release.liquid = liquid("thinner " + paint_.thinner->id, paint_.thinner->composition);
      release.from = whole(sprayed[i].coat->end);
      release.to = release.from + rinsing_minutes;
      release.volatiles = paint_.thinner_density.high * loose_in_rinsing;
      release.at_once = 1;
      release.near = bench();
      this->release(release, ids_of(sprayed[i].coat->people));
    }
  }

  PlanScenes take() { return std::move(scenes_); }

 private:
  // What the rag of some work keeps, in an open can.
  void rag(Release work) {
    work.what = "rags";
    work.from = work.to;
    work.to = work.from + 1;
    work.volatiles = kept_in_rag * work.volatiles;
    work.at_once = 0;
    work.nine_tenths = rag_nine_tenths;
    work.near.reset();
    release(work, {});
  }

  room_air::NearZone bench() const { return zone_of_bench(workshop_.shop.spray, paint_.room.fresh_air); }

  const PaintShop& paint_;
  const Workshop& workshop_;
  PlanScenes scenes_;
  std::map<std::string, std::size_t> liquids_;
};

}  // namespace

PlanScenes scenes_of(const std::vector<UnitDraft>& units, const std::vector<LoadDraft>& loads,
                     const line::Answer& answer, const PaintShop& paint, const Workshop& workshop) {
  SceneWriter writer(paint, workshop);
  const Placed placed = placed_operations(answer);
  std::vector<Sprayed> sprayed;
  for (const UnitDraft& unit : units) {
    for (const route::Step& step : unit.route.steps) {
      const auto found = placed.find(operation_id(unit, step, loads));
      if (found == placed.end()) continue;
      const line::Placement& placement = *found->second;
      switch (step.code) {
        case StepCode::coat:
          writer.coat(unit, placement, step.turn <= 1);
          if (unit.coat->method != materials::Method::brush)
            sprayed.push_back({unit.queued->serial.text, &placement});
          break;
        case StepCode::touch_up:
          writer.touch_up(unit, placement);
          break;
        case StepCode::clean:
          writer.cleaning(unit, placement);
          break;
        default:
          break;
      }
    }
  }
  writer.rinsing(std::move(sprayed));
  return writer.take();
}

}  // namespace dampward::workbench
