// A weather year to the exposure of one storage, against a plain loop that only reads the lines and converts the columns
// used.   bench_weather_exposure [weather.epw]   (without a file: a made-up year of the same shape)
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <string>
#include <vector>

#include "adapters/files/weather.h"
#include "core/base/format.h"
#include "core/exposure/storage_exposure.h"

using namespace dampward;

namespace {

// 8760 rows of 35 fields, as long as those of real files.
void write_made_up_year(const std::filesystem::path& path) {
  std::ofstream file(path, std::ios::binary);
  file << "LOCATION,Made-up coast,-,-,bench,000000,-10.0,40.0,3.0,12.0\n"
          "DESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\nHOLIDAYS/DAYLIGHT "
          "SAVINGS,No,0,0,0\n"
          "COMMENTS 1,\nCOMMENTS 2,\nDATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n";
  constexpr int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  for (int month = 1, hours = 0; month <= 12; ++month) {
    for (int day = 1; day <= days[month - 1]; ++day) {
      for (int hour = 1; hour <= 24; ++hour, ++hours) {
        const double t =
            26 + 3 * std::sin(hours * 2 * M_PI / 8760) + 4 * std::sin((hour - 9) * 2 * M_PI / 24);
        const double dew = std::min(t, 23 + 2 * std::sin(hours * 0.01));
        const int rh =
            static_cast<int>(100 * std::exp(17.62 * dew / (243.12 + dew) - 17.62 * t / (243.12 + t)));
        file << format(
            "1987,{},{},{},0,?9?9?9?9E0?9?9?9?9?9?9?9?9?9?9?9?9?9?9?9*9*9*9*9*9,{:.1f},{:.1f},{},101500,0,0,"
            "357,0,0,"
            "0,0,0,0,0,0,0.0,0,0,19.3,77777,9,999999999,359,0.1100,0,88,999.000,999.0,99.0\n",
            month, day, hour, t, dew, rh);
      }
    }
  }
}

// The sum of the four columns exposure uses: lines by getline, fields by counting commas, numbers by strtod.
double plain_loop(const std::string& path) {
  std::ifstream file(path);
  std::string line;
  double sum = 0;
  for (int i = 0; i < 8; ++i) std::getline(file, line);
  while (std::getline(file, line)) {
    std::size_t at = 0;
    for (int field = 0; field < 6; ++field) at = line.find(',', at) + 1;
    for (int column = 0; column < 4; ++column) {
      sum += std::strtod(line.c_str() + at, nullptr);
      at = line.find(',', at) + 1;
    }
  }
  return sum;
}

double ours(const std::string& path) {
  const auto weather = files::read_weather(path, path);
  if (!weather) {
    std::fputs((to_text(weather.problems().front()) + "\n").c_str(), stderr);
    std::exit(2);
  }
  return exposure::expose(*weather, shop::Storage::open_shed).mould_max[0];
}

double milliseconds(const std::function<double()>& work) {
  const auto start = std::chrono::steady_clock::now();
  [[maybe_unused]] static volatile double sink;
  sink = work();
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

double median(std::vector<double> values) {
  std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2),
                   values.end());
  return values[values.size() / 2];
}

}  // namespace

int main(int count, char** arguments) {
  const std::filesystem::path made_up = std::filesystem::temp_directory_path() / "dampward_bench_year.epw";
  std::string path = made_up.string();
  if (count > 1)
    path = arguments[1];
  else
    write_made_up_year(made_up);

  // Turn and turn about, so that other work on the machine meets both alike.
  std::vector<double> plain_ms, ours_ms, ratios;
  for (int turn = 0; turn < 41; ++turn) {
    plain_ms.push_back(milliseconds([&] { return plain_loop(path); }));
    ours_ms.push_back(milliseconds([&] { return ours(path); }));
    ratios.push_back(ours_ms.back() / plain_ms.back());
  }
  std::puts(format("Weather year to the exposure of one storage: {:.1f} ms; plain loop over lines and "
                   "columns: {:.1f} ms; ratio {:.2f} "
                   "(median of {} turns; at most 3 wanted).",
                   median(ours_ms), median(plain_ms), median(ratios), ratios.size())
                .c_str());
  std::filesystem::remove(made_up);
}
