#pragma once

#include <source_location>

namespace dampward {

// Ends the program with exit code 1 and one line on standard error that names the broken promise and where it was made.
[[noreturn]] void broken_promise(const char* promise,
                                 std::source_location where = std::source_location::current());

}  // namespace dampward

// A promise this program makes to itself. It never guards against a person's input: that comes back as a Result.
#define DAMPWARD_PROMISE(condition, promise)               \
  do {                                                     \
    if (!(condition)) ::dampward::broken_promise(promise); \
  } while (false)
