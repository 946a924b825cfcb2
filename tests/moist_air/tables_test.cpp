// Every applicable row of the tables of published moist-air values, where they are at hand.
#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string>
#include <vector>

#include "core/base/text.h"
#include "core/moist_air/humid_air.h"
#include "core/moist_air/saturation.h"

using namespace dampward;
using namespace dampward::moist_air;

namespace {

using Row = std::vector<std::string>;

// Lines of a table that lies beside the checkout or where DAMPWARD_DATA points, without its heads; empty when absent.
std::vector<Row> table(const std::string& name) {
  const char* given = std::getenv("DAMPWARD_DATA");
  const std::filesystem::path folder =
      given ? std::filesystem::path(given) : std::filesystem::path(DAMPWARD_SOURCE_DIR) / "../shared/data";
  std::ifstream file(folder / "psychrometrics" / name);
  std::vector<Row> rows;
  std::string line;
  std::getline(file, line);
  while (std::getline(file, line)) {
    Row row;
    for (const auto piece : split(trimmed(line), ',')) row.emplace_back(piece);
    rows.push_back(row);
  }
  return rows;
}

double number(const std::string& text) {
  return std::stod(text);
}

// What we compute for one row of moist_air_vectors_SI.csv; nothing where no door of ours answers it.
std::optional<double> ours(const std::string& result, const std::string& inputs, double a, double b,
                           double c) {
  const auto celsius = [](double t) { return Temperature::celsius(t); };
  const auto ratio = [](double w) { return HumidityRatio::fraction(w); };
  const RelativeHumidity dry = RelativeHumidity::fraction(0), full = RelativeHumidity::fraction(1);
  const std::string key = result + "(" + inputs + ")";
  if (key == "T_K(T_C)") return celsius(a).kelvins();
  if (key == "T_C(T_K)") return Temperature::kelvins(a).celsius();
  if (key == "p_ws(T)") return saturation_pressure(celsius(a)).in(pascal);
  if (key == "W_s(T;p)") return humidity_ratio({celsius(a), full, b * pascal}).fraction();
  if (key == "h_s(T;p)") return enthalpy({celsius(a), full, b * pascal}).si();
  if (key == "T_wb(T;RH;p)")
    return wet_bulb({celsius(a), RelativeHumidity::fraction(b), c * pascal}).celsius();
  if (key == "p_w(T;RH)") return vapour_pressure({celsius(a), RelativeHumidity::fraction(b)}).in(pascal);
  if (key == "h_dry(T)") return enthalpy({celsius(a), dry}).si();
  if (key == "v_dry(T;p)") return specific_volume({celsius(a), dry, b * pascal}).si();
  if (key == "rho_dry(T;p)") return density({celsius(a), dry, b * pascal}).si();
  if (key == "h(T;W)") return enthalpy(from_humidity_ratio(celsius(a), ratio(b), sea_level_pressure)).si();
  if (key == "v(T;W;p)") return specific_volume(from_humidity_ratio(celsius(a), ratio(b), c * pascal)).si();
  if (key == "rho(T;W;p)") return density(from_humidity_ratio(celsius(a), ratio(b), c * pascal)).si();
  if (key == "p_std(z)") return standard_pressure(a * metre).in(pascal);
  if (inputs == "T;T_wb;p") {
    const HumidAir air = from_wet_bulb(celsius(a), celsius(b), c * pascal);
    if (result == "W") return humidity_ratio(air).fraction();
    if (result == "T_dp") return dew_point(air).celsius();
    if (result == "RH") return air.humidity.fraction();
    if (result == "h") return enthalpy(air).si();
    if (result == "v") return specific_volume(air).si();
  }
  return std::nullopt;
}

}  // namespace

TEST_CASE("moist air agrees with every row of the published vectors it has a door for") {
  const std::vector<Row> rows = table("moist_air_vectors_SI.csv");
  if (rows.empty()) {
    MESSAGE("the table of moist-air vectors is not here; skipped");
    return;
  }
  int compared = 0;
  for (const Row& row : rows) {
    REQUIRE(row.size() == 7);
    const auto value = [](const std::string& text) { return text.empty() ? 0.0 : number(text); };
    const auto mine = ours(row[0], row[1], value(row[2]), value(row[3]), value(row[4]));
    if (!mine) continue;
    ++compared;
    const double expected = number(row[5]);
    const double tolerance = number(row[6].substr(row[6].find('=') + 1));
    const double allowed = row[6].starts_with("abs") ? tolerance : tolerance * std::abs(expected);
    INFO(row[0], "(", row[1], ") at ", row[2], " ", row[3], " ", row[4], ": published ", expected, ", ours ",
         *mine);
    CHECK(std::abs(*mine - expected) <= allowed);
  }
  CHECK(compared >= 45);
}

TEST_CASE("air at 200 °C agrees with the ASHRAE research table within 1 %") {
  // ASHRAE RP-1485 table A.11: real-gas values; ours leave the enhancement factor out.
  const std::vector<Row> rows = table("hot_moist_air_200C_RP1485.csv");
  if (rows.empty()) {
    MESSAGE("the table of air at 200 °C is not here; skipped");
    return;
  }
  for (const Row& row : rows) {
    REQUIRE(row.size() == 7);
    const HumidAir air =
        from_humidity_ratio(Temperature::kelvins(number(row[0])), HumidityRatio::fraction(number(row[1])),
                            number(row[2]) * pascal);
    double mine = 0;
    if (row[3] == "T_wb")
      mine = wet_bulb(air).kelvins();
    else if (row[3] == "v")
      mine = specific_volume(air).si();
    else if (row[3] == "h")
      mine = enthalpy(air).si();
    else
      continue;  // entropy: no door
    INFO(row[3], " at W ", row[1], ": published ", row[4], ", ours ", mine);
    CHECK(std::abs(mine - number(row[4])) <= number(row[6]) * number(row[4]));
  }
}
