#include "apps/cli/manual.h"
#include "apps/cli/verbs.h"

namespace dampward::cli {

Answer man(const Call&) {
  return {manual(description(), DAMPWARD_VERSION), "", ExitCode::done};
}

}  // namespace dampward::cli
