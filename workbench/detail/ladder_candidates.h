#pragma once

#include <string>
#include <vector>

#include "workbench/plan.h"
#include "workbench/workshop.h"

namespace dampward::workbench {

// One value for one path of the shop's files, as a what-if takes them.
struct Piece {
  std::string path, value;
};

// A change that may let a refused unit in.
struct Candidate {
  std::string family;         // "fan": of one family only the first that opens the way counts
  std::vector<Piece> pieces;  // made at once
  std::string words;          // "62 m³/min of fresh air instead of 45"
  shop::Cost cost = shop::Cost::measuring;
  double amount = 1;  // how many times the cost
};

// What one could change about a barrier; within a family the smaller change first.
std::vector<Candidate> ladder_candidates(const Refusal& refusal, const Workshop& workshop);

}  // namespace dampward::workbench
