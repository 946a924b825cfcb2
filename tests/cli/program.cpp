#include "tests/cli/program.h"

#include <doctest/doctest.h>
#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>

#include "tests/cli/demo_shop.h"

extern char** environ;

namespace {

constexpr int write_flags = O_WRONLY | O_CREAT | O_TRUNC;

// Runs the program with its outputs at these paths and gives its exit code.
int run_into(const std::vector<std::string>& arguments, const std::string& out, const std::string& err,
             const std::string& from = ".") {
  posix_spawn_file_actions_t files;
  posix_spawn_file_actions_init(&files);
  posix_spawn_file_actions_addchdir_np(&files, from.c_str());
  posix_spawn_file_actions_addopen(&files, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&files, STDOUT_FILENO, out.c_str(), write_flags, 0600);
  posix_spawn_file_actions_addopen(&files, STDERR_FILENO, err.c_str(), write_flags | O_NOCTTY, 0600);
  std::vector<std::string> words = {DAMPWARD_PROGRAM};
  words.insert(words.end(), arguments.begin(), arguments.end());
  std::vector<char*> argv;
  for (std::string& word : words) argv.push_back(word.data());
  argv.push_back(nullptr);
  pid_t child = 0;
  const int failed = posix_spawn(&child, DAMPWARD_PROGRAM, &files, nullptr, argv.data(), environ);
  posix_spawn_file_actions_destroy(&files);
  REQUIRE(failed == 0);
  int status = 0;
  REQUIRE(waitpid(child, &status, 0) == child);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

}  // namespace

Run dampward_run(const std::vector<std::string>& arguments, const std::string& from) {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out", err = scratch.path() / "err";
  const int code = run_into(arguments, out.string(), err.string(), from);
  return {code, whole_text(out), whole_text(err)};
}

Run dampward_run_at_terminal(const std::vector<std::string>& arguments) {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  const int terminal = posix_openpt(O_RDWR | O_NOCTTY);
  REQUIRE(terminal >= 0);
  REQUIRE(grantpt(terminal) == 0);
  REQUIRE(unlockpt(terminal) == 0);
  const std::string screen = ptsname(terminal);
  // Held open here too, so that what was written stays readable after the program has ended.
  const int held = open(screen.c_str(), O_RDWR | O_NOCTTY);
  const int code = run_into(arguments, out.string(), screen);
  fcntl(terminal, F_SETFL, O_NONBLOCK);
  std::string err;
  char piece[4096];
  for (ssize_t got = 0; (got = read(terminal, piece, sizeof piece)) > 0;)
    err.append(piece, static_cast<std::size_t>(got));
  close(held);
  close(terminal);
  return {code, whole_text(out), err};
}

Json only_document(const Run& run) {
  INFO("standard output: ", run.out.substr(0, 400), "\nstandard error: ", run.err.substr(0, 400));
  REQUIRE_FALSE(run.out.empty());
  CHECK(run.out.back() == '\n');
  const Json document =
      Json::parse(run.out, nullptr, false);  // anything before or behind it makes it discarded
  REQUIRE_FALSE(document.is_discarded());
  REQUIRE(document.is_object());
  return document;
}
