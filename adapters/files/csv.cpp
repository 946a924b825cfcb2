#include "adapters/files/csv.h"

#include <algorithm>

#include "core/base/text.h"

namespace dampward::files {
namespace {

// A text read letter by letter, counting lines and columns; CR LF and a bare CR read as one LF.
class Letters {
 public:
  explicit Letters(std::string_view text) : text_(text) {}

  bool end() const { return at_ == text_.size(); }
  char peek() const { return text_[at_] == '\r' ? '\n' : text_[at_]; }
  int line() const { return line_; }
  int column() const { return column_; }

  char take() {
    const char c = peek();
    if (text_[at_] == '\r' && at_ + 1 < text_.size() && text_[at_ + 1] == '\n') ++at_;
    ++at_;
    if (c == '\n') {
      ++line_;
      column_ = 1;
    } else if (end() || (static_cast<unsigned char>(text_[at_]) & 0xC0) != 0x80) {
      ++column_;  // the next byte begins a new letter
    }
    return c;
  }

  std::string take_line() {
    std::string line;
    while (!end() && peek() != '\n') line += take();
    if (!end()) take();
    return line;
  }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
  int line_ = 1;
  int column_ = 1;
};

bool is_blank(char c) {
  return c == ' ' || c == '\t';
}

// How often each possible separator stands outside quotes in a line.
char likely_separator(std::string_view line) {
  constexpr std::string_view candidates = "\t;,";
  std::size_t counts[3] = {};
  bool quoted = false;
  for (char c : line) {
    if (c == '"') quoted = !quoted;
    const std::size_t which = candidates.find(c);
    if (!quoted && which != std::string_view::npos) ++counts[which];
  }
  const auto best = static_cast<std::size_t>(std::max_element(counts, counts + 3) - counts);
  return counts[best] == 0 ? ',' : candidates[best];
}

bool is_comment(std::string_view line) {
  return trimmed(line).starts_with('#');
}

bool only_separators(std::string_view line) {
  return std::all_of(line.begin(), line.end(),
                     [](char c) { return is_blank(c) || c == ',' || c == ';' || c == '"'; });
}

// The rest of a comment line, without # and without the separators a spreadsheet adds behind it.
std::string comment_text(std::string_view line) {
  line = trimmed(line);
  while (!line.empty() &&
         (line.back() == ',' || line.back() == ';' || line.back() == '"' || is_blank(line.back()))) {
    line.remove_suffix(1);
  }
  while (!line.empty() && (line.front() == '#' || line.front() == '"')) line.remove_prefix(1);
  return std::string(trimmed(line));
}

struct FoundSeparator {
  char separator;
  bool stated;  // the first line is "sep=…" and no data
};

FoundSeparator find_separator(std::string_view text) {
  Letters letters(text);
  while (!letters.end()) {
    const std::string line = letters.take_line();
    if (lower_case(line).starts_with("sep=") && line.size() >= 5) return {line[4], true};
    if (!is_comment(line) && !only_separators(line)) return {likely_separator(line), false};
  }
  return {',', false};
}

// Reads one cell up to, not including, its separator or line end.
CsvCell take_cell(Letters& letters, char separator, const std::string& file, Problems& problems) {
  while (!letters.end() && is_blank(letters.peek()) && letters.peek() != separator) letters.take();
  CsvCell cell{"", letters.line(), letters.column()};
  if (!letters.end() && letters.peek() == '"') {
    letters.take();
    for (;;) {
      if (letters.end()) {
        problems.push_back({{file, cell.line, cell.column},
                            "a quote that is never closed",
                            "a closing \" in the same cell",
                            "Close it, or remove the opening one."});
        return cell;
      }
      const char c = letters.take();
      if (c != '"') {
        cell.text += c;
      } else if (!letters.end() && letters.peek() == '"') {
        cell.text += letters.take();
      } else {
        break;
      }
    }
    const Place after{file, letters.line(), letters.column()};
    std::string rest;
    while (!letters.end() && letters.peek() != separator && letters.peek() != '\n') rest += letters.take();
    if (!trimmed(rest).empty()) {
      problems.push_back({after, "\"" + std::string(trimmed(rest)) + "\" after a closing quote",
                          "a separator or the end of the line",
                          "Write a quote inside a quoted cell twice: \"\"."});
    }
  } else {
    while (!letters.end() && letters.peek() != separator && letters.peek() != '\n')
      cell.text += letters.take();
  }
  cell.text = std::string(trimmed(cell.text));
  return cell;
}

bool has_decimal_comma(std::string_view text) {
  const std::size_t comma = text.find(',');
  if (comma == std::string_view::npos || comma == 0 || comma + 1 >= text.size()) return false;
  const auto digit = [&](std::size_t i) { return text[i] >= '0' && text[i] <= '9'; };
  return digit(comma - 1) && digit(comma + 1) && text.find_first_of("0123456789") == 0;
}

// A header without case, blanks, underscores and a unit in brackets.
std::string plain_name(std::string_view header) {
  std::string name;
  for (char c : lower_case(header)) {
    if (c != ' ' && c != '_' && c != '-') name += c;
  }
  return name;
}

std::string quoted(std::string_view text) {
  return "\"" + std::string(text) + "\"";
}

}  // namespace

Result<CsvSheet> read_csv(const std::string& file, std::string_view text) {
  CsvSheet sheet;
  sheet.file = file;
  Problems problems;
  const FoundSeparator found = find_separator(text);
  sheet.separator = found.separator;

  Letters letters(text);
  bool skip_stated = found.stated;
  while (!letters.end()) {
    // Look at the line before reading it cell by cell: comments and "sep=" are no data.
    Letters ahead = letters;
    const int line_number = ahead.line();
    const std::string line = ahead.take_line();
    const bool comment = is_comment(line) || (sheet.header.empty() && line.starts_with("\"#"));
    const bool stated = skip_stated && lower_case(line).starts_with("sep=");
    if (comment || stated) {
      if (comment) sheet.comments.push_back({comment_text(line), line_number, 1});
      if (stated) skip_stated = false;
      letters = ahead;
      continue;
    }
    CsvRow row;
    for (;;) {
      row.push_back(take_cell(letters, sheet.separator, file, problems));
      if (letters.end()) break;
      if (letters.take() == '\n') break;
    }
    if (std::all_of(row.begin(), row.end(), [](const CsvCell& cell) { return cell.text.empty(); })) continue;
    if (sheet.header.empty()) {
      sheet.header = std::move(row);
    } else {
      for (const CsvCell& cell : row) sheet.decimal_comma |= has_decimal_comma(cell.text);
      sheet.rows.push_back(std::move(row));
    }
  }
  if (sheet.header.empty() && problems.empty()) {
    problems.push_back({{file}, "no line with column names", "a first line that names the columns", ""});
  }
  if (!problems.empty()) return problems;
  return sheet;
}

CsvColumns::CsvColumns(const CsvSheet& sheet, std::span<const std::string> required,
                       std::span<const std::string> optional, Proof& proof) {
  std::vector<std::string> known(required.begin(), required.end());
  known.insert(known.end(), optional.begin(), optional.end());
  std::vector<CsvCell> unknown;
  for (std::size_t i = 0; i < sheet.header.size(); ++i) {
    const CsvCell& header = sheet.header[i];
    if (header.text.empty()) continue;
    const std::size_t bracket = std::min(header.text.find('('), header.text.find('['));
    const std::string name = plain_name(std::string_view(header.text).substr(0, bracket));
    const auto match = std::find_if(known.begin(), known.end(), [&](const std::string& candidate) {
      return plain_name(candidate) == name;
    });
    if (match == known.end()) {
      unknown.push_back(header);
    } else if (find(*match) != nullptr) {
      proof.faults.push_back({{sheet.file, header.line, header.column},
                              "the column " + quoted(*match) + " twice",
                              "each column once",
                              "Remove or rename one of them."});
    } else {
      std::string unit;
      if (bracket != std::string::npos) {
        unit = header.text.substr(bracket + 1);
        unit = unit.substr(0, unit.find_first_of(")]"));
      }
      columns_.push_back({*match, std::string(trimmed(unit)), i});
    }
  }

  std::vector<std::string> missing;
  for (const std::string& name : known) {
    if (find(name) == nullptr) missing.push_back(name);
  }
  for (const CsvCell& header : unknown) {
    const Place place{sheet.file, header.line, header.column};
    const std::string guess = nearest(header.text, missing);
    if (!guess.empty()) {
      proof.faults.push_back({place, "the unknown column " + quoted(header.text), "one of " + listed(known),
                              "Did you mean " + quoted(guess) + "?"});
      std::erase(missing, guess);
    } else {
      proof.warnings.push_back({place, "the unknown column " + quoted(header.text) + ", which is left unread",
                                "one of " + listed(known), ""});
    }
  }
  for (const std::string& name : required) {
    if (std::find(missing.begin(), missing.end(), name) != missing.end()) {
      const int line = sheet.header.empty() ? 0 : sheet.header.front().line;
      proof.faults.push_back(
          {{sheet.file, line}, "no column " + quoted(name), "the columns " + listed(required), ""});
    }
  }
}

const CsvColumns::Column* CsvColumns::find(std::string_view name) const {
  const auto found = std::find_if(columns_.begin(), columns_.end(),
                                  [&](const Column& column) { return column.name == name; });
  return found == columns_.end() ? nullptr : &*found;
}

bool CsvColumns::has(std::string_view name) const {
  return find(name) != nullptr;
}

CsvCell CsvColumns::cell(const CsvRow& row, std::string_view name) const {
  const Column* column = find(name);
  if (column != nullptr && column->index < row.size()) return row[column->index];
  return {"", row.empty() ? 0 : row.front().line, 0};
}

std::string CsvColumns::unit(std::string_view name) const {
  const Column* column = find(name);
  return column == nullptr ? "" : column->unit;
}

void check_row_lengths(const CsvSheet& sheet, Proof& proof) {
  for (const CsvRow& row : sheet.rows) {
    for (std::size_t i = sheet.header.size(); i < row.size(); ++i) {
      if (row[i].text.empty()) continue;
      proof.faults.push_back(
          {{sheet.file, row[i].line, row[i].column},
           quoted(row[i].text) + " beyond the last column",
           "at most " + std::to_string(sheet.header.size()) + " cells, as in the first line",
           "Put a text that holds the separator in quotes: \"dust, fungus\"."});
      break;
    }
  }
}

}  // namespace dampward::files
