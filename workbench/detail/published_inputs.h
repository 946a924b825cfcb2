#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace dampward::workbench {

// The inputs of one published value, "t_c=25;salt=sodium_chloride", asked for by name. What is missing,
// unreadable or never asked for is remembered, so that a misspelt name cannot pass.
class PublishedInputs {
 public:
  explicit PublishedInputs(std::string_view text);

  double number(std::string_view name);  // 1 where it is missing or unreadable
  std::string word(std::string_view name);
  std::vector<double> numbers(std::string_view stem);  // stem_1, stem_2 … as many as there are

  // What was wrong; call it when all has been asked for.
  std::vector<std::string> complaints() const;

 private:
  struct Entry {
    std::string text;
    bool asked = false;
  };
  std::map<std::string, Entry, std::less<>> entries_;
  std::vector<std::string> complaints_;
};

}  // namespace dampward::workbench
