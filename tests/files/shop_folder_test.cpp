#include "adapters/files/shop_folder.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <filesystem>
#include <regex>
#include <string>

#include "adapters/files/starter.h"
#include "adapters/files/text_file.h"
#include "core/base/text.h"
#include "tests/files/scratch_folder.h"

using namespace dampward;
using namespace dampward::files;

namespace {

// The starter folder, in which one thing can be spoilt.
class Shop {
 public:
  Shop() { REQUIRE(start_folder(scratch_.path()).ok()); }

  const std::filesystem::path& path() const { return scratch_.path(); }
  void write(const std::string& name, std::string_view text) const { scratch_.write(name, text); }
  std::string text(const std::string& name) const { return read_text(path() / name, name).value(); }
  void replace(const std::string& name, std::string_view old, std::string_view by) const {
    std::string all = text(name);
    const std::size_t at = all.find(old);
    REQUIRE(at != std::string::npos);
    write(name, all.replace(at, old.size(), by));
  }
  void append(const std::string& name, std::string_view more) const {
    write(name, text(name) + std::string(more));
  }

 private:
  ScratchFolder scratch_;
};

std::string all_told(const Problems& problems) {
  std::string text;
  for (const Problem& problem : problems) text += to_text(problem) + "\n";
  return text;
}

// The one fault of a folder.
Problem only_fault(const Shop& shop) {
  const Proof proof = proofread(shop.path());
  INFO(all_told(proof.faults));
  REQUIRE(proof.faults.size() == 1);
  return proof.faults.front();
}

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("every key that the starter's notes show may be switched on") {
  const Shop shop;
  for (const char* name : {"site.toml", "ovens.toml", "spray.toml", "crew.toml", "stations.toml",
                           "materials.toml", "kinds.toml"}) {
    shop.write(
        name, std::regex_replace(shop.text(name), std::regex("(^|\n)# (\\[[a-z_.]+\\]|[a-z_]+ = )"), "$1$2"));
  }
  // The weather of a year is a story of its own: here only the key counts.
  shop.replace("site.toml", "weather = \"weather.epw\"", "weather = \"\"");
  const Proof proof = proofread(shop.path());
  INFO(all_told(proof.faults));
  CHECK(proof.faults.empty());
}

TEST_CASE("a shop's figures arrive in the workshop, whatever their units") {
  const Shop shop;
  shop.replace("ovens.toml", "settings = [\"40 °C\", \"90 °C\"]", "settings = [\"100 °F\", \"90 °C\"]");
  shop.replace("site.toml", "altitude = \"12 m\"", "altitude = \"-30 ft\"");
  const auto workshop = read_workshop(shop.path());
  REQUIRE(workshop.ok());
  const shop::Oven& oven = workshop->shop.ovens.at(0);
  CHECK(oven.coldest_setting.celsius() == doctest::Approx(37.78).epsilon(1e-3));
  CHECK(oven.heater->in(watt) == doctest::Approx(2000));
  CHECK(oven.powered.days.size() == 7);
  CHECK(workshop->shop.site.altitude.in(metre) == doctest::Approx(-9.144));
  CHECK(workshop->shop.site.clock.offset_at(Instant{}) == std::chrono::hours(2));
  const materials::Lacquer* lacquer = workshop->lacquers.find(workshop->shop.lacquer);
  REQUIRE(lacquer != nullptr);
  CHECK(lacquer->family == "phenolic_tung_varnish_fungicidal");
  CHECK(lacquer->solids_by_mass.value.typical.percent() == doctest::Approx(55));
  CHECK(lacquer->coats.size() == 3);
  CHECK(workshop->thinners.find(lacquer->thinner) != nullptr);
  CHECK(workshop->cleaners.rows().size() == 3);
}

TEST_CASE("tables may sit in any file of the folder") {
  const Shop shop;
  shop.write("all.toml", shop.text("site.toml") + shop.text("ovens.toml") + shop.text("crew.toml"));
  for (const char* name : {"site.toml", "ovens.toml", "crew.toml"})
    std::filesystem::remove(shop.path() / name);
  CHECK(read_workshop(shop.path()).ok());
}

TEST_CASE("all faults of all files come at once, each with its place") {
  const Shop shop;
  shop.replace("ovens.toml", "swing = \"2 K\"", "swing = \"2 bananas\"");
  shop.replace("crew.toml", "\"mon-fri 07:00-15:30\"", "\"mon-fri 15:30-07:00\"");
  shop.replace("queue.csv", "2026-12-09", "09/12/2026");
  const Proof proof = proofread(shop.path());
  INFO(all_told(proof.faults));
  REQUIRE(proof.faults.size() == 3);
  for (const Problem& problem : proof.faults) {
    CHECK_FALSE(problem.place.file.empty());
    CHECK(problem.place.line > 0);
    CHECK(problem.place.column > 0);
    CHECK_FALSE(problem.expected.empty());
  }
}

TEST_CASE("a missing folder, an empty one and a file in its place are told apart") {
  const ScratchFolder scratch;
  scratch.write("file", "x");
  CHECK(says(proofread(scratch.path() / "none").faults.at(0).found, "no such folder"));
  CHECK(says(proofread(scratch.path() / "file").faults.at(0).found, "a file"));
  std::filesystem::remove(scratch.path() / "file");
  CHECK(says(proofread(scratch.path()).faults.at(0).found, "no file that ends in .toml"));
}

TEST_CASE("a missing queue is a fault, missing stock and air are empty") {
  const Shop shop;
  for (const char* name : {"stock.csv", "air.csv"}) std::filesystem::remove(shop.path() / name);
  CHECK(proofread(shop.path()).faults.empty());
  std::filesystem::remove(shop.path() / "queue.csv");
  const Problem problem = only_fault(shop);
  CHECK(problem.place.file == "queue.csv");
  CHECK(problem.found == "no such file");
}

TEST_CASE("a folder named like a file cannot be read as one") {
  const Shop shop;
  std::filesystem::remove(shop.path() / "queue.csv");
  std::filesystem::create_directory(shop.path() / "queue.csv");
  CHECK(only_fault(shop).found == "a folder");
}

TEST_CASE("a spreadsheet saved as a workbook is no text") {
  const Shop shop;
  shop.write("queue.csv", std::string("PK\x03\x04\0\0\0", 7));
  CHECK(says(only_fault(shop).found, "zero bytes"));
}

TEST_CASE("a misspelt key is named with the one that was meant") {
  const Shop shop;
  shop.replace("ovens.toml", "evenness = ", "eveness = ");
  const Proof proof = proofread(shop.path());
  INFO(all_told(proof.faults));
  REQUIRE(proof.faults.size() == 2);  // the unknown key, and the figure that is now missing
  CHECK(says(all_told(proof.faults), "Did you mean \"evenness\"?"));
  CHECK(says(all_told(proof.faults), "[ovens.cabinet] without evenness"));
}

TEST_CASE("a misspelt table is named with the one that was meant") {
  const Shop shop;
  shop.append("stations.toml", "\n[station.shed]\nserves = [\"oven\"]\n");
  CHECK(only_fault(shop).next == "Did you mean \"stations\"?");
}

TEST_CASE("text that is no TOML is placed by line and column, and other files are read on") {
  const Shop shop;
  shop.append("stations.toml", "\n[stations.shed]\nplaces = two\n");
  shop.replace("ovens.toml", "swing = \"2 K\"", "swing = \"2\"");
  const Proof proof = proofread(shop.path());
  INFO(all_told(proof.faults));
  REQUIRE(proof.faults.size() == 2);
  CHECK(proof.faults[0].place.file == "stations.toml");
  CHECK(proof.faults[0].place.line > 30);
}

TEST_CASE("a file that cannot be read breeds no further faults about what stands in it") {
  for (const char* name :
       {"crew.toml", "kinds.toml", "materials.toml", "site.toml", "spray.toml", "ovens.toml"}) {
    INFO(name);
    const Shop shop;
    shop.append(name, "\nbroken = \n");
    CHECK(only_fault(shop).place.file == name);
  }
}

TEST_CASE("a key written twice is refused") {
  const Shop shop;
  shop.replace("ovens.toml", "swing = \"2 K\"", "swing = \"2 K\"\nswing = \"3 K\"");
  CHECK(says(only_fault(shop).found, "swing"));
}

TEST_CASE("one name for two ovens, also in two files, is refused with the place of the first") {
  const Shop shop;
  shop.write("more_ovens.toml", shop.text("ovens.toml"));
  const Problem problem = only_fault(shop);
  CHECK(says(problem.found, "a second [ovens.cabinet]"));
  CHECK(says(problem.expected, "more_ovens.toml line"));
}

TEST_CASE("a temperature without unit, a negative mass, 1e300 and NaN are refused where they stand") {
  struct Case {
    const char *file, *old, *by, *found;
  };
  for (const Case& c :
       {Case{"ovens.toml", "\"90 °C\"", "\"90\"", "no unit"},
        Case{"ovens.toml", "\"90 °C\"", "90", "no unit"},
        Case{"kinds.toml", "mass = \"9.2 kg\"", "mass = \"-9.2 kg\"", "below zero"},
        Case{"kinds.toml", "mass = \"9.2 kg\"", "mass = \"1e300 kg\"", "larger than anything"},
        Case{"kinds.toml", "mass = \"9.2 kg\"", "mass = nan", "nan"},
        Case{"kinds.toml", "mass = \"9.2 kg\"", "mass = inf", "inf"},
        Case{"kinds.toml", "mass = \"9.2 kg\"", "mass = \"0 kg\"", "above zero"},
        Case{"ovens.toml", "\"900 mm\"", "\"0 mm\"", "zero"},
        Case{"ovens.toml", "[\"900 mm\", \"600 mm\", \"1200 mm\"]", "[\"900 mm\", \"600 mm\"]",
             "a list of 2"},
        Case{"ovens.toml", "[\"40 °C\", \"90 °C\"]", "[\"90 °C\", \"40 °C\"]", "settings"},
        Case{"ovens.toml", "wall = \"insulated_25mm\"", "wall = \"insulated_25\"", "nobody knows"},
        Case{"ovens.toml", "cutoff = true", "cutoff = \"yes\"", "cutoff = \"yes\""},
        Case{"spray.toml", "mixing = 0.3", "mixing = 3", "mixing = 3"},
        Case{"spray.toml", "\"5..10..15 %\"", "\"15..10..5 %\"", "a range that falls"},
        Case{"crew.toml", "\"strip\", \"mask\"", "\"strpi\", \"mask\"", "strpi"},
        Case{"crew.toml", "language = \"id\"", "language = \"pt\"", "which no sheet speaks"},
        Case{"crew.toml", "\"mon-fri 07:00-15:30\"", "\"mon-fri 15:30-07:00\"", "ends before it begins"},
        Case{"crew.toml", "\"mon-fri 07:00-15:30\"", "\"mno-fri 07:00-15:30\"", "where days belong"},
        Case{"crew.toml", "\"10:00-10:15\"", "\"10:15-10:00\"", "ends before it begins"},
        Case{"stations.toml", "due = 2027-06-15", "due = 2025-06-15", "due"},
        Case{"site.toml", "time_zone = \"Africa/Maputo\"", "time_zone = \"Africa/Maputto\"", "nobody knows"},
        Case{"site.toml", "lacquer = \"shop_varnish\"", "lacquer = \"shop_vanish\"", "nobody knows"},
        Case{"site.toml", "# weather = \"weather.epw\"", "weather = \"weather.epw\"", "no file here"},
        Case{"materials.toml", "like = \"isopropanol\"", "like = \"isopropanole\"", "nobody knows"},
        Case{"materials.toml", "thinner = \"shop_thinner\"", "thinner = \"thinner\"", "nobody knows"},
        Case{"kinds.toml", "like = \"telephone_field\"", "like = \"telefone_field\"", "nobody knows"},
        Case{"kinds.toml", "material = \"phenolic_moulded\"", "material = \"phenolic_molded\"",
             "nobody knows"},
        Case{"kinds.toml", "faces = 1 ", "faces = 3 ", "faces = 3"},
        Case{"kinds.toml", "treatment = \"mask\"", "treatment = \"masked\"", "masked"}}) {
    INFO(c.file, ": ", c.by);
    const Shop shop;
    shop.replace(c.file, c.old, c.by);
    const Problem problem = only_fault(shop);
    CHECK(problem.place.file == c.file);
    CHECK(problem.place.line > 0);
    CHECK(says(problem.found, c.found));
  }
}

TEST_CASE("lamps without distance or beam are refused, because nobody can say how hot a lit part becomes") {
  const Shop shop;
  shop.replace("ovens.toml",
               "# lamps = { count = 4, each = \"250 W\", distance = \"450 mm\", beam = \"60 deg\"",
               "lamps = { count = 4, each = \"250 W\"");
  const Proof proof = proofread(shop.path());
  CHECK(says(all_told(proof.faults), "without distance"));
  CHECK(says(all_told(proof.faults), "without beam"));
}

TEST_CASE("an oven without heater and lamps is refused, one that draws more than its supply is doubted") {
  const Shop shop;
  shop.replace("ovens.toml", "heater = \"2 kW\"", "heater = \"3 kW\"");
  const Proof doubted = proofread(shop.path());
  CHECK(doubted.faults.empty());
  CHECK(says(all_told(doubted.warnings), "3000 W"));
  shop.replace("ovens.toml", "heater = \"3 kW\"", "");
  CHECK(says(only_fault(shop).found, "neither heater nor lamps"));
}

TEST_CASE("a composition names known solvents and adds to 100 %") {
  const Shop shop;
  shop.replace("materials.toml", "# composition = { mineral_spirits", "composition = { mineral_spirit");
  CHECK(only_fault(shop).next == "Did you mean \"mineral_spirits\"?");
  shop.replace("materials.toml", "composition = { mineral_spirit = \"55 %\"",
               "composition = { mineral_spirits = \"40 %\"");
  CHECK(says(only_fault(shop).found, "85"));
}

TEST_CASE("contradictory limits of a lacquer are refused") {
  const Shop shop;
  shop.replace("materials.toml", "# hottest_surface = \"38 °C\"", "hottest_surface = \"8 °C\"");
  CHECK(says(only_fault(shop).found, "10 to 8 °C"));
}

TEST_CASE("a part limit far above what its material stands is refused unless it was measured") {
  const Shop shop;
  shop.replace("kinds.toml", "# limit = \"63 °C\"", "limit = \"300 °C\"");
  CHECK(says(only_fault(shop).found, "far above"));
  shop.replace("kinds.toml", "# limit_source = ", "limit_source = ");
  CHECK(proofread(shop.path()).faults.empty());
}

TEST_CASE("a limit with the shop's own measurement counts as measured, without it as doubtful") {
  const Shop shop;
  shop.replace("kinds.toml", "# limit = \"63 °C\"", "limit = \"63 °C\"");
  const auto limit = [&] {
    const auto workshop = read_workshop(shop.path());
    REQUIRE(workshop.ok());
    return equipment::find_part(*workshop->kinds.find("clinic_phone"), PartId("dial_plate"))->limit.value();
  };
  CHECK(limit().mark == Mark::doubtful);
  shop.replace("kinds.toml", "# limit_source = ", "limit_source = ");
  CHECK(limit().mark == Mark::measured);
  CHECK(says(limit().source, "hot plate"));
}

TEST_CASE("a kind takes over what it does not say, and its own figures lose the other's pedigree") {
  const Shop shop;
  const auto workshop = read_workshop(shop.path());
  REQUIRE(workshop.ok());
  const equipment::Kind& phone = *workshop->kinds.find("clinic_phone");
  const equipment::Kind& archetype = *workshop->kinds.find("telephone_field");
  CHECK(phone.like == KindId("telephone_field"));
  CHECK(phone.parts.size() == archetype.parts.size() + 1);
  CHECK(phone.mass.value == archetype.mass.value);
  CHECK(phone.parts.front().id == archetype.parts.front().id);
  const equipment::Kind& radio = *workshop->kinds.find("launch_radio");
  CHECK(radio.mass.value.typical.in(kilogram) == doctest::Approx(9.2));
  CHECK(radio.mass.mark == Mark::measured);
  CHECK(radio.length.mark == workshop->kinds.find("transceiver_portable_transistor")->length.mark);
}

TEST_CASE("a kind may be like a kind of the same folder, drop parts and change others") {
  const Shop shop;
  shop.append("kinds.toml", R"(
[kinds.ward_phone]
like = "clinic_phone"
drop = ["strap", "dial_plate"]
[kinds.ward_phone.parts.capacitor]
materials = ["wax_paraffin", "wax_micro"]
[kinds.ward_phone.minutes]
test = "25 min"
)");
  const auto workshop = read_workshop(shop.path());
  REQUIRE(workshop.ok());
  const equipment::Kind& ward = *workshop->kinds.find("ward_phone");
  CHECK(equipment::find_part(ward, PartId("strap")) == nullptr);
  CHECK(equipment::find_part(ward, PartId("dial_plate")) == nullptr);
  CHECK(equipment::find_part(ward, PartId("capacitor"))->materials.size() == 2);
  CHECK(ward.labour.at(equipment::Operation::test).hands_on.exact());
  CHECK(ward.labour.size() == 12);
}

TEST_CASE("kinds that go round in a circle are named in their order") {
  const Shop shop;
  shop.append("kinds.toml", "\n[kinds.a]\nlike = \"b\"\n[kinds.b]\nlike = \"a\"\n");
  const Proof proof = proofread(shop.path());
  REQUIRE(proof.faults.size() == 2);
  CHECK(says(proof.faults[0].found, "a is like b is like a"));
}

TEST_CASE("a dropped part that is not there and a name taken from an archetype are refused") {
  const Shop shop;
  shop.replace("kinds.toml", "# drop = [\"strap\"]", "drop = [\"strop\"]");
  CHECK(says(only_fault(shop).next, "strap"));
  const Shop other;
  other.append("kinds.toml", "\n[kinds.telephone_field]\nlike = \"handheld_set\"\n");
  CHECK(says(only_fault(other).found, "shipped archetype"));
}

TEST_CASE("a part without any plausible material is no fault of the file: the plan refuses its units") {
  const Shop shop;
  shop.replace("kinds.toml", "material = \"phenolic_moulded\"", "# nobody knows");
  const auto workshop = read_workshop(shop.path());
  REQUIRE(workshop.ok());
  CHECK(equipment::find_part(*workshop->kinds.find("clinic_phone"), PartId("dial_plate"))->materials.empty());
}

TEST_CASE("a shop folder is never written to") {
  const Shop shop;
  std::map<std::string, std::string> before;
  for (const auto& entry : std::filesystem::directory_iterator(shop.path())) {
    const std::string name = entry.path().filename().string();
    before[name] = shop.text(name);
  }
  (void)proofread(shop.path());
  std::size_t count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(shop.path())) {
    const std::string name = entry.path().filename().string();
    CHECK(shop.text(name) == before[name]);
    ++count;
  }
  CHECK(count == before.size());
}

