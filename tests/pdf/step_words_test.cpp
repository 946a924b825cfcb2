#include "core/papers/step_words.h"

#include <doctest/doctest.h>

#include "adapters/files/messages.h"
#include "adapters/files/shipped.h"
#include "core/route/step.h"

using namespace dampward;

TEST_CASE("every step of a route and every hazard has its sentence in every language") {
  for (const std::string& language : files::sheet_languages()) {
    const papers::Words words = files::sheet_words(language).value();
    for (int i = 0; i <= static_cast<int>(route::StepCode::last); ++i)
      CHECK_FALSE(papers::step_name(words, {route::code_word(static_cast<route::StepCode>(i))}).empty());
    for (const auto& hazard : files::shipped().hazards) CHECK(words.has("caution_" + hazard.id.text));
  }
}

TEST_CASE("a time is told in whole minutes, rounded up, and never parted at a line's end") {
  CHECK(papers::time_taken(125 * minute) == "2\u202fh\u202f05\u202fmin");
  CHECK(papers::time_taken(120 * minute) == "2\u202fh");
  CHECK(papers::time_taken(9.2 * minute) == "10\u202fmin");
}
