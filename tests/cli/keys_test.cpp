#include <doctest/doctest.h>

#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>

#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

// docs/cli.md lists every key of every JSON answer; here its tables meet real output.

namespace {

using Keys = std::set<std::string>;

// The keys of each table of the page that is headed "key", by the heading above it.
std::map<std::string, Keys> keys_of_the_page() {
  std::map<std::string, Keys> keys;
  std::istringstream page(whole_text(DAMPWARD_SOURCE_DIR "/docs/cli.md"));
  std::string heading;
  bool in_key_table = false;
  for (std::string line; std::getline(page, line);) {
    std::smatch match;
    if (std::regex_match(line, match, std::regex("##+ (.*)"))) heading = match[1];
    if (line.starts_with("| key |")) in_key_table = true;
    if (!line.starts_with("|")) in_key_table = false;
    if (!in_key_table || !std::regex_search(line, match, std::regex("^\\| `([^`]+)` \\|"))) continue;
    INFO(heading, " names ", match[1].str(), " twice");
    CHECK(keys[heading].insert(match[1]).second);
  }
  return keys;
}

// The page's word for a key that is a name and no fixed word.
std::string on_the_page(const std::string& key) {
  static const Keys storages = {"open_shed", "closed_room", "closed_case", "heated_case", "air_conditioned"};
  static const Keys classes = {"very_sensitive", "sensitive", "medium_resistant", "resistant"};
  if (storages.count(key) > 0) return "<storage>";
  return classes.count(key) > 0 ? "<class>" : key;
}

// What a document holds: the paths of its values, and of the lists and objects on the way to them.
struct Printed {
  Keys values, containers;
};

void walk(const Json& json, const std::string& path, Printed& printed) {
  if (json.is_object()) {
    printed.containers.insert(path);
    for (const auto& [key, value] : json.items()) {
      walk(value, path + (path.empty() ? "" : ".") + on_the_page(key), printed);
    }
  } else if (json.is_array()) {
    printed.containers.insert(path + "[]");
    for (const Json& item : json) walk(item, path + "[]", printed);
  } else {
    printed.values.insert(path);
  }
}

Printed printed_by(const std::vector<Json>& documents) {
  Printed printed;
  for (const Json& document : documents) walk(document, "", printed);
  return printed;
}

// Holds a verb's answers against its table. Answers with faults alone are held against the table of faults.
void compare(const Keys& page, const std::vector<Json>& documents) {
  const Printed printed = printed_by(documents);
  for (const std::string& key : printed.values) {
    CHECK_MESSAGE(page.count(key) == 1, "printed, but not on the page: ", key);
  }
  for (const std::string& key : page) {
    CHECK_MESSAGE(printed.values.count(key) + printed.containers.count(key) > 0,
                  "on the page, but never printed: ", key);
  }
}

// Every null that has no reason beside it, or beside the object it stands in.
void unexplained(const Json& json, const std::string& path, bool explained, Keys& found) {
  if (json.is_array()) {
    for (const Json& item : json) unexplained(item, path + "[]", false, found);
  } else if (json.is_object()) {
    for (const auto& [key, value] : json.items()) {
      const bool reason = json.contains(key + "_reason") || (value.is_null() && json.contains("reason"));
      unexplained(value, path + "." + key, explained || reason, found);
    }
  } else if (json.is_null() && !explained) {
    found.insert(path);
  }
}

Json json_of(std::vector<std::string> arguments) {
  arguments.emplace_back("--json");
  return only_document(dampward_run(arguments));
}

std::vector<Json> mixes() {
  const DemoShop demo;
  return {json_of({"mix", demo.folder()}),
          json_of({"mix", "--lacquer", "epoxy_two_part", "--area", "1 m2", "--method", "brush"})};
}

std::vector<Json> airs() {
  const auto in_a_shed = [](const char* solvent) {
    return json_of({"air", "--room", "4 x 3 x 2.5 m", "--fan", "20 m3/min", "--solvent", solvent, "--method",
                    "brush", "--rate", "0.01 L/min"});
  };
  const DemoShop demo, shut;
  shut.replace("spray.toml", "opening_to_outside = true", "opening_to_outside = false");
  return {json_of({"air", demo.folder()}), json_of({"air", shut.folder()}), in_a_shed("deionised_rinse"),
          in_a_shed("acrylic_retarder")};
}

std::vector<Json> bakes() {
  const DemoShop demo;
  return {json_of({"bake", demo.folder(), "--serials", "TD-0107,TD-0204"}),
          json_of({"bake", demo.folder(), "--kind", "old_supply"}),
          json_of({"bake", "--inside", "1 x 1 x 1 m", "--heater", "2 kW", "--mass", "5 kg", "--size",
                   "0.3 x 0.3 x 0.2 m", "--part", "pf_paper", "--thickness", "2 mm", "--air", "30 C 80 %"})};
}

std::vector<Json> windows() {
  const auto surfaces = [](const char* air) {
    return json_of({"window", "--surface", "shell 60 C 12 min", "--lacquer",
                    "phenolic_tung_varnish_fungicidal", "--method", "brush", "--coat-time", "8 min", "--air",
                    air});
  };
  const DemoShop demo, quick;
  quick.replace("materials.toml",
                "flash = { hand_gun = \"15..18..20 min\", power_gun = \"15..18..20 min\", brush = "
                "\"20..25..30 min\" }",
                "flash = { hand_gun = \"4 min\", power_gun = \"4 min\", brush = \"4 min\" }");
  return {json_of({"window", demo.folder()}), json_of({"window", quick.folder(), "--air", "32 C 85 %"}),
          surfaces("30 C 70 %"), surfaces("34 C 95 %")};
}

// Ways of asking that between them show every key, the reasons of unknown values too.
std::vector<Json> plans() {
  std::vector<Json> documents;
  const DemoShop demo;
  documents.push_back(json_of({"plan", demo.folder()}));

  // A baked unit without due date, and one that bakes hotter than the trade's rule reaches.
  const DemoShop hot;
  hot.write("more_kinds.toml",
            "[kinds.shore_logger]\nlike = \"tide_logger\"\ndrop = [\"relays\", \"inlet_filter\", "
            "\"board_parts\"]\n");
  hot.write_queue({"TD-0101,shore_logger,damp,dust,,0,"});
  documents.push_back(json_of({"plan", hot.folder()}));

  const DemoShop empty;
  empty.write_queue({});
  documents.push_back(json_of({"plan", empty.folder()}));

  const DemoShop unknown_solvents;
  unknown_solvents.replace("materials.toml",
                           "{ xylene = \"60 %\", n_butyl_acetate = \"25 %\", n_butanol = \"15 %\" }", "{}");
  documents.push_back(json_of({"plan", unknown_solvents.folder()}));

  // Nothing in it burns, and the table has no exposure limit for it.
  const DemoShop water;
  water.replace("materials.toml", "{ xylene = \"60 %\", n_butyl_acetate = \"25 %\", n_butanol = \"15 %\" }",
                "{ water = \"100 %\" }");
  water.replace("materials.toml", "{ xylene = \"65 %\", n_butyl_acetate = \"25 %\", n_butanol = \"10 %\" }",
                "{ water = \"100 %\" }");
  documents.push_back(json_of({"plan", water.folder()}));

  // Changes that between them move everything a difference can tell, there and back.
  const DemoShop hot_store;
  hot_store.replace("spray.toml", "distance = \"9 m\"", "distance = \"2 m\"");
  const std::string watery =
      "lacquers.delta_varnish.composition={ water = \"100 %\" }; "
      "thinners.delta_thinner.composition={ water = \"100 %\" }";
  const std::string xylene =
      "lacquers.delta_varnish.composition={ xylene = \"100 %\" }; "
      "thinners.delta_thinner.composition={ xylene = \"100 %\" }";
  const std::string harder_wax =
      "materials.wax_paraffin={ like = \"wax_paraffin\", limit = \"90 °C\" }; "
      "materials.wax_micro={ like = \"wax_micro\", limit = \"90 °C\" }";
  for (const std::string& change : {std::string("crew.painter=ill"), std::string("spray.heat.1.distance=2 m"),
                                    std::string("ovens.locker.lamps=3"), harder_wax, watery,
                                    std::string("ovens.cabinet.powered=[]; ovens.locker.powered=[]")}) {
    documents.push_back(json_of({"plan", demo.folder(), "--what-if", change}));
  }
  documents.push_back(json_of({"plan", hot_store.folder(), "--what-if", "spray.heat.1.distance=9 m"}));
  documents.push_back(json_of({"plan", water.folder(), "--what-if", xylene}));

  // A unit no change of the shop lets in.
  const DemoShop licensed;
  licensed.write("more_kinds.toml",
                 "[kinds.sealed_logger]\nlike = \"tide_logger\"\n[kinds.sealed_logger.parts.relays]\n"
                 "hazards = [\"H07\"]\n");
  licensed.write_queue({"TD-0101,sealed_logger,damp,dust,,0,"});
  documents.push_back(json_of({"plan", licensed.folder()}));

  // Planned on from a log that tells of a missed window.
  const DemoShop begun;
  CHECK(dampward_run({"note", begun.folder(), "--kind", "window_missed", "--unit", "TD-0311", "--by", "lead",
                      "--at", "2027-02-01 07:00"})
            .exit_code == 0);
  documents.push_back(json_of({"plan", begun.folder(), "--at", "2027-02-01 08:00"}));

  // So damp that no unit has a window hot from the oven; with a quick lacquer some have one once the oven is stepped down.
  const DemoShop damp;
  damp.replace("site.toml", "weather = \"weather.epw\"", "weather = \"\"");
  damp.write("air.csv", "time,place,temperature,humidity\n2027-02-01 06:40,spray room,32 °C,85 %\n");
  documents.push_back(json_of(
      {"plan", damp.folder(), "--what-if",
       "lacquers.delta_varnish.flash={ hand_gun = \"4 min\", power_gun = \"4 min\", brush = \"4 min\" }"}));

  // A generator that carries one oven at a time; nothing to switch on.
  const std::string generator = "power.gives=3 kW; power.always_on=500 W";
  documents.push_back(json_of({"plan", demo.folder(), "--what-if", generator}));
  documents.push_back(json_of({"plan", empty.folder(), "--what-if", generator}));

  // Somebody there day and night: no rest in which the body could clear what it breathed.
  documents.push_back(
      json_of({"plan", demo.folder(), "--what-if", "crew.technician.shifts=[\"mon-sun 00:00-24:00\"]"}));

  // A serial that lost its zeros.
  const DemoShop doubtful;
  doubtful.write_queue(
      {"0041,river_radio,damp,dust,,0,", "42,river_radio,damp,dust,,0,", "0043,river_radio,damp,dust,,0,"});
  documents.push_back(json_of({"plan", doubtful.folder()}));
  return documents;
}

std::vector<Json> exposures() {
  const DemoShop demo;
  std::vector<Json> documents = {json_of({"exposure", demo.folder()}),
                                 json_of({"exposure", "--weather", demo.path("weather.epw").string()})};
  // No month warm enough for the 30-day rule: temperature, dew point and humidity of a cold store.
  demo.write("cold.epw", weather_with({{6, "-5.0"}, {7, "-6.0"}, {8, "92"}}));
  documents.push_back(json_of({"exposure", "--weather", demo.path("cold.epw").string()}));
  // Ten hours missing.
  std::string text = demo.text("weather.epw");
  const std::size_t from = text.find("\n1987,1,9,3,"), to = text.find("\n1987,1,9,13,");
  REQUIRE(from < to);
  demo.write("gap.epw", text.erase(from, to - from));
  documents.push_back(json_of({"exposure", "--weather", demo.path("gap.epw").string()}));
  return documents;
}

std::vector<Json> faulty_answers() {
  const DemoShop shop;
  shop.replace("ovens.toml", "swing = \"2 K\"", "swing = \"2 bananas\"");
  shop.write_queue({"0041,river_radio,,,,,", "42,river_radio,,,,,", "0043,river_radio,,,,,"});
  return {json_of({"plan", shop.folder()}), json_of({"proofread", shop.folder()}),
          json_of({"exposure", shop.folder()}), json_of({"start", shop.folder()}),
          json_of({"plan", "--json"})};
}

}  // namespace

