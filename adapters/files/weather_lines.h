#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/problem.h"

namespace dampward::files {

struct WeatherLine {
  std::string_view text;
  int number = 0;  // from 1
};

// The lines of a text, whether they end in LF, CR LF or bare CR.
class WeatherLines {
 public:
  explicit WeatherLines(std::string_view text);
  std::optional<WeatherLine> next();  // blank lines are passed over, though counted

 private:
  std::string_view rest_;
  char end_;
  int number_ = 0;
};

// The fields of a head line; quotes may hold commas.
std::vector<std::string> head_fields(std::string_view line);

// Puts the wanted fields (ascending numbers from 0) of a row into `out`; a field the row lacks becomes empty. Returns how
// many fields the row has.
std::size_t pick_fields(std::string_view line, std::span<const std::size_t> wanted,
                        std::span<std::string_view> out);

// A number with nothing beside it but blanks.
std::optional<double> to_number(std::string_view field);

// What is wrong with a file, told all at once but not endlessly.
class WeatherFaults {
 public:
  explicit WeatherFaults(std::string file) : file_(std::move(file)) {}
  void add(int line, int column, std::string found, std::string expected, std::string next = "");
  bool empty() const { return problems_.empty(); }
  Problems take();  // with a last one that counts those left untold

 private:
  static constexpr std::size_t most = 20;
  std::string file_;
  Problems problems_;
  int untold_ = 0;
};

}  // namespace dampward::files
