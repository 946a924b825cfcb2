#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <random>
#include <string>
#include <vector>

// Timetable problems made around a plan: the plan is laid out first, minute by minute, and the rules are then drawn around it,
// so that every problem has at least one answer in which every unit has its place.

struct Planted {
  nlohmann::json problem;
  nlohmann::json answer;  // the plan it was made around
};

struct PlantedKind {
  int most_units = 6;
  bool tight = false;      // every longest gap is under 20 minutes
  bool under_way = false;  // some of the plan has begun already and is fixed
};

// The same seed gives the same problem on every machine.
Planted planted(unsigned seed, const PlantedKind& kind);
