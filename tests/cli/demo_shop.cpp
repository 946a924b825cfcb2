#include "tests/cli/demo_shop.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

}  // namespace

std::string whole_text(const std::filesystem::path& file) {
  std::ostringstream text;
  text << std::ifstream(file, std::ios::binary).rdbuf();
  return text.str();
}

DemoShop::DemoShop() {
  for (const auto& entry : std::filesystem::directory_iterator(DAMPWARD_SOURCE_DIR "/data/demo")) {
    std::filesystem::copy(entry.path(), scratch_.path() / entry.path().filename());
  }
}

int DemoShop::replace(const std::string& name, std::string_view old, std::string_view by) const {
  std::string all = text(name);
  const std::size_t at = all.find(old);
  INFO(name, " holds no ", std::string(old));
  REQUIRE(at != std::string::npos);
  write(name, all.replace(at, old.size(), by));
  return static_cast<int>(1 + std::count(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

std::vector<std::string> DemoShop::queue_rows() const {
  const auto lines = lines_of(text("queue.csv"));
  return {lines.begin() + 2, lines.end()};
}

void DemoShop::write_queue(const std::vector<std::string>& rows) const {
  const auto lines = lines_of(text("queue.csv"));
  std::string all = lines.at(0) + "\n" + lines.at(1) + "\n";
  for (const std::string& row : rows) all += row + "\n";
  write("queue.csv", all);
}

std::vector<std::string> long_queue(const DemoShop& shop, int count) {
  const auto rows = shop.queue_rows();
  std::vector<std::string> all;
  for (int i = 0; i < count; ++i) {
    const std::string& row = rows[static_cast<std::size_t>(i) % rows.size()];
    all.push_back("TD-" + std::to_string(1000 + i) + row.substr(row.find(',')));
  }
  return all;
}

std::string weather_with(const std::map<std::size_t, std::string>& columns) {
  constexpr std::size_t fields_of_an_hour = 35;
  std::string all;
  for (std::string row : lines_of(whole_text(DAMPWARD_SOURCE_DIR "/data/demo/weather.epw"))) {
    std::vector<std::string> fields;
    std::istringstream cells(row);
    for (std::string cell; std::getline(cells, cell, ',');) fields.push_back(cell);
    if (fields.size() == fields_of_an_hour) {
      row.clear();
      for (std::size_t i = 0; i < fields.size(); ++i) {
        row += (i > 0 ? "," : "") + (columns.count(i) > 0 ? columns.at(i) : fields[i]);
      }
    }
    all += row + "\n";
  }
  return all;
}
