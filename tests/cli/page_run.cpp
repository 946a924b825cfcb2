#include "tests/cli/page_run.h"

#include <doctest/doctest.h>
#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "tests/cli/demo_shop.h"

extern char** environ;

namespace {

namespace fs = std::filesystem;

// The environment with the program's folder first in the path.
std::vector<std::string> environment() {
  std::vector<std::string> all;
  for (char** entry = environ; *entry != nullptr; ++entry) {
    if (!std::string(*entry).starts_with("PATH=")) all.emplace_back(*entry);
  }
  const char* path = std::getenv("PATH");
  all.push_back("PATH=" + fs::path(DAMPWARD_PROGRAM).parent_path().string() + ":" +
                (path != nullptr ? path : ""));
  return all;
}

std::vector<char*> pointers(std::vector<std::string>& texts) {
  std::vector<char*> all;
  for (std::string& text : texts) all.push_back(text.data());
  all.push_back(nullptr);
  return all;
}

void put(const fs::path& file, const std::string& text, std::ios::openmode mode) {
  fs::create_directories(file.parent_path());
  std::ofstream(file, std::ios::binary | mode) << text;
}

// A line without the note behind it.
std::string without_note(const std::string& line) {
  const std::string bare = line.substr(0, line.starts_with("#") ? line.npos : line.find("  #"));
  return bare.substr(0, bare.find_last_not_of(' ') + 1);
}

// The one place in a file where these lines stand one under another, notes aside.
std::size_t place_of(const std::vector<std::string>& out, const std::vector<std::string>& lines) {
  const auto same = [](const std::string& a, const std::string& b) {
    return without_note(a) == without_note(b);
  };
  const auto at = std::search(lines.begin(), lines.end(), out.begin(), out.end(), same);
  INFO("these lines must stand in the file, once: ", out.front());
  REQUIRE(at != lines.end());
  CHECK(std::search(at + 1, lines.end(), out.begin(), out.end(), same) == lines.end());
  return static_cast<std::size_t>(at - lines.begin());
}

// Each run of lines with - goes out of the file; the lines with + behind it come in its place.
void change(const fs::path& file, const std::string& diff) {
  std::vector<std::string> lines = lines_of_text(whole_text(file)), out, in;
  const auto replace = [&] {
    if (out.empty()) return;
    const auto at = lines.begin() + static_cast<std::ptrdiff_t>(place_of(out, lines));
    lines.insert(lines.erase(at, at + static_cast<std::ptrdiff_t>(out.size())), in.begin(), in.end());
    out.clear();
    in.clear();
  };
  for (const std::string& line : lines_of_text(diff)) {
    if (!line.starts_with("+") && !in.empty()) replace();
    if (line.starts_with("-")) out.push_back(line.substr(1));
    if (line.starts_with("+")) in.push_back(line.substr(1));
  }
  replace();
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  put(file, text, std::ios::trunc);
}

void type(const PageStep& step, const std::string& folder) {
  const Shown run = run_in_shell(step.text, folder);
  INFO(step.text, "shows:\n", run.text);
  CHECK(run.exit_code == step.exit_code);
  if (!step.has_shown) return;
  INFO("where the page shows:\n", step.shown, "not seen: ", shown_but_not_seen(run.text, step.shown));
  CHECK(fits_shown(run.text, step.shown));
}

}  // namespace

Shown run_in_shell(const std::string& commands, const std::string& folder) {
  const ScratchFolder scratch;
  const std::string out = (scratch.path() / "out").string();
  posix_spawn_file_actions_t files;
  posix_spawn_file_actions_init(&files);
  posix_spawn_file_actions_addchdir_np(&files, folder.c_str());
  posix_spawn_file_actions_addopen(&files, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&files, STDOUT_FILENO, out.c_str(), O_WRONLY | O_CREAT | O_APPEND, 0600);
  posix_spawn_file_actions_adddup2(&files, STDOUT_FILENO, STDERR_FILENO);
  std::vector<std::string> words = {"/bin/sh", "-e", "-c", commands}, around = environment();
  pid_t child = 0;
  const int failed =
      posix_spawn(&child, words[0].c_str(), &files, nullptr, pointers(words).data(), pointers(around).data());
  posix_spawn_file_actions_destroy(&files);
  REQUIRE(failed == 0);
  int status = 0;
  REQUIRE(waitpid(child, &status, 0) == child);
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, whole_text(out)};
}

void follow(const std::vector<PageStep>& steps, const std::string& folder) {
  for (const PageStep& step : steps) {
    INFO("line ", step.line, " of the page");
    const fs::path file = fs::path(folder) / step.file;
    switch (step.what) {
      case PageStep::What::run:
        type(step, folder);
        break;
      case PageStep::What::write:
        put(file, step.text, std::ios::trunc);
        break;
      case PageStep::What::append:
        put(file, step.text, std::ios::app);
        break;
      case PageStep::What::change:
        change(file, step.text);
        break;
    }
  }
}

void follow_page(const std::string& name) {
  const fs::path page = fs::path(DAMPWARD_SOURCE_DIR "/docs") / name;
  INFO(name);
  REQUIRE(fs::is_regular_file(page));
  const ScratchFolder scratch;
  follow(steps_of_page(whole_text(page)), scratch.path().string());
}
