#include "apps/cli/interrupt.h"

#include <csignal>

namespace dampward::cli {
namespace {

volatile std::sig_atomic_t asked_to_stop = 0;

extern "C" void remember_interrupt(int) {
  asked_to_stop = 1;
}

}  // namespace

void listen_for_interrupts() {
  std::signal(SIGINT, remember_interrupt);
  std::signal(SIGTERM, remember_interrupt);
}

bool interrupted() {
  return asked_to_stop != 0;
}

}  // namespace dampward::cli
