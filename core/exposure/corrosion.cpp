#include "core/exposure/corrosion.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"

namespace dampward::exposure {
namespace {

constexpr DepositionRate unit = milligram_per_square_metre_day;
constexpr LossRate micrometre_a_year = micrometre / year;
constexpr double aluminium_density = 2.7;  // g/(m² µm)

struct Row {
  double a, b, c, below_10, above_10;  // SO2 term; f = slope (T − 10)
  double d, e, g, h;                   // chloride term
  std::array<double, 5> bounds;        // upper ends of C1 to C5, µm (aluminium g/m²) a year
  double uncertainty;                  // factor either way
};

// ISO 9223:2012 equations 1 to 4, table 2 (aluminium C1 "negligible": taken as up to 0.1), table A.1.
constexpr std::array<Row, 4> rows = {{
    {1.77, 0.52, 0.020, 0.150, -0.054, 0.102, 0.62, 0.033, 0.040, {1.3, 25, 50, 80, 200}, 1.5},
    {0.0129, 0.44, 0.046, 0.038, -0.071, 0.0175, 0.57, 0.008, 0.085, {0.1, 0.7, 2.1, 4.2, 8.4}, 1.5},
    {0.0053, 0.26, 0.059, 0.126, -0.080, 0.01025, 0.27, 0.036, 0.049, {0.1, 0.6, 1.3, 2.8, 5.6}, 1.5},
    {0.0042, 0.73, 0.025, 0.009, -0.043, 0.0018, 0.60, 0.020, 0.094, {0.1, 0.6, 2, 5, 10}, 2},
}};

const Row& row_of(Metal metal) {
  return rows[static_cast<std::size_t>(metal)];
}

// µm to the unit the standard gives the metal's loss in.
double scale_of(Metal metal) {
  return metal == Metal::aluminium ? aluminium_density : 1;
}

}  // namespace

SaltDeposition given_salt(DepositionRate chloride) {
  return {chloride, "measured"};
}

SaltDeposition estimated_salt(Length surf_distance) {
  const DepositionRate typical = (5 + 600 / (1 + surf_distance / (40 * metre))) * unit;
  return {{typical / 3, typical, 3 * typical},
          format("estimated from {} m to the surf, within a factor 3 either way",
                 fixed(surf_distance.in(metre), 0))};
}

SaltDeposition unknown_salt() {
  return {
      {3 * unit, 60 * unit, 300 * unit},
      "unknown: from an inland 3 to a surf-side 300 mg/(m² day); give the salt or the distance to the surf"};
}

LossRate first_year_loss(Metal metal, Temperature mean_temperature, RelativeHumidity mean_humidity,
                         DepositionRate chloride, DepositionRate sulphur_dioxide) {
  const Row& row = row_of(metal);
  const double t = mean_temperature.celsius(), rh = mean_humidity.percent();
  const double so2 = std::max(sulphur_dioxide.in(unit), 0.0), cl = std::max(chloride.in(unit), 0.0);
  const double f = (t <= 10 ? row.below_10 : row.above_10) * (t - 10);
  const double loss = row.a * std::pow(so2, row.b) * std::exp(row.c * rh + f) +
                      row.d * std::pow(cl, row.e) * std::exp(row.g * rh + row.h * t);
  return loss / scale_of(metal) * micrometre_a_year;
}

std::vector<MetalLoss> first_year_loss(Temperature mean_temperature, RelativeHumidity mean_humidity,
                                       const Range<DepositionRate>& chloride,
                                       DepositionRate sulphur_dioxide) {
  std::vector<MetalLoss> losses;
  for (const Metal metal : metals) {
    const auto with = [&](DepositionRate salt) {
      return first_year_loss(metal, mean_temperature, mean_humidity, salt, sulphur_dioxide);
    };
    const double factor = row_of(metal).uncertainty;
    const Range<LossRate> loss{with(chloride.low) / factor, with(chloride.typical),
                               factor * with(chloride.high)};
    losses.push_back({metal, loss, category(metal, loss.typical), category(metal, loss.high)});
  }
  return losses;
}

std::vector<std::string> outside_validity(Temperature mean_temperature, RelativeHumidity mean_humidity,
                                          const Range<DepositionRate>& chloride,
                                          DepositionRate sulphur_dioxide) {
  std::vector<std::string> sentences;
  const auto check = [&](const char* what, double value, double low, double high, const char* units) {
    if (value >= low && value <= high) return;
    sentences.push_back(
        format("{} of {} {} lies outside {} to {} {}, where the corrosion functions were fitted.", what,
               fixed(value, 1), units, fixed(low, 1), fixed(high, 1), units));
  };
  check("A yearly mean temperature", mean_temperature.celsius(), -17.1, 28.7, "°C");
  check("A yearly mean humidity", mean_humidity.percent(), 34, 93, "%");
  check("A sulphur dioxide deposition", sulphur_dioxide.in(unit), 0.7, 150.4, "mg/(m² day)");
  check("A chloride deposition", chloride.typical.in(unit), 0.4, 760.5, "mg/(m² day)");
  return sentences;
}

Corrosivity category(Metal metal, LossRate loss) {
  const double value = loss.in(micrometre_a_year)*scale_of(metal);
  const auto& bounds = row_of(metal).bounds;
  return static_cast<Corrosivity>(std::lower_bound(bounds.begin(), bounds.end(), value) - bounds.begin());
}

std::string_view name(Metal metal) {
  constexpr std::array<std::string_view, 4> names = {"steel", "zinc", "copper", "aluminium"};
  return names[static_cast<std::size_t>(metal)];
}

std::string_view name(Corrosivity corrosivity) {
  constexpr std::array<std::string_view, 6> names = {"C1", "C2", "C3", "C4", "C5", "CX"};
  return names[static_cast<std::size_t>(corrosivity)];
}

}  // namespace dampward::exposure
