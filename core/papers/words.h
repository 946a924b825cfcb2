#pragma once

#include <initializer_list>
#include <map>
#include <string>
#include <string_view>

#include "core/papers/page.h"

namespace dampward::papers {

// The sentences of the sheets in one language, by key.
class Words {
 public:
  Words() = default;
  // `checked`: a speaker of the language has read them.
  Words(std::map<std::string, std::string, std::less<>> sentences, bool checked)
      : sentences_(std::move(sentences)), checked_(checked) {}

  bool checked() const { return checked_; }

  bool has(std::string_view key) const { return sentences_.find(key) != sentences_.end(); }
  // The sentence with {0}, {1} … filled in. Promise: there is one of that key.
  std::string operator()(std::string_view key, std::initializer_list<std::string> values = {}) const;

 private:
  std::map<std::string, std::string, std::less<>> sentences_;
  bool checked_ = true;
};

// Text as runs: what stands between <b> and </b> is bold.
Runs runs(std::string_view marked);
// A number and its unit, one thing.
Runs figure(const std::string& number, const std::string& unit);

// No-break thin space, between a number and its unit.
inline constexpr const char* thin_space = "\u202f";

}  // namespace dampward::papers
