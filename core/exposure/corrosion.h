#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/quantity.h"
#include "core/quantity/range.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::exposure {

enum class Metal { steel, zinc, copper, aluminium };
inline constexpr std::array<Metal, 4> metals = {Metal::steel, Metal::zinc, Metal::copper, Metal::aluminium};

// Corrosivity of the air, C1 very low to CX extreme.
enum class Corrosivity { c1, c2, c3, c4, c5, cx };

// Thickness lost per time; aluminium is measured by mass and turned into thickness at 2700 kg/m³.
using LossRate = Speed;

struct MetalLoss {
  Metal metal = Metal::steel;
  Range<LossRate> loss;                    // first year outdoors
  Corrosivity category = Corrosivity::c1;  // of the typical loss
  Corrosivity worst = Corrosivity::c1;     // of the highest believable loss
};

// Chloride that settles at the place, and how it is known.
struct SaltDeposition {
  Range<DepositionRate> chloride;
  std::string source;  // "measured", "estimated from 400 m to the surf", "unknown: …"
};
SaltDeposition given_salt(DepositionRate chloride);
//   S = 5 + 600/(1 + d/40 m) mg/(m² day), within a factor 3 either way
// An estimate: its shape is that of published decays from the surf line; Norfolk Island had 51 to 1023 near its coast and 23
// to 37 beyond 400 m (Teixeira et al., abstract read; rain collectors). A month of the wet candle of ISO 9225 settles it.
SaltDeposition estimated_salt(Length surf_distance);
// From an inland 3 to a surf-side 300; typical 60: never taken as none.
SaltDeposition unknown_salt();

// First-year loss of each metal outdoors by the dose-response functions of ISO 9223:2012:
//   a Pd^b exp(c RH + f(T)) + d Sd^e exp(g RH + h T)   µm a year; Pd SO2, Sd chloride, mg/(m² day); RH %, T °C, annual means
// Steel's coefficients were read in a public implementation that cites the standard; those of zinc, copper and aluminium
// are from memory. Range: the standard's uncertainty of the estimate, a factor 1.5 either way (aluminium 2; from memory),
// over the range of the salt. Outdoors only and annual means only: it ranks places, it does not forecast a set's rust.
std::vector<MetalLoss> first_year_loss(Temperature mean_temperature, RelativeHumidity mean_humidity,
                                       const Range<DepositionRate>& chloride, DepositionRate sulphur_dioxide);

// The single function at one point, without uncertainty.
LossRate first_year_loss(Metal metal, Temperature mean_temperature, RelativeHumidity mean_humidity,
                         DepositionRate chloride, DepositionRate sulphur_dioxide);

// Where a mean lies outside what the functions were fitted to (T -17.1 to 28.7 °C, RH 34 to 93 %, SO2 0.7 to 150.4, Cl
// 0.4 to 760.5 mg/(m² day); from memory), one sentence each.
std::vector<std::string> outside_validity(Temperature mean_temperature, RelativeHumidity mean_humidity,
                                          const Range<DepositionRate>& chloride,
                                          DepositionRate sulphur_dioxide);

// Table 2 of ISO 9223:2012; steel's bounds read in public quotations, the others from memory.
Corrosivity category(Metal metal, LossRate loss);

std::string_view name(Metal metal);              // "steel"
std::string_view name(Corrosivity corrosivity);  // "C1" to "CX"

}  // namespace dampward::exposure
