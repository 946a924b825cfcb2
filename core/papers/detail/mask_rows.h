#pragma once

#include <string>
#include <vector>

#include "core/papers/flow.h"

namespace dampward::papers {

struct OnOff {
  std::string on, off;
};

// A pin's number, the words, and a tick for on and one for off; two items a line, under the names of the columns.
void mask_rows(const std::vector<std::string>& items, const OnOff& names, std::vector<Row>& rows);

}  // namespace dampward::papers