TEST_CASE("the page has a table of keys for faults and for every verb") {
  const auto page = keys_of_the_page();
  for (const char* heading : {"Faults", "start", "proofread", "plan", "note", "mix", "air", "bake", "window",
                              "leaflet", "charts", "exposure", "solve", "solve, problems of the literature",
                              "solve, ovens of the literature", "verify", "selfcheck"}) {
    INFO(heading);
    REQUIRE(page.count(heading) == 1);
    CHECK(page.at(heading).count("faults[]") == 1);
  }
  CHECK(page.size() == 17);
}

TEST_CASE("start prints the keys of its table and no others") {
  const ScratchFolder scratch;
  compare(keys_of_the_page()["start"], {json_of({"start", (scratch.path() / "shop").string(), "--example"})});
}

TEST_CASE("proofread prints the keys of its table and no others") {
  const DemoShop demo;
  compare(keys_of_the_page()["proofread"], {json_of({"proofread", demo.folder()})});
}

TEST_CASE("plan prints the keys of its table and no others") {
  compare(keys_of_the_page()["plan"], plans());
}

TEST_CASE("leaflet prints the keys of its table and no others") {
  std::vector<Json> documents;
  for (const char* heat : {"lamp_box", "sun_box", "dry_box"})
    documents.push_back(json_of({"leaflet", "--kind", "receiver_base", "--heat", heat}));
  documents.push_back(json_of({"leaflet", "--kind", "telephone_field", "--heat", "lamp_box"}));
  for (const char* lacquer : {"acrylic_waterborne", "wax_brush_compound"})
    documents.push_back(json_of({"leaflet", "--kind", "handheld_set", "--heat", "dry_box", "--lacquer",
                                 lacquer, "--humidity", "60 %"}));
  compare(keys_of_the_page()["leaflet"], documents);
}

