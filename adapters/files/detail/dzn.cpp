#include "adapters/files/detail/dzn.h"

#include <algorithm>
#include <cctype>

#include "core/base/format.h"

namespace dampward::files::detail {
namespace {

bool is_word(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_';
}

class Reader {
 public:
  Reader(std::string_view text, ReadFault& fault) : text_(text), fault_(fault) {}

  bool at_end() {
    skip();
    return at_ == text_.size();
  }
  int line() const { return line_; }

  bool name(std::string& word) {
    skip();
    word.clear();
    while (at_ < text_.size() && is_word(text_[at_])) word += text_[at_++];
    return !word.empty() || unexpected("the name of a value");
  }
  bool sign(char c) {
    skip();
    if (peek() != c) return unexpected(format("\"{}\"", c));
    ++at_;
    return true;
  }
  // Up to the semicolon.
  bool pass_over() {
    for (skip(); at_ < text_.size(); skip()) {
      if (text_[at_++] == ';') return true;
    }
    return unexpected("a semicolon");
  }
  bool value(DznValue& value) {
    skip();
    if (peek() != '[') {
      value.rows.emplace_back();
      return number(value.rows.back());
    }
    ++at_;
    skip();
    if (peek() == '|') return table(value);
    if (peek() == '{' || list_of_ranges()) return sets(value);
    value.kind = DznValue::Kind::list;
    value.rows.emplace_back();
    return numbers(value.rows.back(), ']') && sign(']');
  }

 private:
  char peek() const { return at_ < text_.size() ? text_[at_] : '\0'; }

  void skip() {
    for (; at_ < text_.size(); ++at_) {
      if (text_[at_] == '%') {
        while (at_ + 1 < text_.size() && text_[at_ + 1] != '\n') ++at_;
      } else if (text_[at_] == '\n') {
        ++line_;
      } else if (std::isspace(static_cast<unsigned char>(text_[at_])) == 0) {
        return;
      }
    }
  }
  bool unexpected(const std::string& expected) {
    if (at_ >= text_.size()) return fault_.cut_short(line_, expected);
    const std::string_view rest = text_.substr(at_, 20);
    return fault_.at(line_, format("\"{}\"", rest.substr(0, rest.find('\n'))), expected);
  }
  bool number(std::vector<int>& into) {
    skip();
    std::size_t end = at_ + (peek() == '-' ? 1 : 0);
    while (end < text_.size() && std::isdigit(static_cast<unsigned char>(text_[end])) != 0) ++end;
    const auto value = whole(text_.substr(at_, end - at_));
    if (!value || (end < text_.size() && is_word(text_[end])))
      return unexpected("a whole number of at most 2147483647");
    into.push_back(*value);
    at_ = end;
    return true;
  }
  // Numbers with commas between and perhaps behind, up to the sign that closes.
  bool numbers(std::vector<int>& into, char close) {
    for (skip(); peek() != close; skip()) {
      if (!number(into)) return false;
      skip();
      if (peek() != close && !sign(',')) return false;
    }
    return true;
  }
  bool table(DznValue& value) {
    value.kind = DznValue::Kind::table;
    while (true) {
      if (!sign('|')) return false;
      skip();
      if (peek() == ']') break;
      value.rows.emplace_back();
      if (!numbers(value.rows.back(), '|')) return false;
    }
    return sign(']');
  }
  bool list_of_ranges() const {
    const std::string_view rest = text_.substr(at_, 40);
    const std::size_t dots = rest.find("..");
    return dots != std::string_view::npos && dots < rest.find_first_of(",]");
  }
  bool sets(DznValue& value) {
    value.kind = DznValue::Kind::sets;
    for (skip(); peek() != ']'; skip()) {
      if (!set(value.rows.emplace_back())) return false;
      skip();
      if (peek() != ']' && !sign(',')) return false;
    }
    return sign(']');
  }
  bool set(std::vector<int>& into) {
    skip();
    if (peek() == '{') return sign('{') && numbers(into, '}') && sign('}');
    std::vector<int> ends;
    if (!number(ends) || !sign('.') || !sign('.') || !number(ends)) return false;
    constexpr int most = 10'000;
    if (std::int64_t{ends[1]} - ends[0] > most) return unexpected("a range of at most 10000 numbers before");
    for (int k = ends[0]; k <= ends[1]; ++k) into.push_back(k);
    return true;
  }

  std::string_view text_;
  ReadFault& fault_;
  std::size_t at_ = 0;
  int line_ = 1;
};

}  // namespace

bool read_dzn(std::string_view text, const std::vector<std::string_view>& names, DznValues& values,
              ReadFault& fault) {
  Reader reader(text, fault);
  std::string name;
  while (!reader.at_end()) {
    const int line = reader.line();
    if (!reader.name(name) || !reader.sign('=')) return false;
    if (std::find(names.begin(), names.end(), name) == names.end()) {
      if (!reader.pass_over()) return false;
      continue;
    }
    const auto [place, is_new] = values.try_emplace(name);
    if (!is_new)
      return fault.at(line, format("{} once more", name), format("it once, in line {}", place->second.line));
    place->second.line = line;
    if (!reader.value(place->second) || !reader.sign(';')) return false;
  }
  return true;
}

}  // namespace dampward::files::detail
