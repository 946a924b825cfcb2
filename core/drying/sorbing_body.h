#pragma once

#include "core/drying/diffusion_modes.h"
#include "core/quantity/shares.h"

namespace dampward::drying {

// Water in one part whose surface follows the air: at rest with it at every moment, while the inside lags by
// diffusion. The diffusivity is the same all through the part at any one moment, so each mode of the series runs by
// itself, and for a surface that moves in a straight line over a step it does so exactly, however long the step:
//   q(t + Δ) = q(t) exp(−rate ΔFo) − Δw_surface (1 − exp(−rate ΔFo))/(rate ΔFo),    mean = w_surface + Σ weight · q
// Source: superposition for linear diffusion (Duhamel; [Crank1975] sect. 3.5 and 7.1, from memory). A finite-volume
// twin in tests/drying checks it. The mean stays between the wettest and the driest the start and the surface have been.
class SorbingBody {
 public:
  // Evenly damp at first. Promise: as `modes`.
  SorbingBody(Shape shape, double layer, MoistureContent start);

  // Over a step in which ∫ D dt/L² is `fourier` and the surface goes from where it was to `surface`. The first step's
  // surface jumps there at once.
  void advance(double fourier, MoistureContent surface);
  // The same step with its surface ending somewhere else after all.
  void correct(MoistureContent surface);
  // How much more the mean would hold for each unit the surface were wetter at the end of the step just made.
  double openness() const { return open_; }

  MoistureContent mean() const { return MoistureContent::fraction(mean_); }    // over the whole part
  MoistureContent layer() const { return MoistureContent::fraction(layer_); }  // over the layer that is asked
  MoistureContent surface() const { return MoistureContent::fraction(surface_); }

 private:
  Modes whole_;
  Modes layered_;
  bool same_ = true;  // the layer is the whole
  std::array<double, std::tuple_size_v<Modes>> q_{};
  void sum_up();

  std::array<double, std::tuple_size_v<Modes>> lag_{};
  double surface_ = 0, mean_ = 0, layer_ = 0, open_ = 0;
  bool started_ = false;
};

}  // namespace dampward::drying
