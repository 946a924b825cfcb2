#include "adapters/files/detail/shop_readers.h"
#include "adapters/files/table_reader.h"
#include "adapters/files/time_zone.h"

namespace dampward::files::detail {
namespace {

using shop::Storage;

constexpr Word<Storage> storage_words[] = {{"open_shed", Storage::open_shed},
                                           {"closed_room", Storage::closed_room},
                                           {"closed_case", Storage::closed_case},
                                           {"heated_case", Storage::heated_case},
                                           {"air_conditioned", Storage::air_conditioned}};
constexpr Word<bool> valve_words[] = {{"stay", true}, {"come_out", false}};

void read_time_zone(TableReader& table, shop::Site& site) {
  site.time_zone = table.needed_text("time_zone");
  if (site.time_zone.empty()) return;
  const auto clock = wall_clock_of(site.time_zone);
  if (clock) {
    site.clock = *clock;
    return;
  }
  Problem problem = clock.problems().front();
  problem.place = table.place("time_zone");
  problem.found = "time_zone = " + problem.found;
  table.proof().faults.push_back(std::move(problem));
}

// Sea level lies below some places: an altitude may be negative, unlike every other length.
Length read_altitude(TableReader& table) {
  const TomlNode* value = table.node("altitude");
  if (value == nullptr) {
    table.missing("altitude", "\"12 m\", above the sea");
    return {};
  }
  const bool below = value->type == TomlNode::Type::text && value->text.starts_with('-');
  if (!below) return table.quantity<Length>("altitude").value_or(Length{});
  const auto depth = quantity_from_text<Length>(std::string_view(value->text).substr(1));
  if (depth && *depth < 500 * metre) return -*depth;
  table.fault("altitude", "which lies below every place on land", "a height above the sea such as \"12 m\"");
  return {};
}

}  // namespace

void read_site(const ShopDocument& document, const std::filesystem::path& folder, shop::Shop& shop,
               Proof& proof) {
  const TomlNode* node = document.single("site", proof);
  if (node == nullptr) {
    if (!document.complete) return;
    proof.faults.push_back({{"site.toml"},
                            "no table [site] in any file",
                            "[site] with name, time_zone, altitude and lacquer",
                            ""});
    return;
  }
  TableReader table(*node, "[site]", proof);
  shop::Site& site = shop.site;
  site.name = table.needed_text("name");
  read_time_zone(table, site);
  site.altitude = read_altitude(table);
  site.weather_file = table.text_or("weather", "");
  std::error_code error;
  if (!site.weather_file.empty() && !std::filesystem::is_regular_file(folder / site.weather_file, error)) {
    table.fault("weather", "which is no file here", "a weather file in the shop folder",
                "Copy the file there, or remove the line: the plan then rests on air.csv alone.");
  }
  site.salt = table.quantity<DepositionRate>("salt");
  site.surf_distance = table.quantity<Length>("surf_distance");
  std::vector<std::string> known;
  for (const auto& word : storage_words) known.emplace_back(word.word);
  for (const std::string& text : table.known_texts("storage", known, "way of storing")) {
    for (const auto& word : storage_words) {
      if (word.word == text) site.storage.push_back(word.meaning);
    }
  }
  site.lifts = table.quantity<Mass>("lifts");
  shop.lacquer = LacquerId(table.needed_text("lacquer"));
  shop.valves_stay = table.choice("valves", valve_words).value_or(true);
  if (const auto rating = table.quantity<Temperature>("masking_tape_rated")) {
    shop.tape_rating = *rating;
  }
  table.finish();
}

}  // namespace dampward::files::detail
