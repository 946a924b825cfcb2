#include "adapters/files/detail/json_answers.h"
#include "adapters/files/json_documents.h"
#include "adapters/files/words.h"
#include "workbench/mix_answer.h"

namespace dampward::files {
namespace {

using detail::percent_json;
using detail::put_or_why;

constexpr Word<coating::MixGate::Viscosity> viscosity_words[] = {
    {"not_measured", coating::MixGate::Viscosity::not_measured},
    {"outside_the_cup", coating::MixGate::Viscosity::outside_the_cup},
    {"too_thin", coating::MixGate::Viscosity::too_thin},
    {"fits", coating::MixGate::Viscosity::fits},
    {"too_thick", coating::MixGate::Viscosity::too_thick}};

constexpr Word<coating::MixGate::Film> film_words[] = {{"not_measured", coating::MixGate::Film::not_measured},
                                                       {"too_thin", coating::MixGate::Film::too_thin},
                                                       {"fits", coating::MixGate::Film::fits}};

Json work_json(const workbench::MixWork& work) {
  return {{"what", work.what},
          {"count", work.count},
          {"method", std::string(word_of(method_words, work.method))},
          {"area_m2", range_json(work.area, square_metre, 3)},
          {"ready_l", range_json(work.ready, litre, 3)},
          {"lacquer_l", range_json(work.lacquer, litre, 3)},
          {"thinner_l", range_json(work.thinner, litre, 3)}};
}

Json way_json(const workbench::MixWay& way) {
  return {{"method", std::string(word_of(method_words, way.method))},
          {"coats", way.film.coats},
          {"thinner_parts", rounded(way.views.thinner_parts, 3)},
          {"film_um", range_json(way.film.film, micrometre, 1)},
          {"dry_coat_um", range_json(way.film.dry_coat, micrometre, 1)},
          {"wet_coat_um", range_json(way.film.wet_coat, micrometre, 1)},
          {"solids_pct", percent_json(way.film.solids)},
          {"non_volatile_pct", percent_json(way.views.non_volatile)},
          {"published_least_pct", rounded(way.views.published_least.percent(), 1)},
          {"parts_within_published", rounded(way.views.parts_within_published, 3)},
          {"trade_non_volatile_pct", percent_json(way.trade_non_volatile)},
          {"below_published", way.views.disagree},
          {"view", way.views.view},
          {"viscosity", std::string(word_of(viscosity_words, way.gate.viscosity))},
          {"film", std::string(word_of(film_words, way.gate.film))},
          {"passed", way.gate.passed()},
          {"gate", way.gate.words}};
}

}  // namespace

std::string mix_json(const workbench::MixAnswer& answer) {
  Json works = Json::array(), ways = Json::array();
  for (const auto& work : answer.works) works.push_back(work_json(work));
  for (const auto& way : answer.ways) ways.push_back(way_json(way));
  Json json = {{"verb", "mix"},
               {"basis", answer.basis},
               {"lacquer", answer.lacquer},
               {"thinner", answer.thinner},
               {"ready_l", range_json(answer.ready, litre, 3)},
               {"lacquer_l", range_json(answer.lacquer_litres, litre, 3)},
               {"thinner_l", range_json(answer.thinner_litres, litre, 3)},
               {"works", works},
               {"ways", ways}};
  put_or_why(json, "pot_life_h",
             answer.pot_life ? Json(rounded(answer.pot_life->in(hour), 2)) : Json(nullptr),
             "one part: what is left in a closed can keeps; what stands open overnight is thrown away");
  json["left_out"] = detail::left_out_json(answer.left_out);
  json["warnings"] = answer.warnings;
  json["cautions"] = detail::cautions_json(answer.cautions);
  json["faults"] = Json::array();
  return document(json);
}

}  // namespace dampward::files
