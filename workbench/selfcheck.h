#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/base/problem.h"
#include "core/base/result.h"

namespace dampward::workbench {

// A value somebody printed, and what must be put into our model to meet it. One line of data/published.
struct PublishedRow {
  Place place;
  std::string id;        // its own for ever; no two rows share one
  std::string model;     // which model it tests
  std::string quantity;  // one that docs/validation.md explains
  std::string inputs;    // "t_c=25;rh_pct=80": unit in the name
  std::string unit;
  double published = 0;
  double tolerance = 0;  // in the unit, or a share of the published value
  bool relative = false;
  std::string tolerance_reason;
  std::string source;
  bool read = false;  // somebody saw the source; else the value comes from memory and proves nothing
  std::string note;
};

// One published value met by our model, or missed.
struct Check {
  std::string id, model, quantity, inputs, unit;
  double published = 0;
  double computed = 0;
  double difference = 0;  // computed − published
  double tolerance = 0;   // in the unit
  bool within = false;    // false as well where `computed` is no number
  std::string tolerance_reason, source, note;
  bool read = false;
};

struct SelfCheck {
  int rows = 0;               // checks whose source was read
  int from_memory = 0;        // the others: shown, never counted on
  int out_of_tolerance = 0;   // among the read ones
  std::vector<Check> checks;  // in the order of the rows
};

// Asks the program's own models for every published value. Problems: a quantity no model computes, inputs
// missing, misspelt or left over, an id used twice, a tolerance that is not above zero, a row without source or
// reason.
Result<SelfCheck> selfcheck(std::span<const PublishedRow> rows);

// docs/validation.md: what was met, how closely and why so close, model by model. Markdown that ends in a
// newline.
std::string validation_page(const SelfCheck& check);

}  // namespace dampward::workbench
