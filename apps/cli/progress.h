#pragma once

#include <condition_variable>
#include <mutex>
#include <string>
#include <thread>

#include "apps/cli/screen.h"

namespace dampward::cli {

// What goes on, on one line of standard error that is written over and over; for somebody who waits there, and only once that
// has taken half a second. The line is gone when the work ends.
class Progress {
 public:
  explicit Progress(const Screen& screen);
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  void say(const std::string& what);

 private:
  const std::size_t columns_;
  std::mutex lock_;
  std::condition_variable_any changed_;
  std::string what_;
  std::jthread shower_;  // last: it begins when all the rest is there
};

}  // namespace dampward::cli
