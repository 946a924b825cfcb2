#pragma once

#include <compare>
#include <string>
#include <utility>

namespace dampward {

// A name that only fits what it names: Id<struct OvenTag> and Id<struct PartTag> are different types.
template <class Tag>
struct Id {
  std::string text;

  Id() = default;
  explicit Id(std::string name) : text(std::move(name)) {}
  bool empty() const { return text.empty(); }
  friend auto operator<=>(const Id&, const Id&) = default;
};

using MaterialId = Id<struct MaterialTag>;
using SolventId = Id<struct SolventTag>;
using LacquerId = Id<struct LacquerTag>;
using ThinnerId = Id<struct ThinnerTag>;
using CleanerId = Id<struct CleanerTag>;
using KindId = Id<struct KindTag>;
using PartId = Id<struct PartTag>;
using OvenId = Id<struct OvenTag>;
using GunId = Id<struct GunTag>;
using PersonId = Id<struct PersonTag>;
using StationId = Id<struct StationTag>;
using InstrumentId = Id<struct InstrumentTag>;
using LotId = Id<struct LotTag>;
using UnitId = Id<struct UnitTag>;  // a unit's serial, as written by the person
using HazardId = Id<struct HazardTag>;

}  // namespace dampward
