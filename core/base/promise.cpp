#include "core/base/promise.h"

#include <cstdio>
#include <cstdlib>

namespace dampward {

void broken_promise(const char* promise, std::source_location where) {
  std::fprintf(stderr, "dampward: our own mistake, please report it: %s (%s line %u)\n", promise,
               where.file_name(), static_cast<unsigned>(where.line()));
  std::_Exit(1);
}

}  // namespace dampward
