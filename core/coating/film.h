#pragma once

#include "core/quantity/quantity.h"
#include "core/quantity/range.h"
#include "core/quantity/shares.h"

namespace dampward::coating {

using Spread = decltype(square_metre / litre);  // area covered by a volume
inline constexpr Spread square_metre_per_litre = square_metre / litre;

// Share of a lacquer's volume that stays as film, the volumes of solids and solvent adding up (ideal mixing):
//   VS = 1 − (1 − ws) ρ_lacquer / ρ_solvent
// Low goes with low solids, the lighter lacquer and the lighter solvent. The answer is held to solids of 0.9 to 2.0 kg/L
// (ws ρ_lacquer / 2.0 … ws ρ_lacquer / 0.9, an estimate: clear resin to pigmented film), because three rounded figures may
// contradict each other; 0 for a liquid without solids.
// Source: mass balance; checked against the worked value in docs/theory/film_and_window.md.
Range<VolumeShare> volume_solids(Range<MassShare> solids, Range<Density> lacquer, Range<Density> solvent);

// After adding `thinner_parts` (by volume, to one part of lacquer): VS / (1 + r).
Range<VolumeShare> thinned(Range<VolumeShare> volume_solids, double thinner_parts);

// DFT = WFT · VS. Source: MIL-HDBK-1110 (after thinning the new solids count).
Length dry_film(Length wet, VolumeShare volume_solids);
// WFT = DFT / VS. Promise: some solids.
Length wet_film(Length dry, VolumeShare volume_solids);
// Area one litre covers when nothing is lost: VS / DFT. Promise: a film above zero.
Spread spread(Length dry, VolumeShare volume_solids);

// Dry film of so many coats. Low goes with the thinnest coat and the poorest solids.
Range<Length> film_built(int coats, Range<Length> wet_coat, Range<VolumeShare> volume_solids);
// Coats until even the thinnest believable film reaches the wanted one. Promise: coats have a thickness.
int coats_needed(Length wanted, Range<Length> dry_coat);

// Lacquer as it goes into the gun or on the brush, lost overspray included: V = A · DFT / (VS · TE).
// High goes with the largest area, the thickest film, the poorest solids and efficiency: what to have ready.
// Promise: solids and efficiency above zero.
Range<Volume> litres(Range<Area> area, Range<Length> dry, Range<VolumeShare> volume_solids,
                     Range<TransferEfficiency> efficiency);

}  // namespace dampward::coating
