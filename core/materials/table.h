#pragma once

#include <cstddef>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/id.h"
#include "core/materials/liquid.h"
#include "core/materials/material.h"

namespace dampward::materials {

// Rows of one sort, found by their id and kept in the order they came in.
template <class Row>
class Table {
 public:
  Table() = default;
  explicit Table(std::vector<Row> rows) {
    for (Row& row : rows) put(std::move(row));
  }

  // Adds the row, or puts it in the place of the one with its id: a shop's own row rules over the shipped one.
  void put(Row row) {
    const auto [place, added] = places_.try_emplace(std::string(text(row.id)), rows_.size());
    if (added) {
      rows_.push_back(std::move(row));
    } else {
      rows_[place->second] = std::move(row);
    }
  }

  // nullptr: no such row.
  const Row* find(std::string_view id) const {
    const auto place = places_.find(id);
    return place == places_.end() ? nullptr : &rows_[place->second];
  }
  template <class Tag>
  const Row* find(const Id<Tag>& id) const {
    return find(std::string_view(id.text));
  }

  // All ids in order of the alphabet, for "did you mean".
  std::vector<std::string> ids() const {
    std::vector<std::string> all;
    all.reserve(places_.size());
    for (const auto& [id, place] : places_) all.push_back(id);
    return all;
  }

  const std::vector<Row>& rows() const { return rows_; }

 private:
  static std::string_view text(const std::string& id) { return id; }
  template <class Tag>
  static std::string_view text(const Id<Tag>& id) {
    return id.text;
  }

  std::vector<Row> rows_;
  std::map<std::string, std::size_t, std::less<>> places_;
};

using MaterialTable = Table<Material>;
using SolventTable = Table<Solvent>;
using LiquidTable = Table<Liquid>;
using LacquerTable = Table<Lacquer>;

}  // namespace dampward::materials
