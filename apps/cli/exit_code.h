#pragma once

namespace dampward::cli {

// What every verb ends with.
enum class ExitCode {
  done = 0,            // also when some units are refused, late but safe, or the queue is empty
  our_fault = 1,       // ours, or the world's: nothing the input could mend
  input_at_fault = 2,  // a file or an option says something that cannot be used
  no_safe_answer = 3,  // the input is fine, and nothing in it can be done safely
};

}  // namespace dampward::cli
