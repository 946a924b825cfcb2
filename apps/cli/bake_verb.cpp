#include "adapters/files/json_documents.h"
#include "adapters/files/shop_folder.h"
#include "apps/cli/asked.h"
#include "apps/cli/bake_summary.h"
#include "apps/cli/page_text.h"
#include "apps/cli/verbs.h"
#include "core/base/text.h"
#include "workbench/bake_answer.h"
#include "workbench/simple_body.h"

namespace dampward::cli {
namespace {

constexpr int most_units = 1000;
constexpr auto oven_options = {"inside", "heater", "wall", "stirred", "hottest", "evenness", "swing", "vent"};
constexpr auto body_options = {"mass", "size", "part", "shape", "thickness", "part-mass", "limit", "margin"};

constexpr files::Word<equipment::Shape> shape_words[] = {{"plate", equipment::Shape::plate},
                                                         {"cylinder", equipment::Shape::cylinder},
                                                         {"sphere", equipment::Shape::sphere}};

// The oven of the options. What nobody says stands on the side that makes it slower or cooler: estimates.
shop::Oven oven_of(Asked& asked, const workbench::Workshop& workshop) {
  shop::Oven oven;
  oven.id = OvenId("asked");
  oven.name = "the oven";
  if (const auto box = asked.box("inside")) {
    oven.inside_length = (*box)[0];
    oven.inside_width = (*box)[1];
    oven.inside_height = (*box)[2];
  }
  if (!asked.has("inside"))
    asked.missing("inside", "a shop folder, or the oven's room: --inside \"1.1 x 0.7 x 1.3 m\"");
  oven.heater = asked.size<Power>("heater");
  if (!asked.has("heater")) asked.missing("heater", "what heats it: --heater \"2.4 kW\"");
  oven.supply = oven.heater.value_or(Power{});
  oven.wall = asked.known("wall", workshop.walls.ids()).value_or("bare_steel");
  oven.air_moves = asked.has("stirred");
  oven.hottest_setting = asked.quantity<Temperature>("hottest").value_or(Temperature::celsius(90));
  oven.coldest_setting = std::min(oven.hottest_setting, Temperature::celsius(35));
  oven.evenness = asked.quantity<TemperatureStep>("evenness").value_or(5 * kelvin);
  oven.swing = asked.quantity<TemperatureStep>("swing").value_or(3 * kelvin);
  oven.vent = asked.quantity<VolumeFlow>("vent").value_or(VolumeFlow{});
  oven.control_amid_load = true;
  return oven;
}

equipment::Kind body_of(Asked& asked, const materials::MaterialTable& materials) {
  workbench::SimpleBody body;
  const auto mass = asked.size<Mass>("mass");
  const auto size = asked.box("size");
  const auto part = asked.known("part", materials.ids());
  const auto thickness = asked.sizes<Length>("thickness");
  body.shape = asked.word("shape", shape_words).value_or(equipment::Shape::plate);
  body.limit = asked.quantity<Temperature>("limit");
  body.margin = asked.quantity<TemperatureStep>("margin");
  if (!asked.has("limit")) asked.out_of_place({"margin"}, "beside --limit");
  if (!asked.has("mass")) asked.missing("mass", "--kind KIND, or the mass of a simple body: --mass \"8 kg\"");
  if (!asked.has("size")) asked.missing("size", "its box: --size \"0.4 x 0.3 x 0.2 m\"");
  if (!asked.has("part"))
    asked.missing("part", "the material of its slowest or weakest part: --part pf_paper");
  if (!asked.has("thickness")) asked.missing("thickness", "how thick that part is: --thickness \"1.6 mm\"");
  if (!mass || !size || !part || !thickness) return {};
  body.mass = *mass;
  body.box = *size;
  body.part = MaterialId(*part);
  body.part_mass = asked.size<Mass>("part-mass").value_or(0.1 * *mass);
  body.thickness = *thickness;
  if (body.part_mass > body.mass) asked.fault("part-mass", "more than --mass", "at most the whole body's");
  return simple_kind(body, materials);
}

// Oven and load of the options, as a shop with nothing else in it.
void describe(Asked& asked, workbench::Workshop& workshop, workbench::BakeQuestion& question) {
  workshop.shop.ovens = {oven_of(asked, workshop)};
  asked.out_of_place({"serials", "oven"}, "with a shop folder");
  if (asked.has("kind")) {
    for (const char* option : body_options) asked.out_of_place({option}, "where no --kind is given");
  } else {
    const equipment::Kind body = body_of(asked, workshop.materials);
    workshop.kinds.put(body);
    question.kind = body.id;
  }
  if (!asked.has("air")) asked.missing("air", "the air of the shop: --air \"32 C 85 %\"");
}

workbench::BakeQuestion question_of(Asked& asked) {
  workbench::BakeQuestion question;
  if (const auto units = asked.text("serials")) {
    for (const std::string_view unit : split(*units, ','))
      question.units.emplace_back(std::string(trimmed(unit)));
    asked.out_of_place({"kind", "count"}, "where no --serials are given");
  }
  if (const auto kind = asked.text("kind")) question.kind = KindId(*kind);
  question.count = asked.whole("count", 1, most_units).value_or(1);
  if (const auto oven = asked.text("oven")) question.oven = OvenId(*oven);
  if (const auto air = asked.air("air")) question.air = workbench::AskedAir{air->temperature, air->humidity};
  return question;
}

}  // namespace

Answer bake(const Call& call) {
  Asked asked(call);
  const bool folder = !call.folder.empty();
  auto read = folder ? files::read_workshop(call.folder) : files::shipped_workshop();
  if (!read) return faulty(call, read.problems());
  workbench::Workshop workshop = std::move(read).value();
  workbench::BakeQuestion question = question_of(asked);
  if (folder) {
    for (const char* option : oven_options) asked.out_of_place({option}, "without a shop folder");
    for (const char* option : body_options) asked.out_of_place({option}, "without a shop folder");
    if (!asked.has("serials") && !asked.has("kind"))
      asked.missing("serials", "which load: --serials SERIAL,SERIAL or --kind KIND --count N");
  } else {
    describe(asked, workshop, question);
  }
  if (!asked.problems().empty()) return faulty(call, asked.problems());
  const files::FolderRecords records(call.folder, workshop);
  const auto baked = workbench::bake_answer(workshop, folder ? &records : nullptr, question);
  if (!baked) return faulty(call, baked.problems());
  Answer answer;
  answer.out = call.json ? files::bake_json(*baked) : as_page(bake_summary(*baked, UnitText(call.units)));
  if (!baked->any()) answer.code = ExitCode::no_safe_answer;
  return answer;
}

}  // namespace dampward::cli