namespace {

std::vector<Json> wall_charts() {
  const DemoShop demo;
  const std::string weather = demo.path("weather.epw").string();
  std::vector<Json> documents = {json_of({"charts", demo.folder()})};
  // Without a shop; a lacquer of which nobody knows what is in it; one for the brush alone where there is only a gun.
  for (const char* lacquer : {"acrylic_solvent", "wax_brush_compound", "polyurethane_one_part"})
    documents.push_back(json_of({"charts", "--weather", weather, "--lacquer", lacquer}));
  const std::string spray = demo.text("spray.toml");
  demo.write("spray.toml", spray.substr(0, spray.find("[guns.brush]")));
  documents.push_back(json_of({"charts", demo.folder(), "--lacquer", "wax_brush_compound"}));
  // Air so dry that no clock runs.
  demo.write("dry.epw", weather_with({{6, "28.0"}, {7, "16.0"}, {8, "48"}}));
  documents.push_back(json_of({"charts", "--weather", demo.path("dry.epw").string(), "--lacquer",
                               "phenolic_tung_varnish_fungicidal"}));
  return documents;
}

}  // namespace

TEST_CASE("charts prints the keys of its table and no others") {
  compare(keys_of_the_page()["charts"], wall_charts());
}

TEST_CASE("note prints the keys of its table and no others") {
  const DemoShop demo;
  compare(keys_of_the_page()["note"], {json_of({"note", demo.folder(), "--kind", "unit_received", "--unit",
                                                "TD-0311", "--by", "lead", "--at", "2027-02-01 07:00"})});
}

