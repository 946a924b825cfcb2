#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/civil_time.h"

namespace dampward::files::detail {

// A serial that a spreadsheet took for a number and shortened: "1.2E+05". Its digits are lost.
bool shortened_serial(std::string_view serial);

// The serial with the leading zeros it most likely had, when the serials beside it (all digits, of one length) have some and this
// one is shorter: "42" beside "0041" gives "0042". Nothing when there is no such suspicion.
std::optional<std::string> with_lost_zeros(std::string_view serial, const std::vector<std::string>& all);

// What a person should write in place of a date that is not in the form 2026-12-04, as a sentence: day, month and year turned
// round ("04/12/2026", "2026-25-12"), or a spreadsheet's day number ("46360"). An empty text when it is no date of any kind.
std::string how_to_write(std::string_view date);

// The date with day and month exchanged, where that is a date and a different one.
std::optional<Date> turned_round(Date date);

}  // namespace dampward::files::detail
