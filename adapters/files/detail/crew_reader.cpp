#include <algorithm>

#include "adapters/files/detail/shop_readers.h"
#include "adapters/files/messages.h"
#include "adapters/files/table_reader.h"
#include "adapters/files/week_hours.h"
#include "adapters/files/words.h"
#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files::detail {
namespace {

using shop::Instrument;
using shop::Person;
using shop::Station;

void report(TableReader& table, std::string_view key, const Problem& problem) {
  table.proof().faults.push_back(
      {table.place(key), format("{} = {}", key, problem.found), problem.expected, problem.next});
}

Person read_person(const TomlNode& node, Proof& proof) {
  TableReader table(node, format("[crew.{}]", node.key), proof);
  Person person;
  person.id = PersonId(node.key);
  person.name = table.text_or("name", node.key);
  if (!table.has("skills")) table.missing("skills", "a list such as [\"test\", \"strip\"]");
  person.skills = table.known_texts("skills", skill_words, "skill");
  // An empty list: ill or away. A missing one would only be forgotten.
  if (!table.has("shifts")) table.missing("shifts", "[\"mon-fri 07:00-15:30\"], or [] for somebody away");
  const std::vector<std::string> shifts = table.texts("shifts");
  if (shifts.empty()) {
    person.shifts = {};
  } else if (const auto hours = week_hours_from_text(shifts)) {
    person.shifts = *hours;
  } else {
    report(table, "shifts", hours.problems().front());
  }
  for (const std::string& text : table.texts("breaks")) {
    if (const auto hours = daily_hours_from_text(text)) {
      person.breaks.push_back(*hours);
    } else {
      report(table, "breaks", hours.problems().front());
    }
  }
  const std::vector<std::string> languages = sheet_languages();
  person.language = table.text_or("language", "");
  if (table.has("language") &&
      std::find(languages.begin(), languages.end(), person.language) == languages.end())
    table.fault("language", "which no sheet speaks", "one of " + listed(languages));
  table.finish();
  return person;
}

Station read_station(const TomlNode& node, Proof& proof) {
  TableReader table(node, format("[stations.{}]", node.key), proof);
  Station station;
  station.id = StationId(node.key);
  station.name = table.text_or("name", node.key);
  station.places = table.whole("places", 1, 100).value_or(1);
  if (!table.has("serves")) table.missing("serves", "a list such as [\"strip\", \"assemble\"]");
  station.serves = table.known_texts("serves", skill_words, "skill");
  table.finish();
  return station;
}

Instrument read_instrument(const TomlNode& node, Proof& proof) {
  TableReader table(node, format("[instruments.{}]", node.key), proof);
  Instrument instrument;
  instrument.id = InstrumentId(node.key);
  instrument.name = table.text_or("name", node.key);
  instrument.measures = table.needed_text("measures");
  instrument.uncertainty = table.text_or("uncertainty", "");
  instrument.calibrated = table.date("calibrated");
  instrument.calibration_due = table.date("due");
  table.finish();
  return instrument;
}

}  // namespace

void read_crew(const ShopDocument& document, shop::Shop& shop, Proof& proof) {
  for (const TomlNode* node : document.entries("crew", proof)) shop.crew.push_back(read_person(*node, proof));
  if (shop.crew.empty() && document.complete) {
    proof.faults.push_back({{"crew.toml"}, "nobody in the crew", "a table [crew.role] for each person", ""});
  }
  for (const TomlNode* node : document.entries("stations", proof))
    shop.stations.push_back(read_station(*node, proof));
  for (const TomlNode* node : document.entries("instruments", proof)) {
    shop.instruments.push_back(read_instrument(*node, proof));
  }
}

}  // namespace dampward::files::detail
