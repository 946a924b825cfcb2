#include "adapters/files/quantity_text.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {
namespace {

using detail::Measure;
using detail::Unit;

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
}

// One spelling for what keyboards and spreadsheets write in several ways.
std::string plain_spelling(std::string_view text) {
  std::string plain(text);
  constexpr std::string_view pairs[][2] = {{"−", "-"},      {"…", ".."}, {"²", "2"},      {"³", "3"},
                                           {"μ", "µ"},      {"º", "°"},  {"\u00A0", " "}, {"\u202F", " "},
                                           {"\u2009", " "}, {"·", ""}};
  for (const auto& pair : pairs) replace_all(plain, pair[0], pair[1]);
  return plain;
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

std::string without_blanks(std::string_view text) {
  std::string packed(text);
  std::erase_if(packed, [](char c) { return c == ' ' || c == '\t'; });
  return packed;
}

const Unit* find_unit(std::string_view word, std::span<const Unit> units) {
  for (const Unit& unit : units) {
    if (unit.word == word) return &unit;
  }
  const std::string small = lower_case(word);
  for (const Unit& unit : units) {
    if (lower_case(unit.word) == small) return &unit;
  }
  return nullptr;
}

struct Number {
  double value = 0;
  std::string_view digits;  // as written
};

// The number at the front of `text`, taken off it. A point or comma belongs to it only between digits.
std::optional<Number> take_number(std::string_view& text, Decimal decimal) {
  std::size_t i = 0;
  std::string plain;
  if (i < text.size() && (text[i] == '-' || text[i] == '+')) {
    if (text[i] == '-') plain += '-';
    ++i;
  }
  const std::size_t first_digit = i;
  bool marked = false;
  for (; i < text.size(); ++i) {
    const char c = text[i];
    const bool between = i > first_digit && i + 1 < text.size() && is_digit(text[i + 1]);
    if (is_digit(c)) {
      plain += c;
    } else if (!marked && (c == '.' || (c == ',' && decimal != Decimal::point)) && between) {
      plain += '.';
      marked = true;
    } else {
      break;
    }
  }
  if (i == first_digit) return std::nullopt;
  if (i < text.size() && (text[i] == 'e' || text[i] == 'E')) {
    std::size_t j = i + 1;
    if (j < text.size() && (text[j] == '-' || text[j] == '+')) ++j;
    if (j < text.size() && is_digit(text[j])) {
      while (j < text.size() && is_digit(text[j])) ++j;
      plain.append(text.substr(i, j - i));
      std::erase(plain, '+');
      i = j;
    }
  }
  Number number;
  number.digits = text.substr(0, i);
  const auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), number.value);
  if (error == std::errc::result_out_of_range) number.value = HUGE_VAL;
  text.remove_prefix(i);
  return number;
}

// "1,500" or "1.500": three digits after the mark and one to three before, none of them a leading zero.
bool may_be_thousands(std::string_view digits, char mark) {
  if (digits.starts_with('-')) digits.remove_prefix(1);
  const std::size_t at = digits.find(mark);
  return at != std::string_view::npos && at >= 1 && at <= 3 && digits.size() - at - 1 == 3 &&
         digits.front() != '0';
}

std::string quoted(std::string_view text) {
  return "\"" + std::string(text) + "\"";
}

Problem wrong(std::string_view text, std::string_view why, const Measure& measure, std::string next = "") {
  return {{}, quoted(text) + std::string(why), std::string(measure.like), std::move(next)};
}

}  // namespace

