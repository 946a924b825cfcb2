#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace dampward {

// Without the blanks (space, tab, CR, LF, no-break space U+00A0 and U+202F) at both ends.
std::string_view trimmed(std::string_view text);

// The pieces between separators, blanks kept; an empty text gives one empty piece.
std::vector<std::string_view> split(std::string_view text, char separator);

// ASCII letters made small; other bytes stay.
std::string lower_case(std::string_view text);

// "a, b and c".
std::string listed(std::span<const std::string> items);

// The fewest slips of a pen that turn one into the other: bytes put in, left out, replaced, or two neighbours swapped
// (optimal string alignment, after Levenshtein 1966 and Damerau 1964).
std::size_t edit_distance(std::string_view a, std::string_view b);

// The known word a person most likely meant, or an empty text when none is near (a third of its letters, at least 1).
std::string nearest(std::string_view word, std::span<const std::string> known);

// "Did you mean \"heater\"?" or an empty text.
std::string did_you_mean(std::string_view word, std::span<const std::string> known);

}  // namespace dampward
