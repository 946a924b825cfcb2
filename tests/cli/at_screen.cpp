#include "tests/cli/at_screen.h"

#include <doctest/doctest.h>
#include <fcntl.h>
#include <spawn.h>
#include <stdlib.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <unistd.h>

extern char** environ;

namespace {

std::vector<char*> pointers(std::vector<std::string>& texts) {
  std::vector<char*> all;
  for (std::string& text : texts) all.push_back(text.data());
  all.push_back(nullptr);
  return all;
}

std::vector<std::string> environment_with(const std::vector<std::string>& own) {
  std::vector<std::string> all = own;
  for (char** entry = environ; *entry != nullptr; ++entry) {
    const std::string text = *entry;
    if (!text.starts_with("NO_COLOR=") && !text.starts_with("COLUMNS=") && !text.starts_with("TERM="))
      all.push_back(text);
  }
  return all;
}

}  // namespace

Seen dampward_on_screen(const std::vector<std::string>& arguments, std::size_t columns,
                        const std::vector<std::string>& environment) {
  const int reader = posix_openpt(O_RDWR | O_NOCTTY);
  REQUIRE(reader >= 0);
  REQUIRE(grantpt(reader) == 0);
  REQUIRE(unlockpt(reader) == 0);
  const std::string screen = ptsname(reader);
  // Open here until the program has it: reading from a screen that nobody writes on fails.
  const int held = open(screen.c_str(), O_RDWR | O_NOCTTY);
  REQUIRE(held >= 0);
  winsize size{};
  size.ws_col = static_cast<unsigned short>(columns);
  size.ws_row = 24;
  REQUIRE(ioctl(held, TIOCSWINSZ, &size) == 0);
  posix_spawn_file_actions_t files;
  posix_spawn_file_actions_init(&files);
  posix_spawn_file_actions_addopen(&files, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_adddup2(&files, held, STDOUT_FILENO);
  posix_spawn_file_actions_adddup2(&files, held, STDERR_FILENO);
  posix_spawn_file_actions_addclose(&files, held);
  posix_spawn_file_actions_addclose(&files, reader);
  std::vector<std::string> words = {DAMPWARD_PROGRAM}, around = environment_with(environment);
  words.insert(words.end(), arguments.begin(), arguments.end());
  pid_t child = 0;
  const int failed =
      posix_spawn(&child, DAMPWARD_PROGRAM, &files, nullptr, pointers(words).data(), pointers(around).data());
  posix_spawn_file_actions_destroy(&files);
  REQUIRE(failed == 0);
  close(held);
  Seen seen;
  char piece[4096];
  for (ssize_t got = 0; (got = read(reader, piece, sizeof piece)) > 0;)
    seen.text.append(piece, static_cast<std::size_t>(got));
  close(reader);
  int status = 0;
  REQUIRE(waitpid(child, &status, 0) == child);
  seen.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  for (std::size_t at = 0; (at = seen.text.find("\r\n", at)) != std::string::npos;) seen.text.erase(at, 1);
  return seen;
}
