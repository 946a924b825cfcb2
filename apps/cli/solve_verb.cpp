#include "adapters/files/json_documents.h"
#include "adapters/files/oven_set_file.h"
#include "adapters/files/project_file.h"
#include "adapters/files/text_file.h"
#include "adapters/files/timetable_json.h"
#include "apps/cli/asked.h"
#include "apps/cli/interrupt.h"
#include "apps/cli/judged.h"
#include "apps/cli/page_text.h"
#include "apps/cli/solve_ovens.h"
#include "apps/cli/solve_project.h"
#include "apps/cli/verbs.h"
#include "core/base/format.h"
#include "core/line/planner.h"

namespace dampward::cli {
namespace {

std::vector<std::string> summary(const line::Problem& problem, const line::Answer& answer) {
  std::vector<std::string> lines{format("{} of {} operations have a place; the last ends in minute {}.",
                                        answer.placements.size(), problem.operations.size(), answer.finish)};
  for (const line::Lateness& late : answer.late)
    lines.push_back(format("late: {} is ready in minute {}, due in {}", late.unit, late.finish, late.due));
  for (const line::Unplaced& out : answer.unplaced)
    lines.push_back(format("no place: {}: {}", out.unit.empty() ? out.operation : out.unit, out.reason));
  return lines;
}

// None: a timetable problem.
std::optional<files::ProjectFormat> format_of(const std::string& word, const std::string& file) {
  if (word.empty()) return files::project_format(file);
  if (word == "sch") return files::ProjectFormat::sch;
  if (word == "sm") return files::ProjectFormat::sm;
  if (word == "jobs") return files::ProjectFormat::jobs;
  return std::nullopt;
}

}  // namespace

Answer solve(const Call& call) {
  Asked asked(call);
  const std::array<std::string, 5> words = {"json", "sch", "sm", "jobs", "ovens"};
  const auto word = asked.known("format", words);
  if (!asked.problems().empty()) return faulty(call, asked.problems());
  if (word ? *word == "ovens" : files::names_oven_set(call.problem)) return solve_ovens(call);
  if (const auto read_as = format_of(word.value_or(""), call.problem)) return solve_project(call, *read_as);
  line::PlanOptions options;
  options.keep_going = [] { return !interrupted(); };
  options.effort = asked.whole("work-limit", 0, 1'000'000'000).value_or(0);
  options.seed = static_cast<std::uint64_t>(asked.whole("seed", 0, 1'000'000'000).value_or(1));
  asked.out_of_place({"operators"}, "beside --format jobs");
  asked.out_of_place({"time-limit", "threads"}, "belongs to a .sch, .sm or .dzn problem");
  if (!asked.problems().empty()) return faulty(call, asked.problems());
  const auto text = files::read_text(call.problem, call.problem);
  if (!text) return faulty(call, text.problems());
  const auto problem = files::read_problem(*text, call.problem);
  if (!problem) return faulty(call, problem.problems());
  const auto solved = line::plan(*problem, options);
  if (!solved) return faulty(call, solved.problems());
  const TimetableTexts texts = texts_of(*problem, *solved);
  if (const auto broken = broken_timetable(call, texts)) return *broken;
  if (const auto failed = unwritten(call, texts)) return *failed;
  Answer answer;
  answer.out = call.json ? files::solve_json(*problem, *solved) : as_page(summary(*problem, *solved));
  if (!problem->operations.empty() && solved->placements.empty()) answer.code = ExitCode::no_safe_answer;
  return answer;
}

}  // namespace dampward::cli
