#include <doctest/doctest.h>

#include <filesystem>

#include "adapters/files/shop_folder.h"
#include "adapters/files/starter.h"
#include "adapters/files/text_file.h"
#include "tests/files/scratch_folder.h"

using namespace dampward;
using namespace dampward::files;

namespace {

constexpr const char* drawing =
    "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 20 10'><rect width='20' height='10'/></svg>";

// The starter folder with a kind of its own.
class Shop {
 public:
  Shop() {
    REQUIRE(start_folder(scratch_.path()).ok());
    std::filesystem::create_directory(scratch_.path() / "pictures");
    scratch_.write("pictures/set.svg", drawing);
  }
  void write(const std::string& name, std::string_view text) const { scratch_.write(name, text); }
  void kind(const std::string& lines) const {
    write("own.toml", "[kinds.set]\nlike = \"telephone_field\"\n" + lines);
  }
  Result<workbench::Workshop> read() const { return read_workshop(scratch_.path()); }
  std::string fault() const {
    const auto workshop = read();
    REQUIRE_FALSE(workshop.ok());
    return to_text(workshop.problems().front());
  }

 private:
  ScratchFolder scratch_;
};

bool says(const std::string& all, const std::string& words) {
  return all.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("a kind carries its picture and pins, and what is like it carries them too") {
  const Shop shop;
  shop.kind(
      "[kinds.set.picture]\nfile = \"pictures/set.svg\"\npins = [{ kind = \"never_coat\", part = \"crank\", "
      "left = 25, "
      "top = 50 }]\n[kinds.other]\nlike = \"set\"\n");
  const auto workshop = shop.read();
  REQUIRE(workshop.ok());
  for (const char* id : {"set", "other"}) {
    const equipment::Kind* kind = workshop->kinds.find(id);
    REQUIRE(kind->picture);
    CHECK(*kind->picture->bytes == drawing);
    REQUIRE(kind->picture->pins.size() == 1);
    const equipment::Pin& pin = kind->picture->pins.front();
    CHECK(pin.kind == equipment::PinKind::never_coat);
    CHECK(pin.part == PartId("crank"));
    CHECK(pin.across == doctest::Approx(0.25));
    CHECK(pin.down == doctest::Approx(0.5));
  }
}

TEST_CASE("a part that a kind drops takes its pin along") {
  const Shop shop;
  shop.kind(
      "[kinds.set.picture]\nfile = \"pictures/set.svg\"\npins = [{ kind = \"damp\", part = \"cord\", left = "
      "1, top = 2 "
      "}, { kind = \"damp\", part = \"ringer\", left = 3, top = 4 }]\n[kinds.other]\nlike = \"set\"\ndrop = "
      "[\"cord\"]\n");
  const auto workshop = shop.read();
  REQUIRE(workshop.ok());
  const auto& pins = workshop->kinds.find("other")->picture->pins;
  REQUIRE(pins.size() == 1);
  CHECK(pins.front().part == PartId("ringer"));
}

TEST_CASE("a picture of its own loses the pins of the other's") {
  const Shop shop;
  shop.kind(
      "[kinds.set.picture]\nfile = \"pictures/set.svg\"\npins = [{ kind = \"damp\", part = \"cord\", left = "
      "1, top = 2 "
      "}]\n[kinds.other]\nlike = \"set\"\n[kinds.other.picture]\nfile = \"pictures/set.svg\"\n");
  CHECK(shop.read()->kinds.find("other")->picture->pins.empty());
}

TEST_CASE(
    "a picture that is missing, lies elsewhere, is too large or is no picture is refused where it is named") {
  const Shop shop;
  shop.write("pictures/words.svg", "a shopping list");
  shop.write("pictures/large.png", "\x89PNG\r\n\x1a\n" + std::string(8'100'000, 'x'));
  const std::pair<const char*, const char*> all[] = {{"pictures/none.svg", "no such file"},
                                                     {"../set.svg", "out of the shop folder"},
                                                     {"/etc/hostname", "out of the shop folder"},
                                                     {"pictures", "a folder"},
                                                     {"pictures/large.png", "9 MB"},
                                                     {"pictures/words.svg", "which is no picture"}};
  for (const auto& [file, why] : all) {
    shop.kind("[kinds.set.picture]\nfile = \"" + std::string(file) + "\"\n");
    const std::string fault = shop.fault();
    INFO(fault);
    CHECK(says(fault, why));
    CHECK(says(fault, "own.toml"));
  }
}

TEST_CASE("a pin of an unknown kind or part, off the picture or half given is refused") {
  const Shop shop;
  const std::pair<const char*, const char*> all[] = {
      {"kind = \"maks\", part = \"cord\", left = 1, top = 2", "mask"},
      {"kind = \"mask\", part = \"corde\", left = 1, top = 2", "cord"},
      {"kind = \"mask\", part = \"cord\", left = 120, top = 2", "120"},
      {"kind = \"mask\", part = \"cord\", left = 12", "top"},
      {"kind = \"mask\", part = \"cord\", left = 12, top = 3, right = 4", "right"}};
  for (const auto& [pin, why] : all) {
    shop.kind("[kinds.set.picture]\nfile = \"pictures/set.svg\"\npins = [{ " + std::string(pin) + " }]\n");
    const std::string fault = shop.fault();
    INFO(fault);
    CHECK(says(fault, why));
  }
}

TEST_CASE("a piece of mask of no shape or size, wider than long, or a ring that is all hole is refused") {
  const Shop shop;
  const std::pair<const char*, const char*> all[] = {
      {"size = \"30 mm\", width = \"12 mm\", material = \"card\"", "shape"},
      {"shape = \"oval\", size = \"30 mm\", material = \"card\"", "oval"},
      {"shape = \"disc\", material = \"card\"", "size"},
      {"shape = \"disc\", size = \"0 mm\", material = \"card\"", "zero"},
      {"shape = \"rectangle\", size = \"30 mm\", width = \"40 mm\", material = \"card\"",
       "more than its size"},
      {"shape = \"ring\", size = \"30 mm\", width = \"30 mm\", material = \"card\"", "hole"},
      {"shape = \"disc\", size = \"30 mm\"", "material"},
      {"shape = \"disc\", size = \"30 mm\", count = 0, material = \"card\"", "count"}};
  for (const auto& [cut, why] : all) {
    shop.kind("[kinds.set.parts.terminals]\ncut = { " + std::string(cut) + " }\n");
    const std::string fault = shop.fault();
    INFO(fault);
    CHECK(says(fault, why));
  }
}
