#pragma once

#include <string>
#include <vector>

namespace dampward::pdf {

// White squares that must stand about a code on every side (ISO/IEC 18004).
inline constexpr int quiet_squares = 4;

// The squares of a QR code of error correction level Q, row by row, dark is true; without the quiet zone.
// Promise: at most papers::longest_code bytes.
std::vector<std::vector<bool>> code_of(const std::string& text);

}  // namespace dampward::pdf
