#include "apps/cli/progress.h"

#include <chrono>
#include <cstdio>

#include "apps/cli/page_text.h"

namespace dampward::cli {
namespace {

constexpr auto patience = std::chrono::milliseconds(500);

// Blanks wipe the rest of the line, on the dumbest terminal too.
void write_over(const std::string& text, std::size_t columns) {
  std::fprintf(stderr, "\r%s\r%s", std::string(columns, ' ').c_str(), text.c_str());
  std::fflush(stderr);
}

}  // namespace

Progress::Progress(const Screen& screen) : columns_(page_columns(screen) - 1) {
  if (!screen.is_terminal) return;
  shower_ = std::jthread([this](const std::stop_token& stop) {
    std::unique_lock held(lock_);
    if (changed_.wait_for(held, stop, patience, [] { return false; }); stop.stop_requested()) return;
    std::string shown;
    while (!stop.stop_requested()) {
      shown = what_;
      write_over(cut(shown + " ...", columns_), columns_);
      changed_.wait(held, stop, [&] { return what_ != shown; });
    }
    write_over("", columns_);
  });
}

void Progress::say(const std::string& what) {
  {
    const std::scoped_lock held(lock_);
    what_ = what;
  }
  changed_.notify_one();
}

}  // namespace dampward::cli
