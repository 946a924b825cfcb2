#include "adapters/files/sha256.h"

#include <openssl/evp.h>

#include <array>

#include "core/base/promise.h"

namespace dampward::files {

std::string sha256_hex(std::string_view bytes) {
  std::array<unsigned char, 32> digest{};
  unsigned int size = 0;
  const int done = EVP_Digest(bytes.data(), bytes.size(), digest.data(), &size, EVP_sha256(), nullptr);
  DAMPWARD_PROMISE(done == 1 && size == digest.size(), "SHA-256 is at hand and 32 bytes long");
  static constexpr char digits[] = "0123456789abcdef";
  std::string hex;
  for (const unsigned char byte : digest) {
    hex += digits[byte >> 4];
    hex += digits[byte & 15];
  }
  return hex;
}

}  // namespace dampward::files
