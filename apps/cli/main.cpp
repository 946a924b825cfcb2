#include <unistd.h>

#include <cstdio>
#include <exception>
#include <string>
#include <vector>

#include "apps/cli/call.h"
#include "apps/cli/interrupt.h"
#include "apps/cli/verbs.h"

namespace {

using dampward::cli::Answer;

// 1 where what was to be said could not be written: a full disk behind a pipe is no success.
int say(const Answer& answer) {
  std::fputs(answer.err.c_str(), stderr);
  std::fputs(answer.out.c_str(), stdout);
  const bool written = std::fflush(stdout) == 0 && std::ferror(stdout) == 0;
  return written ? static_cast<int>(answer.code) : static_cast<int>(dampward::cli::ExitCode::our_fault);
}

}  // namespace

int main(int argc, char** argv) {
  try {
    dampward::cli::listen_for_interrupts();
    auto reading = dampward::cli::read_call(std::vector<std::string>(argv + 1, argv + argc));
    reading.call.screen = dampward::cli::screen_of(STDOUT_FILENO);
    return say(reading.ends_with ? *reading.ends_with : dampward::cli::answer(reading.call));
  } catch (const std::exception& error) {
    std::fprintf(stderr, "dampward: our own mistake, please report it: %s\n", error.what());
    return static_cast<int>(dampward::cli::ExitCode::our_fault);
  }
}
