#pragma once

#include <string>

#include "core/quantity/range.h"

namespace dampward {

// How a number is known.
enum class Mark {
  read,      // seen in the named public source
  measured,  // by the shop itself
  computed,  // arithmetic on values that were read
  memory,    // of the named publication, not seen
  estimate,  // judgement; says what would settle it
  doubtful,  // sources disagree, or an order of magnitude only
};

// A number with its pedigree.
template <class T>
struct Figure {
  Range<T> value;
  Mark mark = Mark::estimate;
  std::string source;  // key in data/sources.csv, or the shop's own words
  std::string settle;  // the cheapest measurement that would settle an estimate
};

}  // namespace dampward
