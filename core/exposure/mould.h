#pragma once

#include <array>
#include <string_view>

#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::exposure {

// How readily mould takes a surface (Ojanen et al. 2010). Which of our materials belongs where is our judgement.
enum class MouldClass {
  very_sensitive,    // raw wood, leather, cotton webbing, kraft paper, any dirty or greasy surface
  sensitive,         // paper-faced and glued wood, cloth-covered wire, cut edges of phenolic paper
  medium_resistant,  // plasticised vinyl, dusty paint
  resistant,         // clean glass, ceramic, metal, sound lacquer film
};
inline constexpr std::array<MouldClass, 4> mould_classes = {
    MouldClass::very_sensitive, MouldClass::sensitive, MouldClass::medium_resistant, MouldClass::resistant};

// The mould index by class, in the order of the enumeration:
// 0 none, 1 first growth under the microscope, 2 colonies under the microscope, 3 first seen by eye (under 10 %),
// 4 seen on 10 to 50 %, 5 on more than half, 6 all over.
using MouldIndices = std::array<double, 4>;

// Humidity at the surface below which a class does not grow at this temperature:
//   max(-0.00267 T³ + 0.160 T² − 3.13 T + 100, RHmin)  %   T in °C, for T from 0.1 to 20; RHmin above 20
// with RHmin 80 % for the sensitive classes and 85 % for the resistant ones.
RelativeHumidity critical_humidity(MouldClass mould_class, Temperature surface);

// Where the index of a class stops under constant conditions:
//   A + B x − C x²,  x = (RHcrit − RH)/(RHcrit − 100);  0 below the critical humidity
double highest_index(MouldClass mould_class, Temperature surface, RelativeHumidity humidity);

// Mould growing hour by hour on a surface, all four classes at once. Every index starts at 0.
//   grows (0.1 ≤ T < 50 °C, RH ≥ RHcrit):  dM/dt = k1 k2 / (7 exp(−0.68 ln T − 13.9 ln RH + 66.02)) per day,
//       k2 = max(1 − exp(2.3 (M − Mmax)), 0); pine and original surface (W = 0, SQ = 0)
//   else falls: 0.00133 per hour in the first 6 h, nothing up to 24 h, 0.000667 per hour after, times `decline`
// Source: Hukka and Viitanen 1999, Wood Sci. Technol. 33:475-485; classes: Ojanen et al. 2010. Neither paper was at hand;
// all coefficients were read in the model code of the Finnish TRH-1 data project (anssilaukkarinen/trh-1, mi.py).
// Fitted to wood and building materials up to 50 °C: a ranking for our surfaces, not a forecast.
class MouldGrowth {
 public:
  // decline: 1 as measured on pine (the published model); materials that hold their growth fall slower, 0.1 to 0.5.
  // Which of ours do is not known.
  explicit MouldGrowth(double decline = 1) : decline_(decline) {}

  // One more hour with this state at the surface.
  void hour(Temperature surface, RelativeHumidity humidity);

  const MouldIndices& indices() const { return indices_; }

 private:
  void grow_or_fall(int first, int last, double critical, double rate, bool warm, double humidity);

  double decline_;
  MouldIndices indices_{};
  std::array<int, 2> dry_hours_{};  // since growth stopped: sensitive pair, resistant pair
};

std::string_view name(MouldClass mould_class);  // "very_sensitive" and so on

}  // namespace dampward::exposure
