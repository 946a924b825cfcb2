#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/exposure/weather.h"

namespace dampward::files {

// Hourly weather from an EPW, TMY3 CSV or NSRDB CSV file, known by what stands in it, not by its name.
//   Humidity   EPW and TMY3: their humidity column, above 100 and up to 105 % clamped and counted, above that refused.
//              NSRDB: from the dew point.
//   Missing    fillers (EPW 99.9, 999, 9999, 999999; TMY3 -9900; empty) and absent rows: up to 6 h in a row interpolated
//              and counted, longer ones left out and listed. A missing dew point alone is computed from temperature and
//              humidity and its hour counted as filled. A missing pressure is the standard one of the elevation, not
//              counted: no figure of exposure rests on it.
//   Whole      the record runs over the period its head states (EPW) or whole years; 29 February may be there or not.
// Faults name line and column, all at once up to 20: missing or unreadable file, no text, another kind of file, a head or a
// row cut short, wrong number of fields, a number that is none or cannot be, hours out of order or twice, a record that ends
// early, nothing but fillers.
Result<exposure::Weather> read_weather(const std::filesystem::path& path, const std::string& shown);

// The same for text at hand; `shown` names it in faults.
Result<exposure::Weather> parse_weather(std::string_view text, const std::string& shown);

}  // namespace dampward::files
