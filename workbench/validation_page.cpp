#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/format.h"
#include "workbench/detail/published_quantities.h"
#include "workbench/selfcheck.h"

namespace dampward::workbench {
namespace {

constexpr std::string_view opening =
    R"(# Validation: published values and what our models make of them

Written by the program from the tables in `data/published`; a test compares this page with a fresh one.
`dampward selfcheck` prints the same on your machine, and ends with an error when a value is missed.

A row counts when somebody read its source. A tolerance says why it is not tighter, and was set from what the
source prints (its digits, its own spread, a difference of formulas it names), not from our result. Values
remembered but not read stand apart at the end and prove nothing. `worst` is the largest miss as a share of
its tolerance.

)";

constexpr std::string_view closing =
    R"(
## What no published value tests

* Mould index: its coefficients were read in public code, the papers were not, and no worked value could be
  read. Its tests are regression values and properties.
* Corrosion: the function for steel was read, a worked value was not; zinc, copper and aluminium come from
  memory. Use the figures to rank sites.
* Diffusion out of cylinders and spheres: only the plate's series was found tabulated; a finite-difference
  twin checks the other two.
* Thermal lag, lamps, the oven's spread of temperature, transfer efficiency of guns: shop measurements rule
  there.
* Whole plans: no published plan of such a job exists. Each step's figures are tested, the timetable by its
  own checker.
)";

std::string spaced(std::string_view inputs) {
  std::string text;
  for (char letter : inputs) text += letter == ';' ? std::string(", ") : std::string(1, letter);
  return text;
}

// The largest miss as a share of its tolerance, "0.42".
std::string worst(const std::vector<const Check*>& checks) {
  double most = 0;
  for (const Check* check : checks) most = std::max(most, std::abs(check->difference) / check->tolerance);
  return fixed(most, 2);
}

// Sentences that many rows share, each told once below the table under its letter or number.
class Footnotes {
 public:
  explicit Footnotes(char first) : first_(first) {}

  std::string mark(const std::string& text) {
    const auto found = std::find(texts_.begin(), texts_.end(), text);
    if (found == texts_.end()) texts_.push_back(text);
    return name(static_cast<std::size_t>(std::find(texts_.begin(), texts_.end(), text) - texts_.begin()));
  }
  std::string list() const {
    std::string lines;
    for (std::size_t i = 0; i < texts_.size(); ++i) lines += format("* {}: {}\n", name(i), texts_[i]);
    return lines;
  }

 private:
  std::string name(std::size_t i) const {
    return first_ == 'a' ? std::string(1, static_cast<char>('a' + i)) : std::to_string(i + 1);
  }
  char first_;  // 'a' letters, else numbers
  std::vector<std::string> texts_;
};

std::string section(const std::vector<const Check*>& checks) {
  Footnotes reasons('a'), sources('1');
  std::string text =
      "| row | quantity | inputs | published | computed | tolerance | why | source "
      "|\n|---|---|---|---|---|---|---|---|\n";
  std::string notes;
  for (const Check* check : checks) {
    text += format("| {} | {} | {} | {:.10g}{}{} | {:.6g}{} | {:.3g} | {} | {} |\n", check->id,
                   check->quantity, spaced(check->inputs), check->published, check->unit == "1" ? "" : " ",
                   check->unit == "1" ? "" : check->unit, check->computed, check->within ? "" : " **missed**",
                   check->tolerance, reasons.mark(check->tolerance_reason), sources.mark(check->source));
    if (!check->note.empty()) notes += format("* {}: {}.\n", check->id, check->note);
  }
  text += "\nWhy the tolerances are what they are:\n\n" + reasons.list();
  text += "\nSources:\n\n" + sources.list();
  if (!notes.empty()) text += "\nNotes:\n\n" + notes;
  return text;
}

}  // namespace

std::string validation_page(const SelfCheck& check) {
  std::map<std::string, std::vector<const Check*>> read, remembered;
  std::map<std::string_view, std::string_view> meanings;
  for (const Check& one : check.checks) {
    (one.read ? read : remembered)[one.model].push_back(&one);
    if (const PublishedQuantity* quantity = find_quantity(one.quantity))
      meanings[quantity->name] = quantity->meaning;
  }

  std::string page(opening);
  page += format("**{} rows read, {} of them missed; {} from memory.**\n\n", check.rows,
                 check.out_of_tolerance, check.from_memory);
  page += "| model | rows read | share | worst |\n|---|---|---|---|\n";
  for (const auto& [model, checks] : read) {
    page += format("| {} | {} | {} % | {} |\n", model, checks.size(),
                   fixed(100.0 * static_cast<double>(checks.size()) / check.rows, 0), worst(checks));
  }
  for (const auto& [model, checks] : read) page += format("\n## {}\n\n", model) + section(checks);
  page += "\n## From memory\n\nNot counted, and a miss here fails nothing.\n";
  for (const auto& [model, checks] : remembered)
    page += format("\n### {}, from memory\n\n", model) + section(checks);
  page += "\n## Quantities\n\n";
  for (const auto& [name, meaning] : meanings) page += format("* {}: {}\n", name, meaning);
  return page + std::string(closing);
}

}  // namespace dampward::workbench
