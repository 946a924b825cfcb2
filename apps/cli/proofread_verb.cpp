#include "adapters/files/json_documents.h"
#include "adapters/files/shop_folder.h"
#include "apps/cli/pictures.h"
#include "apps/cli/verbs.h"
#include "core/base/format.h"

namespace dampward::cli {

Answer proofread(const Call& call) {
  files::Proof proof = files::proofread(call.folder);
  if (const auto workshop = files::read_workshop(call.folder)) {
    const Problems pictures = undrawable(*workshop);
    proof.faults.insert(proof.faults.end(), pictures.begin(), pictures.end());
  }
  Answer answer;
  if (!proof.faults.empty()) answer.code = ExitCode::input_at_fault;
  if (call.json) {
    answer.out = files::faults_json(proof.faults, proof.warnings);
    return answer;
  }
  for (const Problem& fault : proof.faults) answer.err += to_text(fault) + "\n";
  for (const Problem& warning : proof.warnings) answer.err += "Suspicious: " + to_text(warning) + "\n";
  answer.out = proof.faults.empty() ? format("{}: nothing stands in the way of a plan; suspicions: {}.\n",
                                             call.folder, proof.warnings.size())
                                    : format("{}: faults to mend: {}; suspicions: {}.\n", call.folder,
                                             proof.faults.size(), proof.warnings.size());
  return answer;
}

}  // namespace dampward::cli
