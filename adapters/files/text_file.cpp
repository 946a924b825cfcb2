#include "adapters/files/text_file.h"

#include <cmath>
#include <fstream>
#include <sstream>

#include "core/base/format.h"

namespace dampward::files {
namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t largest_file = 64'000'000;

void append_utf8(std::string& text, char32_t c) {
  const auto byte = [&](char32_t bits) { text += static_cast<char>(bits); };
  if (c < 0x80) {
    byte(c);
  } else if (c < 0x800) {
    byte(0xC0 | (c >> 6));
    byte(0x80 | (c & 0x3F));
  } else if (c < 0x10000) {
    byte(0xE0 | (c >> 12));
    byte(0x80 | ((c >> 6) & 0x3F));
    byte(0x80 | (c & 0x3F));
  } else {
    byte(0xF0 | (c >> 18));
    byte(0x80 | ((c >> 12) & 0x3F));
    byte(0x80 | ((c >> 6) & 0x3F));
    byte(0x80 | (c & 0x3F));
  }
}

bool has_mark(std::string_view bytes) {
  return bytes.starts_with("\xEF\xBB\xBF") || bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF");
}

bool is_utf8(std::string_view bytes) {
  for (std::size_t i = 0; i < bytes.size();) {
    const auto lead = static_cast<unsigned char>(bytes[i]);
    const std::size_t more = lead < 0x80                   ? 0
                             : lead >= 0xC2 && lead < 0xE0 ? 1
                             : lead >= 0xE0 && lead < 0xF0 ? 2
                             : lead >= 0xF0 && lead < 0xF5 ? 3
                                                           : 4;
    if (more == 4 || i + more >= bytes.size()) return false;
    for (std::size_t k = 1; k <= more; ++k) {
      if ((static_cast<unsigned char>(bytes[i + k]) & 0xC0) != 0x80) return false;
    }
    const auto second = more > 0 ? static_cast<unsigned char>(bytes[i + 1]) : 0u;
    const bool overlong = (lead == 0xE0 && second < 0xA0) || (lead == 0xF0 && second < 0x90);
    const bool beyond = (lead == 0xED && second >= 0xA0) || (lead == 0xF4 && second >= 0x90);
    if (overlong || beyond) return false;
    i += more + 1;
  }
  return true;
}

std::string from_utf16(std::string_view bytes, bool big_endian) {
  std::string text;
  const auto unit_at = [&](std::size_t i) {
    const auto a = static_cast<unsigned char>(bytes[i]), b = static_cast<unsigned char>(bytes[i + 1]);
    return static_cast<char32_t>(big_endian ? a << 8 | b : b << 8 | a);
  };
  for (std::size_t i = 0; i + 1 < bytes.size(); i += 2) {
    char32_t c = unit_at(i);
    const bool high = c >= 0xD800 && c < 0xDC00;
    if (high && i + 3 < bytes.size()) {
      const char32_t low = unit_at(i + 2);
      if (low >= 0xDC00 && low < 0xE000) {
        c = 0x10000 + ((c - 0xD800) << 10) + (low - 0xDC00);
        i += 2;
      }
    }
    append_utf8(text, c >= 0xD800 && c < 0xE000 ? U'\uFFFD' : c);
  }
  return text;
}

// Windows-1252 from 0x80 to 0x9F; the rest of the page is ISO 8859-1.
constexpr char32_t windows_1252[] = {0x20AC, 0xFFFD, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
                                     0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0xFFFD, 0x017D, 0xFFFD,
                                     0xFFFD, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                     0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0xFFFD, 0x017E, 0x0178};

std::string from_windows_1252(std::string_view bytes) {
  std::string text;
  for (char byte : bytes) {
    const auto c = static_cast<unsigned char>(byte);
    append_utf8(text, c >= 0x80 && c < 0xA0 ? windows_1252[c - 0x80] : c);
  }
  return text;
}

}  // namespace

std::string as_utf8(std::string_view bytes) {
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  if (bytes.starts_with("\xFF\xFE")) return from_utf16(bytes.substr(2), false);
  if (bytes.starts_with("\xFE\xFF")) return from_utf16(bytes.substr(2), true);
  return is_utf8(bytes) ? std::string(bytes) : from_windows_1252(bytes);
}

Result<std::string> read_bytes(const fs::path& path, const std::string& shown, std::uintmax_t most,
                               const std::string& what) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (!fs::exists(status)) {
    return Problem{{shown}, "no such file", "a readable " + what, "Check the name, or make the file."};
  }
  if (fs::is_directory(status)) {
    return Problem{{shown}, "a folder", "a " + what, "Rename the folder, or put the file in its place."};
  }
  const std::uintmax_t size = fs::file_size(path, error);
  if (!error && size > most) {
    return Problem{{shown},
                   format("a file of {} MB", fixed(std::ceil(static_cast<double>(size) / 1e6), 0)),
                   format("at most {} MB", most / 1'000'000),
                   ""};
  }
  std::ifstream in(path, std::ios::binary);
  // In one piece, as growing a buffer costs far more than reading. What has no size (a pipe) is read on to its end.
  std::string bytes(error ? 0 : static_cast<std::size_t>(size), '\0');
  std::ostringstream rest;
  if (in) in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  bytes.resize(static_cast<std::size_t>(in.gcount()));
  const bool readable = in.is_open() && !in.bad();
  if (in && in.peek() != std::ifstream::traits_type::eof()) rest << in.rdbuf();
  bytes += rest.str();
  if (!readable) {
    return Problem{{shown},
                   "a file that cannot be read",
                   "a readable file",
                   "Check who may read it, and whether another program holds it open."};
  }
  return bytes;
}

Result<std::string> read_text(const fs::path& path, const std::string& shown) {
  Result<std::string> bytes = read_bytes(path, shown, largest_file, "text file");
  if (!bytes) return bytes.problems();
  std::string text = has_mark(*bytes) || !is_utf8(*bytes) ? as_utf8(*bytes) : std::move(bytes).value();
  if (text.find('\0') != std::string::npos) {
    return Problem{{shown},
                   "zero bytes, so this is no text file",
                   "plain text",
                   "Save a spreadsheet as CSV, not as a workbook."};
  }
  return text;
}

}  // namespace dampward::files
