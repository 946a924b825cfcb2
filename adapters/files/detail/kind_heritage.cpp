#include "adapters/files/detail/kind_heritage.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files::detail {
namespace {

TomlNode* find_in(TomlNode& table, std::string_view key) {
  return const_cast<TomlNode*>(std::as_const(table).find(key));
}

void erase(TomlNode& table, std::string_view key) {
  std::erase_if(table.items, [&](const TomlNode& item) { return item.key == key; });
}

void forget_mark(TomlNode& table, std::string_view key) {
  if (TomlNode* marks = find_in(table, "marks")) erase(*marks, key);
}

// Takes off `base` what must not survive beside the figures of `over`.
void make_way_for_figures(TomlNode& base, const TomlNode& over) {
  for (const TomlNode& item : over.items) {
    forget_mark(base, item.key);
    if (item.key.starts_with("spray_area")) forget_mark(base, "spray_area");
  }
}

// Pins stand on the picture they were set on.
void make_way_for_picture(TomlNode& base, const TomlNode& over) {
  if (over.find("picture") != nullptr) erase(base, "picture");
}

void make_way_for_part(TomlNode& base, const TomlNode& over) {
  make_way_for_figures(base, over);
  if (over.find("material") != nullptr || over.find("materials") != nullptr) {
    erase(base, "material");
    erase(base, "materials");
  }
  if (over.find("cut") != nullptr) erase(base, "cut");
  if (over.find("limit") != nullptr) {
    for (const char* key : {"limit", "limit_source", "margin"}) erase(base, key);
  }
}

// A part that is not there has no pin.
void drop_pins(TomlNode& base, const std::string& part) {
  TomlNode* picture = find_in(base, "picture");
  TomlNode* pins = picture == nullptr ? nullptr : find_in(*picture, "pins");
  if (pins == nullptr) return;
  std::erase_if(pins->items, [&](const TomlNode& pin) {
    const TomlNode* named = pin.find("part");
    return named != nullptr && named->text == part;
  });
}

void drop_part(TomlNode& base, const TomlNode& named, Proof& proof) {
  TomlNode* parts = find_in(base, "parts");
  std::vector<std::string> known;
  if (parts != nullptr) {
    for (const TomlNode& part : parts->items) known.push_back(part.key);
  }
  if (std::find(known.begin(), known.end(), named.text) == known.end()) {
    proof.faults.push_back({named.place, format("drop of \"{}\", a part that is not there", named.text),
                            known.empty() ? "a part" : "one of " + listed(known),
                            did_you_mean(named.text, known)});
    return;
  }
  erase(*parts, named.text);
  drop_pins(base, named.text);

  if (TomlNode* lump = find_in(base, "heavy_lump")) {
    std::erase_if(lump->items, [&](const TomlNode& item) { return item.text == named.text; });
  }
}

void drop_parts(TomlNode& base, const TomlNode& over, Proof& proof) {
  const TomlNode* drop = over.find("drop");
  if (drop == nullptr) return;
  if (drop->type == TomlNode::Type::text) {
    drop_part(base, *drop, proof);
    return;
  }
  for (const TomlNode& named : drop->items) drop_part(base, named, proof);
}

}  // namespace

std::vector<std::string> KindHeritage::ids() const {
  std::vector<std::string> all;
  all.reserve(kinds_.size());
  for (const auto& [id, node] : kinds_) all.push_back(id);
  return all;
}

std::optional<TomlNode> KindHeritage::complete(const TomlNode& kind, Proof& proof) const {
  std::vector<std::string> way;
  return complete(kind, way, proof);
}

std::optional<TomlNode> KindHeritage::complete(const TomlNode& kind, std::vector<std::string>& way,
                                               Proof& proof) const {
  const TomlNode* like = kind.find("like");
  if (like == nullptr || like->type != TomlNode::Type::text) return kind;
  way.push_back(kind.key);
  if (std::find(way.begin(), way.end(), like->text) != way.end()) {
    way.push_back(like->text);
    std::string circle;
    for (const std::string& step : way) circle += (circle.empty() ? "" : " is like ") + step;
    proof.faults.push_back({like->place, format("kinds that go round in a circle: {}", circle),
                            "kinds that lead back to an archetype", "Change one of their \"like\" lines."});
    return std::nullopt;
  }
  const auto found = kinds_.find(like->text);
  if (found == kinds_.end()) {
    const std::vector<std::string> known = ids();
    proof.faults.push_back({like->place, format("like = \"{}\", a kind nobody knows", like->text),
                            "one of " + listed(known), did_you_mean(like->text, known)});
    return std::nullopt;
  }
  auto base = complete(*found->second, way, proof);
  if (!base) return std::nullopt;

  erase(*base, "like");
  erase(*base, "drop");
  make_way_for_figures(*base, kind);
  make_way_for_picture(*base, kind);
  drop_parts(*base, kind, proof);
  const TomlNode* own_parts = kind.find("parts");
  TomlNode* base_parts = find_in(*base, "parts");
  if (own_parts != nullptr && base_parts != nullptr) {
    for (const TomlNode& part : own_parts->items) {
      if (TomlNode* old = find_in(*base_parts, part.key)) make_way_for_part(*old, part);
    }
  }
  return joined(*base, kind);
}

}  // namespace dampward::files::detail
