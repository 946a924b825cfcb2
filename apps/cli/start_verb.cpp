#include "adapters/files/json_documents.h"
#include "adapters/files/starter.h"
#include "apps/cli/verbs.h"
#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::cli {

Answer start(const Call& call) {
  const auto written = files::start_folder(call.folder, call.example ? "demo" : "starter");
  if (!written) return faulty(call, written.problems());
  Answer answer;
  answer.out =
      call.json
          ? files::start_json(call.folder, *written)
          : format("Wrote {} into {}. Change what is different in your workshop, then: dampward plan {}\n",
                   listed(*written), call.folder, call.folder);
  return answer;
}

}  // namespace dampward::cli
