#include <algorithm>

#include "adapters/files/detail/kind_heritage.h"
#include "adapters/files/detail/part_reader.h"
#include "adapters/files/detail/shop_readers.h"
#include "adapters/files/table_reader.h"
#include "core/base/format.h"
#include "core/equipment/contradictions.h"

namespace dampward::files::detail {
namespace {

using equipment::CoatingWay;
using equipment::Kind;
using equipment::Labour;
using equipment::Operation;

constexpr Word<CoatingWay> way_words[] = {{"spray_stripped", CoatingWay::spray_stripped},
                                          {"brush_assembled", CoatingWay::brush_assembled}};
constexpr Word<Operation> operation_words[] = {{"test", Operation::test},
                                               {"strip", Operation::strip},
                                               {"clean", Operation::clean},
                                               {"mask", Operation::mask},
                                               {"load", Operation::load},
                                               {"unload", Operation::unload},
                                               {"coat", Operation::coat},
                                               {"unmask", Operation::unmask},
                                               {"touch_up", Operation::touch_up},
                                               {"mark", Operation::mark},
                                               {"reassemble", Operation::reassemble},
                                               {"retest", Operation::retest}};

constexpr Word<equipment::PinKind> pin_words[] = {{"mask", equipment::PinKind::mask},
                                                  {"damp", equipment::PinKind::damp},
                                                  {"weak", equipment::PinKind::weak},
                                                  {"brush", equipment::PinKind::brush},
                                                  {"never_coat", equipment::PinKind::never_coat}};

void read_size(TableReader& table, Kind& kind, const Pedigree& pedigree) {
  if (!table.has("size")) table.missing("size", "[\"320 mm\", \"85 mm\", \"110 mm\"], the outer box");
  const auto size = table.ranges<Length>("size", 3);
  if (size.empty()) return;
  kind.length = pedigree.figure(size[0], "size");
  kind.width = pedigree.figure(size[1], "size");
  kind.height = pedigree.figure(size[2], "size");
}

template <class T>
Figure<T> needed_figure(TableReader& table, const Pedigree& pedigree, std::string_view key,
                        std::string_view mark) {
  return pedigree.figure(table.needed_range<T>(key).value_or(Range<T>{}), mark);
}

Labour labour_of(const Range<Duration>& time, int people) {
  return {time, people, time.exact() ? Mark::measured : Mark::estimate, "time three units with a stopwatch"};
}

// [kinds.<id>.minutes]: a time, or { time = "…", people = 2 }.
void read_minutes(TableReader& table, Kind& kind) {
  const TomlNode* node = table.table("minutes");
  if (node == nullptr) {
    if (!table.has("minutes")) table.missing("minutes", format("a table [kinds.{}.minutes]", kind.id.text));
    return;
  }
  TableReader minutes(*node, format("[kinds.{}.minutes]", kind.id.text), table.proof());
  for (const auto& operation : operation_words) {
    const TomlNode* value = minutes.node(operation.word);
    if (value == nullptr) {
      minutes.missing(operation.word, looks_like<Duration>());
    } else if (value->type == TomlNode::Type::table) {
      TableReader labour(*value, format("{} of {}", operation.word, minutes.name()), table.proof());
      const auto time = labour.needed_range<Duration>("time");
      const int people = labour.whole("people", 1, 12).value_or(1);
      if (time) kind.labour[operation.meaning] = labour_of(*time, people);
      labour.finish();
    } else if (const auto time = minutes.range<Duration>(operation.word)) {
      kind.labour[operation.meaning] = labour_of(*time, 1);
    }
  }
  minutes.finish();
}

void read_parts(TableReader& table, Kind& kind, const PartVocabulary& words) {
  const TomlNode* parts = table.table("parts");
  if (parts == nullptr) {
    if (!table.has("parts")) table.missing("parts", format("tables [kinds.{}.parts.name]", kind.id.text));
    return;
  }
  for (const TomlNode& part : parts->items) {
    if (part.type != TomlNode::Type::table) {
      table.proof().faults.push_back({part.key_place,
                                      format("{} = {} among the parts", part.key, described(part)),
                                      format("a table [kinds.{}.parts.{}]", kind.id.text, part.key), ""});
    } else {
      kind.parts.push_back(read_part(part, kind.id.text, words, table.proof()));
    }
  }
}

// picture = { file = "pictures/radio.svg", pins = [{ kind = "mask", part = "sockets", left = 12, top = 40 }] }
void read_picture(TableReader& table, Kind& kind) {
  const TomlNode* node = table.table("picture");
  if (node == nullptr) return;
  std::vector<std::string> parts;
  for (const equipment::Part& part : kind.parts) parts.push_back(part.id.text);
  TableReader reader(*node, format("[kinds.{}.picture]", kind.id.text), table.proof());
  equipment::Picture picture;
  picture.file = reader.needed_text("file");
  for (const TomlNode* item : reader.tables("pins")) {
    TableReader pin(*item, "a pin of " + reader.name(), table.proof());
    for (const char* key : {"kind", "part", "left", "top"}) {
      if (!pin.has(key))
        pin.missing(key,
                    "kind = \"mask\", part = \"sockets\", left = 12, top = 40 (per cent of the picture)");
    }
    const auto what = pin.choice("kind", pin_words);
    const auto part = pin.known_text("part", parts, "part");
    const auto left = pin.number("left", 0, 100), top = pin.number("top", 0, 100);
    pin.finish();
    if (what && part && left && top) picture.pins.push_back({*what, PartId(*part), *left / 100, *top / 100});
  }
  const auto care = std::count_if(picture.pins.begin(), picture.pins.end(), [](const equipment::Pin& pin) {
    return pin.kind != equipment::PinKind::mask;
  });
  if (care > 26)
    reader.fault("pins", format("{} of them no mask's", care), "at most 26 beside the masks, a letter each");
  reader.finish();
  kind.picture = std::move(picture);
}

Kind read_kind(const TomlNode& node, const std::string& like, const PartVocabulary& words, Proof& proof) {
  const std::size_t faults_before = proof.faults.size();
  TableReader table(node, format("[kinds.{}]", node.key), proof);
  const Pedigree pedigree(table);
  Kind kind;
  kind.id = KindId(node.key);
  kind.like = KindId(like);
  for (const char* settled : {"like", "drop"}) table.node(settled);
  kind.name = table.text_or("name", node.key);
  read_size(table, kind, pedigree);
  kind.mass = needed_figure<Mass>(table, pedigree, "mass", "mass");
  kind.spray_area_stripped = needed_figure<Area>(table, pedigree, "spray_area_stripped", "spray_area");
  kind.spray_area_assembled = needed_figure<Area>(table, pedigree, "spray_area_assembled", "spray_area");
  kind.contacts = needed_figure<double>(table, pedigree, "contacts", "contacts");
  kind.masking = needed_figure<Duration>(table, pedigree, "masking", "masking");
  if (!table.has("way")) table.missing("way", "spray_stripped or brush_assembled");
  kind.usual_way = table.choice("way", way_words).value_or(CoatingWay::brush_assembled);
  kind.way_reason = table.text_or("way_reason", "");
  for (std::string& part : table.texts("heavy_lump")) kind.heavy_lump.emplace_back(std::move(part));
  kind.airtight = table.truth("airtight", false);
  kind.semiconductors = table.truth("semiconductors", false);
  kind.transmits = table.truth("transmits", false);
  read_minutes(table, kind);
  read_parts(table, kind, words);
  read_picture(table, kind);
  table.finish();
  if (proof.faults.size() > faults_before)
    return kind;  // contradictions of a half-read kind would only mislead
  for (std::string sentence : equipment::contradictions(kind)) {
    if (sentence.ends_with('.')) sentence.pop_back();
    proof.faults.push_back({node.key_place, format("in [kinds.{}]: {}", node.key, sentence),
                            "figures that agree with each other", ""});
  }
  return kind;
}

}  // namespace

void read_kinds(const ShopDocument& document, const std::vector<TomlNode>& archetypes,
                workbench::Workshop& workshop, Proof& proof) {
  PartVocabulary words{workshop.materials, workshop.materials.ids(), {}};
  for (const hazards::Hazard& hazard : workshop.hazards) words.hazard_ids.push_back(hazard.id.text);

  KindHeritage heritage;
  for (const TomlNode& archetype : archetypes) heritage.add(archetype);
  std::vector<const TomlNode*> own = document.entries("kinds", proof);
  for (const TomlNode* kind : own) {
    const bool taken = std::any_of(archetypes.begin(), archetypes.end(),
                                   [&](const TomlNode& archetype) { return archetype.key == kind->key; });
    if (taken) {
      proof.faults.push_back(
          {kind->key_place, format("[kinds.{}], the name of a shipped archetype", kind->key),
           "a name of your own", format("Name it otherwise and say like = \"{}\".", kind->key)});
    }
    heritage.add(*kind);
  }

  for (const TomlNode& archetype : archetypes) workshop.kinds.put(read_kind(archetype, "", words, proof));
  for (const TomlNode* kind : own) {
    const auto complete = heritage.complete(*kind, proof);
    if (!complete) continue;
    const TomlNode* like = kind->find("like");
    const bool named = like != nullptr && like->type == TomlNode::Type::text;
    if (like != nullptr && !named) {
      proof.faults.push_back({like->place, "like = " + described(*like), "the name of a kind in quotes", ""});
      continue;
    }
    workshop.kinds.put(read_kind(*complete, named ? like->text : "", words, proof));
  }
}

}  // namespace dampward::files::detail
