#pragma once

#include <string>
#include <string_view>

namespace dampward::files {

// The SHA-256 of the bytes (FIPS 180-4) as 64 lower-case hexadecimal digits.
std::string sha256_hex(std::string_view bytes);

}  // namespace dampward::files
