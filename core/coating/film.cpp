#include "core/coating/film.h"

#include <algorithm>
#include <cmath>

#include "core/base/promise.h"

namespace dampward::coating {
namespace {

constexpr Density lightest_solids = 0.9 * kilogram_per_litre;
constexpr Density heaviest_solids = 2.0 * kilogram_per_litre;

VolumeShare ideal(MassShare solids, Density lacquer, Density solvent) {
  const double ws = solids.fraction();
  const double share = 1 - (1 - ws) * (lacquer / solvent);
  const double least = ws * (lacquer / heaviest_solids),
               most = std::min(1.0, ws * (lacquer / lightest_solids));
  return VolumeShare::fraction(std::clamp(share, std::min(least, most), most));
}

Volume used(Area area, Length dry, VolumeShare solids, TransferEfficiency efficiency) {
  DAMPWARD_PROMISE(solids.fraction() > 0 && efficiency.fraction() > 0,
                   "lacquer holds solids and some of it lands");
  return area * dry / (solids.fraction() * efficiency.fraction());
}

}  // namespace

Range<VolumeShare> volume_solids(Range<MassShare> solids, Range<Density> lacquer, Range<Density> solvent) {
  const VolumeShare low = ideal(solids.low, lacquer.low, solvent.low);
  const VolumeShare typical = ideal(solids.typical, lacquer.typical, solvent.typical);
  const VolumeShare high = ideal(solids.high, lacquer.high, solvent.high);
  // Rounded figures can cross; the spread then keeps its ends in order.
  return {std::min(low, typical), typical, std::max(high, typical)};
}

Range<VolumeShare> thinned(Range<VolumeShare> volume_solids, double thinner_parts) {
  const auto thin = [&](VolumeShare share) {
    return VolumeShare::fraction(share.fraction() / (1 + thinner_parts));
  };
  return {thin(volume_solids.low), thin(volume_solids.typical), thin(volume_solids.high)};
}

Length dry_film(Length wet, VolumeShare volume_solids) {
  return volume_solids.fraction() * wet;
}

Length wet_film(Length dry, VolumeShare volume_solids) {
  DAMPWARD_PROMISE(volume_solids.fraction() > 0, "a film needs solids");
  return dry / volume_solids.fraction();
}

Spread spread(Length dry, VolumeShare volume_solids) {
  DAMPWARD_PROMISE(dry > Length{}, "a film has a thickness");
  return volume_solids.fraction() / dry;
}

Range<Length> film_built(int coats, Range<Length> wet_coat, Range<VolumeShare> volume_solids) {
  return {coats * dry_film(wet_coat.low, volume_solids.low),
          coats * dry_film(wet_coat.typical, volume_solids.typical),
          coats * dry_film(wet_coat.high, volume_solids.high)};
}

int coats_needed(Length wanted, Range<Length> dry_coat) {
  DAMPWARD_PROMISE(dry_coat.low > Length{}, "a coat has a thickness");
  return std::max(1, static_cast<int>(std::ceil(wanted / dry_coat.low - 1e-9)));
}

Range<Volume> litres(Range<Area> area, Range<Length> dry, Range<VolumeShare> volume_solids,
                     Range<TransferEfficiency> efficiency) {
  return {used(area.low, dry.low, volume_solids.high, efficiency.high),
          used(area.typical, dry.typical, volume_solids.typical, efficiency.typical),
          used(area.high, dry.high, volume_solids.low, efficiency.low)};
}

}  // namespace dampward::coating
