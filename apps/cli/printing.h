#pragma once

#include "apps/cli/call.h"
#include "core/base/result.h"
#include "core/papers/words.h"

namespace dampward::cli {

// How pages are printed: on which paper, in which language.
struct Printing {
  papers::Paper paper;
  papers::Words words;
};

// As asked for with --paper and --lang. Problem: a paper or language there is not.
Result<Printing> printing_of(const Call& call);

}  // namespace dampward::cli
