#include "adapters/files/json_documents.h"
#include "adapters/files/published.h"
#include "apps/cli/page_text.h"
#include "apps/cli/selfcheck_summary.h"
#include "apps/cli/verbs.h"
#include "workbench/selfcheck.h"

namespace dampward::cli {

Answer selfcheck(const Call& call) {
  const auto rows = files::shipped_published();
  if (!rows) return faulty(call, rows.problems());
  const auto check = workbench::selfcheck(*rows);
  if (!check) return faulty(call, check.problems());
  Answer answer;
  answer.out = call.json ? files::selfcheck_json(*check) : as_page(selfcheck_summary(*check));
  if (check->out_of_tolerance > 0) answer.code = ExitCode::our_fault;
  return answer;
}

}  // namespace dampward::cli
