#include "adapters/referee_json/verdict.h"

#include "adapters/referee_json/read.h"

namespace dampward::referee_json {

Result<std::vector<referee::Violation>> verdict(const Written& problem, const Written& answer) {
  const auto asked = read_problem(problem.text, problem.shown);
  const auto given = read_answer(answer.text, answer.shown);
  Problems problems;
  if (!asked) problems = asked.problems();
  if (!given) problems.insert(problems.end(), given.problems().begin(), given.problems().end());
  if (!problems.empty()) return problems;
  return referee::judge(*asked, *given);
}

}  // namespace dampward::referee_json
