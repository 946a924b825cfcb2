#pragma once

#include <optional>
#include <span>
#include <string>

#include "core/drying/oven_piece.h"
#include "core/drying/set_point.h"
#include "core/shop/shop.h"

namespace dampward::drying {

// Why a load is not baked.
struct NoBake {
  enum class Why {
    refused,        // a part nobody may heat
    needs_no_heat,  // a part too weak for any bake in this oven
    oven,           // this oven cannot do it: lamps unknown, too weak, too hot, air too damp
  };
  Why why = Why::refused;
  KindId kind;
  PartId part;
  std::string reason, settle;
};

// The part of a load that allows least, and whose it is.
struct Weakest {
  const OvenPiece* piece = nullptr;
  const OvenPart* part = nullptr;
};
Weakest weakest_of(std::span<const LoadUnits> load);

// The first part of a load that nobody may heat; nothing where there is none.
std::optional<NoBake> refusal_of(std::span<const LoadUnits> load);

// This oven cannot do it.
NoBake oven_refuses(const shop::Oven& oven, const std::string& why, std::string settle);

// Why `highest_set_point` found none: the weakest part, the oven's settings, or its heat.
NoBake no_set_point(const Weakest& weakest, const OvenExcess& excess, const shop::Oven& oven,
                    Temperature reach);

}  // namespace dampward::drying
