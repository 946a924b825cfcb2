#pragma once

namespace dampward::cli {

// From now on Ctrl-C (and a polite kill) asks long work to stop instead of ending the program in the middle of it.
void listen_for_interrupts();
bool interrupted();

}  // namespace dampward::cli
