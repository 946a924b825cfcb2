#include "core/drying/sorbing_body.h"

#include <cmath>

namespace dampward::drying {

SorbingBody::SorbingBody(Shape shape, double layer, MoistureContent start)
    : whole_(modes(shape)),
      layered_(modes(shape, layer)),
      same_(layer == 1),
      surface_(start.fraction()),
      mean_(surface_),
      layer_(surface_) {}

void SorbingBody::advance(double fourier, MoistureContent surface) {
  double move = surface.fraction() - surface_;
  if (!started_) {  // the surface is there at once, and the inside still where it was
    started_ = true;
    for (double& q : q_) q = -move;
    move = 0;
  }
  surface_ = surface.fraction();
  open_ = 1;
  for (std::size_t i = 0; i < q_.size(); ++i) {
    const double x = whole_[i].rate * fourier;
    const double decay = x > 50 ? 0 : std::exp(-x);
    lag_[i] = x > 1e-6 ? (1 - decay) / x : 1 - x / 2;
    q_[i] = q_[i] * decay - move * lag_[i];
    open_ -= whole_[i].weight * lag_[i];
  }
  sum_up();
}

void SorbingBody::correct(MoistureContent surface) {
  const double move = surface.fraction() - surface_;
  surface_ = surface.fraction();
  for (std::size_t i = 0; i < q_.size(); ++i) q_[i] -= move * lag_[i];
  sum_up();
}

void SorbingBody::sum_up() {
  mean_ = layer_ = surface_;
  for (std::size_t i = 0; i < q_.size(); ++i) {
    mean_ += whole_[i].weight * q_[i];
    layer_ += layered_[i].weight * q_[i];
  }
  if (same_) layer_ = mean_;
}

}  // namespace dampward::drying
