#include "apps/cli/screen.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <charconv>
#include <cstdlib>

namespace dampward::cli {
namespace {

constexpr std::size_t fewest_columns = 20;

std::optional<std::string> from_environment(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? std::nullopt : std::optional<std::string>(value);
}

std::size_t columns_wished(const std::string& written) {
  std::size_t columns = 0;
  const char* end = written.data() + written.size();
  const auto [stop, error] = std::from_chars(written.data(), end, columns);
  return error == std::errc() && stop == end ? columns : 0;
}

}  // namespace

Screen terminal_screen(std::size_t columns_told, const ScreenWishes& wishes) {
  Screen screen;
  screen.is_terminal = true;
  for (std::size_t columns : {columns_told, columns_wished(wishes.columns.value_or(""))}) {
    if (columns >= fewest_columns) screen.columns = columns;
  }
  const std::string term = wishes.term.value_or("");
  screen.colour = wishes.no_color.value_or("").empty() && !term.empty() && term != "dumb";
  return screen;
}

Screen screen_of(int descriptor) {
  if (isatty(descriptor) == 0) return {};
  winsize size{};
  const bool known = ioctl(descriptor, TIOCGWINSZ, &size) == 0;
  return terminal_screen(known ? size.ws_col : 0, {from_environment("COLUMNS"), from_environment("TERM"),
                                                   from_environment("NO_COLOR")});
}

std::size_t page_columns(const Screen& screen) {
  return std::min<std::size_t>(screen.columns, 120);
}

}  // namespace dampward::cli