namespace detail {

Result<std::vector<double>> numbers_from_text(std::string_view written, const Measure& measure,
                                              Decimal decimal) {
  written = trimmed(written);
  if (written.empty()) return Problem{{}, "nothing", std::string(measure.like), ""};
  const std::string spelled = plain_spelling(written);

  std::vector<Number> numbers;
  std::vector<std::string> words;
  std::string_view rest = spelled;
  for (;;) {
    rest = trimmed(rest);
    const auto number = take_number(rest, decimal);
    if (!number) {
      const bool not_finite = lower_case(rest).starts_with("nan") || lower_case(rest).starts_with("inf");
      return wrong(written,
                   not_finite ? ", which is no finite number" : ", which holds no number where one belongs",
                   measure);
    }
    if ((decimal != Decimal::point && may_be_thousands(number->digits, ',')) ||
        (decimal == Decimal::comma && may_be_thousands(number->digits, '.'))) {
      return wrong(
          written, ", which may mean two numbers a thousand times apart", measure,
          "Write it without a mark between thousands, and with one or two digits after the decimal mark.");
    }
    const std::size_t dots = rest.find("..");
    numbers.push_back(*number);
    words.push_back(without_blanks(rest.substr(0, dots)));
    if (dots == std::string_view::npos) break;
    rest.remove_prefix(dots + 2);
  }
  if (numbers.size() > 3) {
    return wrong(written, ", a range of more than three numbers", measure, "Write lowest..usual..highest.");
  }

  if (measure.plain) {
    for (const std::string& word : words) {
      if (word.empty()) continue;
      if (word.front() == '-' || word.starts_with("–")) {
        return wrong(written, ", a range written with a dash", measure,
                     "Write a range with two points: 15..20.");
      }
      if (word.front() == ',') {
        return wrong(written, ", with a comma where a point belongs", measure, "");
      }
      return wrong(written, ", which holds more than a number", measure);
    }
  } else if (words.back().empty()) {
    return wrong(written, ", which has no unit", measure);
  }
  std::vector<double> values(numbers.size());
  const Unit* unit = nullptr;
  for (std::size_t i = numbers.size(); i-- > 0;) {
    const std::string& word = words[i];
    if (!word.empty() && !measure.plain) {
      unit = find_unit(word, measure.units);
      if (unit == nullptr) {
        if (word.front() == '-' || word.starts_with("–")) {
          return wrong(written, ", a range written with a dash", measure,
                       "Write a range with two points: 15..20 min.");
        }
        if (word.front() == ',') {
          return wrong(written, ", with a comma where a decimal point belongs", measure,
                       "Write 12.5, not 12,5.");
        }
        const Measure* other = detail::measure_with_unit(word);
        std::vector<std::string> known;
        for (const Unit& candidate : measure.units) known.emplace_back(candidate.word);
        return other != nullptr ? wrong(written, format(", which is {}", other->name), measure)
                                : wrong(written, format(", whose unit \"{}\" is not known", word), measure,
                                        format("Units known here: {}.", listed(known)));
      }
    }
    values[i] = unit == nullptr ? numbers[i].value : numbers[i].value * unit->factor + unit->offset;
    if (!std::isfinite(values[i])) return wrong(written, ", which is too large for any number", measure);
    if (values[i] < measure.lowest) {
      return wrong(written,
                   numbers[i].value < 0 && measure.lowest == 0 ? ", which is below zero"
                                                               : ", which is lower than anything real",
                   measure);
    }
    if (values[i] > measure.highest)
      return wrong(written, ", which is larger than anything in a workshop", measure);
  }
  for (std::size_t i = 1; i < values.size(); ++i) {
    if (values[i] < values[i - 1]) {
      return wrong(written, ", a range that falls", measure,
                   "Write the lowest number first: lowest..usual..highest.");
    }
  }
  return values;
}

Problem no_single_value(std::string_view text, const Measure& measure) {
  return wrong(trimmed(text), ", a range where one value belongs", measure);
}

}  // namespace detail
Result<std::array<Length, 3>> box_from_text(std::string_view written) {
  std::string text(written);
  replace_all(text, "×", "x");
  const std::vector<std::string_view> sides = split(text, 'x');
  const Problem wrong_box{
      {}, quoted(written), "three sides above zero with their unit, such as 4 x 3 x 2.5 m", ""};
  if (sides.size() != 3) return wrong_box;
  const std::size_t unit = sides[2].find_last_of("0123456789");
  std::array<Length, 3> box;
  for (std::size_t i = 0; i < box.size(); ++i) {
    std::string side(trimmed(sides[i]));
    if (!side.empty() && is_digit(side.back()) && unit != std::string_view::npos)
      side += sides[2].substr(unit + 1);
    const auto length = quantity_from_text<Length>(side);
    if (!length || !(*length > Length{})) return wrong_box;
    box[i] = *length;
  }
  return box;
}

Result<WrittenAir> air_from_text(std::string_view written) {
  const Problem wrong_air{{}, quoted(written), "a temperature and a humidity, such as 32 C 85 %", ""};
  const std::size_t unit = written.find_first_of("CFK");
  if (unit == std::string_view::npos) return wrong_air;
  std::string_view damp = written.substr(unit + 1);
  damp.remove_prefix(std::min(damp.size(), damp.find_first_not_of(", ")));
  const auto temperature = quantity_from_text<Temperature>(written.substr(0, unit + 1));
  const auto humidity = quantity_from_text<RelativeHumidity>(damp);
  if (!temperature || !humidity) return wrong_air;
  return WrittenAir{*temperature, *humidity};
}

}  // namespace dampward::files
