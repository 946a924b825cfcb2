#pragma once

#include <compare>

namespace dampward {

// A share between parts of a whole, told apart by what it is a share of. 0.65 and 65 % are the same share.
template <class Tag>
class Share {
 public:
  constexpr Share() = default;
  static constexpr Share fraction(double value) { return Share(value); }
  static constexpr Share percent(double value) { return Share(value / 100); }
  static constexpr Share ppm(double value) { return Share(value / 1e6); }

  constexpr double fraction() const { return fraction_; }
  constexpr double percent() const { return fraction_ * 100; }
  constexpr double ppm() const { return fraction_ * 1e6; }

  friend constexpr auto operator<=>(Share a, Share b) = default;

 private:
  constexpr explicit Share(double fraction) : fraction_(fraction) {}
  double fraction_ = 0;
};

using RelativeHumidity = Share<struct RelativeHumidityTag>;  // vapour pressure over saturation pressure
using MoistureContent = Share<struct MoistureContentTag>;    // kg water over kg dry material
using VapourShare = Share<struct VapourShareTag>;            // m³ solvent vapour over m³ of air and vapour
using VolumeShare = Share<struct VolumeShareTag>;            // by volume of a liquid
using MassShare = Share<struct MassShareTag>;                // by mass of a liquid
using TransferEfficiency =
    Share<struct TransferEfficiencyTag>;  // solids that stay on the work over solids sprayed

}  // namespace dampward
