#include "workbench/air_answer.h"

#include "adapters/files/json_documents.h"
#include "adapters/files/shop_folder.h"
#include "adapters/files/words.h"
#include "apps/cli/air_summary.h"
#include "apps/cli/asked.h"
#include "apps/cli/page_text.h"
#include "apps/cli/verbs.h"
#include "core/base/text.h"
#include "core/materials/composition.h"

namespace dampward::cli {
namespace {

constexpr Duration longest_shift = 16 * hour;

// What the options say of the place goes over what the folder says.
void set_place(Asked& asked, shop::SprayPlace& place, bool folder) {
  if (const auto box = asked.box("room")) {
    place.length = (*box)[0];
    place.width = (*box)[1];
    place.height = (*box)[2];
  }
  if (const auto fan = asked.size<VolumeFlow>("fan")) {
    place.fan = *fan;
    place.air_changes_per_hour.reset();
    place.opening_to_outside = true;
  }
  if (const auto mixing = asked.quantity<double>("mixing-factor")) {
    if (*mixing > 0 && *mixing <= 1) {
      place.mixing = *mixing;
    } else {
      asked.fault("mixing-factor", "\"" + *asked.text("mixing-factor") + "\"", "above 0 and at most 1");
    }
  }
  if (asked.has("booth")) {
    place.kind = shop::PlaceKind::booth;
    place.ventilated_booth = true;
  }
  if (folder) return;
  place.name = "the room";
  if (!asked.has("room"))
    asked.missing("room", "a shop folder, or the size of the room: --room \"4 x 3 x 2.5 m\"");
  if (!asked.has("fan"))
    asked.missing(
        "fan", "the fresh air drawn to the outside: --fan \"12 m3/min\"; without any, nobody sprays there");
}

// A liquid without solids under the name of a thinner, a cleaner or a solvent.
void use_solvent(Asked& asked, workbench::Workshop& workshop) {
  const auto name = asked.text("solvent");
  if (!name) return;
  asked.out_of_place({"lacquer"}, "where no --solvent is given");
  materials::Lacquer liquid;
  liquid.id = LacquerId(*name);
  if (const auto* known = workshop.thinners.find(*name)) {
    liquid.name = known->name;
    liquid.composition = known->composition;
    if (known->density) liquid.density.value = *known->density;
  } else if (const auto* solvent = workshop.solvents.find(*name)) {
    liquid.name = solvent->name;
    liquid.composition = {{solvent->id, MassShare::fraction(1)}};
  } else {
    auto all = workshop.thinners.ids();
    const auto solvents = workshop.solvents.ids();
    all.insert(all.end(), solvents.begin(), solvents.end());
    asked.known("solvent", all);
    return;
  }
  if (!(liquid.density.value.low > Density{}))
    liquid.density.value = materials::volatile_density(liquid.composition, workshop.solvents.rows());
  workshop.lacquers.put(liquid);
  workshop.shop.lacquer = liquid.id;
}

void use_lacquer(Asked& asked, workbench::Workshop& workshop, bool folder) {
  if (const auto name = asked.known("lacquer", workshop.lacquers.ids()))
    workshop.shop.lacquer = LacquerId(*name);
  use_solvent(asked, workshop);
  if (!folder && !asked.has("lacquer") && !asked.has("solvent"))
    asked.missing("lacquer", "what is used: --lacquer LACQUER or --solvent SOLVENT");
}

// The gun or brush that the options describe; a folder's own are kept where they describe none.
void set_gun(Asked& asked, shop::Shop& shop, bool folder) {
  const auto method = asked.word("method", files::method_words);
  const auto rate = asked.size<VolumeFlow>("rate");
  if (folder && !asked.has("method") && !asked.has("rate")) return;
  if (!asked.has("method")) asked.missing("method", "how it is used: --method hand_gun, power_gun or brush");
  if (!asked.has("rate") && !asked.has("litres"))
    asked.missing("rate", "how much is used: --rate \"0.1 L/min\", or --litres with --minutes");
  asked.out_of_place({"gun"}, "without --method and --rate: they describe another");
  shop::Gun gun;
  gun.id = GunId("asked");
  gun.kind = method == materials::Method::brush ? shop::GunKind::brush : shop::GunKind::suction_gun;
  gun.power = method == materials::Method::power_gun;
  gun.name = method == materials::Method::brush ? "brush or rag" : gun.power ? "power gun" : "hand gun";
  gun.fluid_rate = rate.value_or(VolumeFlow{});
  shop.guns = {gun};
}

workbench::AirQuestion question_of(Asked& asked) {
  workbench::AirQuestion question;
  if (const auto gun = asked.text("gun")) question.gun = GunId(*gun);
  const auto litres = asked.size<Volume>("litres");
  const auto minutes = asked.size<Duration>("minutes");
  if (asked.has("litres") && !asked.has("minutes")) asked.missing("minutes", "how long --litres lasts");
  if (!asked.has("litres")) asked.out_of_place({"minutes"}, "beside --litres");
  if (asked.has("litres")) asked.out_of_place({"rate"}, "where no --litres is given");
  if (litres && minutes) question.used_up = workbench::UsedUp{*litres, *minutes};
  question.at_it = asked.size<Duration>("hours");
  question.shift = asked.size<Duration>("shift");
  for (const char* option : {"hours", "shift"}) {
    if (const auto time = asked.size<Duration>(option); time && *time > longest_shift)
      asked.fault(option, "\"" + *asked.text(option) + "\"", "at most 16 h in a day");
  }
  question.warm = asked.quantity<Temperature>("air");
  return question;
}

}  // namespace

Answer air(const Call& call) {
  Asked asked(call);
  const bool folder = !call.folder.empty();
  auto read = folder ? files::read_workshop(call.folder) : files::shipped_workshop();
  if (!read) return faulty(call, read.problems());
  workbench::Workshop workshop = std::move(read).value();
  set_place(asked, workshop.shop.spray, folder);
  use_lacquer(asked, workshop, folder);
  set_gun(asked, workshop.shop, folder);
  const workbench::AirQuestion question = question_of(asked);
  if (!asked.problems().empty()) return faulty(call, asked.problems());
  const files::FolderRecords records(call.folder, workshop);
  const auto found = workbench::air_answer(workshop, folder ? &records : nullptr, question);
  if (!found) return faulty(call, found.problems());
  Answer answer;
  answer.out = call.json ? files::air_json(*found) : as_page(air_summary(*found, UnitText(call.units)));
  if (!found->safe()) answer.code = ExitCode::no_safe_answer;
  return answer;
}

}  // namespace dampward::cli
