#pragma once

#include <string>

#include "apps/cli/call.h"
#include "core/base/result.h"
#include "core/papers/page.h"
#include "core/papers/words.h"

namespace dampward::cli {

// How pages are printed: on which paper, in which language.
struct Printing {
  papers::Paper paper;
  papers::Words words;
};

// As asked for with --paper and --lang. Problem: a paper or language there is not.
Result<Printing> printing_of(const Call& call);

// What the foot of a sheet shows: four digits that stay the same while its marks do.
std::string sheet_id(const papers::Pages& pages);

}  // namespace dampward::cli
