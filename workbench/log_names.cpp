#include "workbench/log_names.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/route/step.h"

namespace dampward::workbench {
namespace {

// "r1.coat2" without its version and turn: "coat". Empty where it is not written so.
std::string code_in(const std::string& step) {
  const std::size_t point = step.find('.');
  if (!step.starts_with('r') || point == std::string::npos) return "";
  const std::size_t last = step.find_last_not_of("0123456789");
  return step.substr(point + 1, last == std::string::npos ? 0 : last - point);
}

std::vector<std::string> codes() {
  std::vector<std::string> words;
  for (int code = 0; code <= static_cast<int>(route::StepCode::last); ++code)
    words.push_back(route::code_word(static_cast<route::StepCode>(code)));
  return words;
}

}  // namespace

Problems unknown_names(const history::Event& event, const Workshop& workshop, const records::Queue& queue) {
  std::vector<std::string> units, ovens, people;
  for (const auto& unit : queue.units) units.push_back(unit.serial.text);
  for (const auto& oven : workshop.shop.ovens) ovens.push_back(oven.id.text);
  for (const auto& person : workshop.shop.crew) people.push_back(person.id.text);
  Problems problems;
  const auto look = [&](const char* what, const std::string& name, const std::vector<std::string>& known,
                        const char* where) {
    if (name.empty() || std::find(known.begin(), known.end(), name) != known.end()) return;
    problems.push_back(
        {event.place, name_of(event) + " with the " + what + " \"" + name + "\", which is not " + where,
         known.size() > 20 ? std::string(what) + " as written " + where : "one of " + listed(known),
         did_you_mean(name, known)});
  };
  look("unit", event.unit.text, units, "in the queue");
  look("oven", event.oven.text, ovens, "in the shop's files");
  look("person", event.person.text, people, "in the crew");
  look("author", event.by.text, people, "in the crew");
  if (!event.step.empty()) {
    const std::vector<std::string> known = codes();
    const std::string code = code_in(event.step);
    if (std::find(known.begin(), known.end(), code) == known.end()) {
      const std::string guess = nearest(code.empty() ? event.step : code, known);
      problems.push_back({event.place, name_of(event) + " with a step no route knows",
                          "the id of a step in the plan's treatments[].steps[], such as r1.bake",
                          guess.empty() ? "" : "Did you mean a step such as r1." + guess + "?"});
    }
  }
  return problems;
}

}  // namespace dampward::workbench
