#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/referee/judge.h"

namespace dampward::referee_json {

// A file's text and the name a person knows it by.
struct Written {
  std::string_view text;
  std::string shown;
};

// Every rule of docs/formats/timetable.md that the answer breaks, from the two texts alone; or what makes them unreadable.
Result<std::vector<referee::Violation>> verdict(const Written& problem, const Written& answer);

}  // namespace dampward::referee_json
