#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/papers/words.h"

namespace dampward::files {

// The languages the sheets speak, ISO 639-1; the first is the one they were written in.
std::vector<std::string> sheet_languages();

// Their sentences in one of them. A sentence nobody has translated is a problem; the carried table has none.
Result<papers::Words> sheet_words(const std::string& language);

}  // namespace dampward::files