TEST_CASE("mix prints the keys of its table and no others") {
  compare(keys_of_the_page()["mix"], mixes());
}

TEST_CASE("air prints the keys of its table and no others") {
  compare(keys_of_the_page()["air"], airs());
}

TEST_CASE("bake prints the keys of its table and no others") {
  compare(keys_of_the_page()["bake"], bakes());
}

TEST_CASE("window prints the keys of its table and no others") {
  compare(keys_of_the_page()["window"], windows());
}

TEST_CASE("exposure prints the keys of its table and no others") {
  compare(keys_of_the_page()["exposure"], exposures());
}

TEST_CASE("verify prints the keys of its table and no others") {
  const ScratchFolder scratch;
  const std::string problem = DAMPWARD_SOURCE_DIR "/docs/formats/example-problem.json";
  std::string answer = whole_text(DAMPWARD_SOURCE_DIR "/docs/formats/example-answer.json");
  scratch.write("answer.json",
                answer.replace(answer.find("\"finish_min\": 470"), 17, "\"finish_min\": 471").append("\n"));
  compare(keys_of_the_page()["verify"],
          {json_of({"verify", problem, (scratch.path() / "answer.json").string()})});
}

TEST_CASE("solve prints the keys of its table and no others, and its answer is kept apart") {
  const ScratchFolder scratch;
  // One unit late, one that nobody can do.
  std::string text = R"({"format": "dampward timetable problem", "version": 1, "horizon_min": 100,
    "units": [{"id": "u", "due_min": 5}, {"id": "v"}],
    "operations": [{"id": "u.test", "unit": "u", "length_min": 20, "skill": "test"},
                   {"id": "v.test", "unit": "v", "length_min": 20, "skill": "sing"}],
    "people": [{"id": "tester", "skills": ["test"], "shifts": [[0, 60]]}]})";
  scratch.write("problem.json", text);
  const std::string problem = (scratch.path() / "problem.json").string();
  const std::string answer = (scratch.path() / "answer.json").string();
  compare(keys_of_the_page()["solve"], {json_of({"solve", problem, "--answer", answer})});
  CHECK(json_of({"verify", problem, answer})["violations"].empty());
}

TEST_CASE("solve prints the keys of a problem of the literature and no others") {
  const ScratchFolder scratch;
  const auto printed = [&](const char* name, const char* longest) {
    const std::string path = (scratch.path() / name).string();
    std::ofstream(path) << "2 1 0 0\n0 1 2 1 2 [0] [0]\n1 1 2 2 3 [0] [3]\n2 1 2 1 3 [-" << longest
                        << "] [2]\n3 1 0\n0 1 0 0\n1 1 3 2\n2 1 2 1\n3 1 0 0\n2\n";
    return json_of({"solve", path});
  };
  compare(keys_of_the_page()["solve, problems of the literature"],
          {printed("a.sch", "4"), printed("b.sch", "1")});
}

