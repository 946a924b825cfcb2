#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "adapters/files/table_reader.h"
#include "core/equipment/kind.h"
#include "core/materials/liquid.h"
#include "core/materials/material.h"
#include "core/quantity/figure.h"
#include "workbench/leaflet.h"

namespace dampward::files {

// The words that files use for the program's fixed choices.

inline constexpr Word<Mark> mark_words[] = {{"read", Mark::read},         {"measured", Mark::measured},
                                            {"computed", Mark::computed}, {"memory", Mark::memory},
                                            {"estimate", Mark::estimate}, {"doubtful", Mark::doubtful}};

inline constexpr Word<materials::Drying> drying_words[] = {{"surface", materials::Drying::surface},
                                                           {"porous", materials::Drying::porous},
                                                           {"deep", materials::Drying::deep}};

inline constexpr Word<materials::Isotherm> isotherm_words[] = {
    {"none", materials::Isotherm::none},
    {"wood", materials::Isotherm::wood},
    {"paper", materials::Isotherm::paper},
    {"bleached_fibre", materials::Isotherm::bleached_fibre}};

inline constexpr Word<materials::MouldFood> mould_words[] = {{"inert", materials::MouldFood::inert},
                                                             {"depends", materials::MouldFood::depends},
                                                             {"nutrient", materials::MouldFood::nutrient}};

inline constexpr Word<materials::OutBeforeBake> out_before_bake_words[] = {
    {"no", materials::OutBeforeBake::no},
    {"yes", materials::OutBeforeBake::yes},
    {"depends", materials::OutBeforeBake::depends}};

inline constexpr Word<materials::Method> method_words[] = {{"hand_gun", materials::Method::hand_gun},
                                                           {"power_gun", materials::Method::power_gun},
                                                           {"brush", materials::Method::brush}};

inline constexpr Word<workbench::HomeHeat> home_heat_words[] = {{"lamp_box", workbench::HomeHeat::lamp_box},
                                                                {"sun_box", workbench::HomeHeat::sun_box},
                                                                {"dry_box", workbench::HomeHeat::dry_box}};

// The word of a list that stands for a meaning; empty where none does.
template <class E, std::size_t N>
std::string_view word_of(const Word<E> (&words)[N], E meaning) {
  for (const auto& word : words) {
    if (word.meaning == meaning) return word.word;
  }
  return {};
}

inline const std::vector<std::string> soil_words = {
    "dust", "oil_grease", "fungus", "salts", "corrosion_products", "flux_rosin", "old_lacquer"};

inline const std::vector<std::string> skill_words = {
    "make_safe", "test", "strip", "clean", "mask", "oven", "spray", "brush", "touch_up", "mark", "assemble"};

}  // namespace dampward::files