TEST_CASE("property: no bytes in any file make the folder's reader stumble") {
  const Shop shop;
  const std::vector<std::string> names = {"site.toml", "ovens.toml", "kinds.toml",
                                          "queue.csv", "stock.csv",  "air.csv"};
  CHECK(rc::check([&](const std::vector<unsigned char>& bytes, unsigned which, unsigned cut) {
    const std::string& name = names[which % names.size()];
    const std::string whole = shop.text(name);
    const std::string garbage(bytes.begin(), bytes.end());
    shop.write(name, whole.substr(0, cut % (whole.size() + 1)) + garbage);
    (void)proofread(shop.path());
    shop.write(name, whole);
  }));
}

TEST_CASE(
    "a power supply must say what is always on, leave something, and know what each powered gun takes") {
  const auto found = [](const std::string& table, const std::string& gun) {
    const Shop shop;
    shop.append("site.toml", "\n[power]\n" + table);
    shop.append("spray.toml", gun);
    const auto workshop = read_workshop(shop.path());
    return workshop.ok() ? std::string("sound") : to_text(workshop.problems().front());
  };
  const std::string gun =
      "\n[guns.big]\nkind = \"hvlp\"\npower = true\nefficiency = \"50..60..70 %\"\nrate = \"0.2 L/min\"\n";
  const std::string sound = "gives = \"4 kW\"\nalways_on = \"600 W\"\n";
  CHECK(found(sound, "") == "sound");
  CHECK(found(sound, gun + "draws = \"1.1 kW\"\n") == "sound");
  CHECK(found(sound, gun).find("draws = \"1.1 kW\"") != std::string::npos);
  CHECK(found("gives = \"4 kW\"\n", "").find("always_on") != std::string::npos);
  CHECK(found("gives = \"4 kW\"\nalways_on = \"5 kW\"\n", "").find("leaves nothing") != std::string::npos);
  CHECK(found("gives = \"0 kW\"\nalways_on = \"0 W\"\n", "").find("zero") != std::string::npos);
}