TEST_CASE("solve prints the keys of an oven scheduling problem and no others") {
  const ScratchFolder scratch;
  const auto printed = [&](const char* name, const char* closes) {
    const std::string path = (scratch.path() / name).string();
    std::ofstream(path)
        << "a=1; m=1; s=1; n=2; setup_costs=[|0,|0|]; setup_times=[|0,|0|]; max_cap=[1]; initState=[1];\n"
           "m_a_s=[|0|]; m_a_e=[|"
        << closes
        << "|]; eligible_machine=[{1},{1}]; earliest_start=[0,0]; latest_end=[9,9]; min_time=[4,4];\n"
           "max_time=[4,4]; size=[1,1]; attribute=[1,1]; upper_bound_integer_objective=10;\n"
           "mult_factor_total_runtime=1; mult_factor_finished_toolate=1; mult_factor_total_setupcosts=1;\n";
    return json_of({"solve", path, "--work-limit", "100000"});
  };
  // In 7 minutes each job has its place, but not both.
  compare(keys_of_the_page()["solve, ovens of the literature"],
          {printed("a.dzn", "20"), printed("b.dzn", "7")});
}

TEST_CASE("a plan's problem and answer, written down, are sound and solve to the same answer") {
  const DemoShop demo;
  const std::string problem = demo.path("p.json").string(), answer = demo.path("a.json").string(),
                    again = demo.path("b.json").string();
  json_of({"plan", demo.folder(), "--problem", problem, "--answer", answer});
  CHECK(json_of({"verify", problem, answer})["violations"].empty());
  json_of({"solve", problem, "--answer", again});
  CHECK(whole_text(answer) == whole_text(again));
}

TEST_CASE("selfcheck prints the keys of its table and no others") {
  compare(keys_of_the_page()["selfcheck"], {json_of({"selfcheck"})});
}

TEST_CASE("an answer to faulty input holds faults and warnings of the same shape, whatever the verb") {
  Keys page = keys_of_the_page()["Faults"];
  for (const std::string& key : Keys(page))
    page.insert("warnings" + key.substr(std::string("faults").size()));
  compare(page, faulty_answers());
  for (const Json& document : faulty_answers()) {
    CHECK(document.size() == 2);
    CHECK_FALSE(document.at("faults").empty());
  }
}

TEST_CASE("an unknown value is null beside a reason") {
  Keys found;
  for (const Json& document : plans()) unexplained(document, "", false, found);
  for (const Json& document : exposures()) unexplained(document, "", false, found);
  for (const Json& document : bakes()) unexplained(document, "", false, found);
  for (const Json& document : windows()) unexplained(document, "", false, found);
  for (const Json& document : airs()) unexplained(document, "", false, found);
  for (const Json& document : mixes()) unexplained(document, "", false, found);
  for (const Json& document : wall_charts()) unexplained(document, "", false, found);
  for (const std::string& key : found) FAIL_CHECK("null without a reason: " << key);
}

TEST_CASE("figures in JSON are SI, whatever units a person reads") {
  const DemoShop demo;
  CHECK(dampward_run({"plan", demo.folder(), "--json", "--units", "us"}).out ==
        dampward_run({"plan", demo.folder(), "--json"}).out);
  CHECK(dampward_run({"exposure", demo.folder(), "--json", "--units", "us"}).out ==
        dampward_run({"exposure", demo.folder(), "--json"}).out);
}

TEST_CASE("every key that carries a figure ends in its unit or is a count, and times carry their offset") {
  const std::regex unit(".*_(c|h|min|l|um|ppm|pct|m3_per_min|mg_per_m2_day)(\\.(low|typical|high))?");
  const std::regex time("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d([+-]\\d\\d:\\d\\d|Z)");
  const DemoShop demo;
  const Json plan = json_of({"plan", demo.folder()});
  const Keys counts = {"coats", "exposure_index"};
  for (const char* list : {"late", "loads", "windows", "stock", "rooms", "treatments"}) {
    for (const Json& item : plan.at(list)) {
      for (const auto& [key, value] : item.items()) {
        INFO(list, "[].", key);
        if (value.is_number()) CHECK((std::regex_match(key, unit) || counts.count(key) == 1));
        if (key.ends_with("_at") && value.is_string()) {
          CHECK(std::regex_match(value.get<std::string>(), time));
        }
      }
    }
  }
}
