#include "core/base/problem.h"

namespace dampward {
namespace {

// Ends with one full stop, whether or not the writer set one.
std::string sentence(std::string text) {
  if (!text.ends_with('.')) text += '.';
  return text;
}

}  // namespace

std::string to_text(const Problem& problem) {
  std::string text = problem.place.file;
  if (problem.place.line > 0) text += " line " + std::to_string(problem.place.line);
  if (problem.place.column > 0) text += ", column " + std::to_string(problem.place.column);
  if (!text.empty()) text += ": ";
  text += sentence("found " + problem.found);
  if (!problem.expected.empty()) text += sentence(" Expected " + problem.expected);
  if (!problem.next.empty()) text += " " + problem.next;
  return text;
}

}  // namespace dampward
