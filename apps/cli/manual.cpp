#include "apps/cli/manual.h"

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::cli {
namespace {

// The code point that starts at `at`, which is moved behind it. Texts of the program are sound UTF-8.
char32_t next_code_point(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(at++);
  if (first < 0x80) return first;
  const int more = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : 1;
  char32_t code = first & (0x3Fu >> more);
  for (int i = 0; i < more && at < text.size(); ++i) code = code << 6 | (byte(at++) & 0x3Fu);
  return code;
}

// Text for roff: its own signs are kept from meaning anything, and a hyphen stays one that can be copied and searched for.
std::string escaped(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const char32_t code = next_code_point(text, at);
    if (code == '\\') {
      out += "\\e";
    } else if (code == '-') {
      out += "\\-";
    } else if (code == '\'') {
      out += "\\(aq";
    } else if (code >= 0x80) {
      out += format("\\[u{:04X}]", static_cast<unsigned>(code));
    } else {
      out += static_cast<char>(code);
    }
  }
  return out.starts_with('.') ? "\\&" + out : out;
}

std::string bold(const std::string& text) {
  return "\\fB" + escaped(text) + "\\fR";
}

std::string italic(const std::string& text) {
  return "\\fI" + escaped(text) + "\\fR";
}

// Fixed words stand as they are typed, with roman bars between them; the rest is slanted.
std::string value_roff(const ValueText& value) {
  if (value.takes != Takes::choice) return italic(value.name);
  std::string out;
  for (const std::string& word : value.choices) out += (out.empty() ? "" : "|") + bold(word);
  return out;
}

std::string option_roff(const OptionText& option) {
  std::string out;
  for (const std::string& name : option.names) out += (out.empty() ? "" : ", ") + bold(name);
  for (const ValueText& value : option.value) out += " " + value_roff(value);
  return out;
}

void put_item(std::string& page, const std::string& tag, const std::string& text) {
  page += ".TP\n" + tag + "\n" + escaped(text) + "\n";
}

void put_options(std::string& page, const std::vector<OptionText>& options) {
  for (const OptionText& option : options)
    put_item(page, option_roff(option), option.text + (option.required ? "; it must be given" : ""));
}

void put_verb(std::string& page, const VerbText& verb) {
  std::string call = bold("dampward " + verb.name);
  for (const ArgumentText& argument : verb.arguments) {
    const std::string name = italic(argument.name);
    call += argument.required ? " " + name : " [" + name + "]";
  }
  page += ".SS " + verb.name + "\n" + call + " [options]\n.PP\n" + escaped(verb.text) + "\n";
  for (const ArgumentText& argument : verb.arguments) {
    std::string tag = italic(argument.name);
    if (argument.value.takes == Takes::choice) tag += ": " + value_roff(argument.value);
    put_item(page, tag, argument.text);
  }
  put_options(page, verb.options);
}

// "Exit codes:" and the like become sections; the lines below them, two blanks in, become their items.
void put_after(std::string& page, const std::string& after) {
  for (std::string_view line : split(after, '\n')) {
    if (!line.starts_with("  ")) {
      std::string title;
      for (char c : trimmed(line.substr(0, line.find(':')))) title += c >= 'a' && c <= 'z' ? char(c - 32) : c;
      page += ".SH " + title + "\n";
      continue;
    }
    line.remove_prefix(2);
    const std::size_t gap = line.find("  ");
    put_item(page, bold(std::string(line.substr(0, gap))), std::string(trimmed(line.substr(gap))));
  }
}

// "Dampward plans this and that.\n..." as "plans this and that".
std::string what_it_does(const std::string& text) {
  const std::size_t from = text.find(' ') + 1;
  return text.substr(from, text.find(".\n") - from);
}

}  // namespace

std::string manual(const Description& all, const std::string& version) {
  std::string page = ".TH DAMPWARD 1 \"\" \"Dampward " + version + "\" \"User Commands\"\n";
  page += ".SH NAME\ndampward \\- " + escaped(what_it_does(all.text)) + "\n";
  page += ".SH SYNOPSIS\n" + bold("dampward") + " " + italic("VERB") + " [options]\n";
  page += ".SH DESCRIPTION\n";
  for (std::string_view line : split(all.text, '\n')) page += escaped(line) + "\n";
  page += ".SH OPTIONS\n";
  put_options(page, all.options);
  page += ".SH VERBS\n";
  for (const VerbText& verb : all.verbs) put_verb(page, verb);
  put_after(page, all.after);
  return page;
}

}  // namespace dampward::cli
