#include "adapters/files/weather.h"

#include "adapters/files/text_file.h"
#include "adapters/files/weather_record.h"
#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {

Result<exposure::Weather> parse_weather(std::string_view text, const std::string& shown) {
  if (trimmed(text.substr(0, 4000)).empty() && trimmed(text).empty()) {
    return Problem{
        {shown}, "an empty file", "an EPW, TMY3 CSV or NSRDB CSV weather file", "Fetch the file anew."};
  }
  WeatherFaults faults(shown);
  WeatherRecord record;
  if (is_epw(text)) {
    record = read_epw(text, faults);
  } else if (is_nsrdb(text)) {
    record = read_nsrdb(text, faults);
  } else if (is_tmy3(text)) {
    record = read_tmy3(text, faults);
  } else {
    return Problem{{shown, 1},
                   format("no weather file: it begins \"{}\"",
                          trimmed(text.substr(0, text.find_first_of("\r\n"))).substr(0, 60)),
                   "an EPW file (it begins \"LOCATION,\"), a TMY3 CSV (its second line begins \"Date "
                   "(MM/DD/YYYY)\") or an "
                   "NSRDB CSV (it begins \"Source,Location ID\")",
                   "Unpack the file if it is packed, and pick the hourly weather file itself."};
  }
  exposure::Weather weather = mend(std::move(record), faults);
  if (!faults.empty()) return faults.take();
  return weather;
}

Result<exposure::Weather> read_weather(const std::filesystem::path& path, const std::string& shown) {
  const Result<std::string> text = read_text(path, shown);
  if (!text) return text.problems();
  return parse_weather(*text, shown);
}

}  // namespace dampward::files
