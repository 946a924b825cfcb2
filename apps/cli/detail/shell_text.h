#pragma once

#include <string>
#include <vector>

namespace dampward::cli {

std::string joined(const std::vector<std::string>& words, const std::string& between);

// The text with the escape before each of these signs.
std::string put_before(const std::string& signs, const std::string& text, const std::string& escape);

// Within single quotes of bash and zsh.
std::string quoted(const std::string& text);

}  // namespace dampward::cli
