#pragma once

#include "core/equipment/kind.h"
#include "core/quantity/quantity.h"
#include "core/quantity/temperature_curve.h"

namespace dampward::drying {

using equipment::Shape;

// Share of a body's removable water that is still in it, 1 at first and 0 in the end. `fourier` is ∫ D dt /
// L², with L from `path_length`. Uniform start, surface kept at the floor, D the same everywhere in the body
// at any one moment (it may change with time: then ∫ D dt stands for D t, exactly).
//   plate     Σ (n = 0, 1 …) 8/((2n+1)²π²) · exp(−(2n+1)² π² Fo/4)      [Crank1975] eq. 4.18
//   cylinder  Σ 4/aₙ² · exp(−aₙ² Fo), J0(aₙ) = 0                        eq. 5.23
//   sphere    6/π² Σ 1/n² · exp(−n² π² Fo)                               eq. 6.20
//   and for short times 2√(Fo/π), 4√(Fo/π) − Fo − …, 6√(Fo/π) − 3 Fo taken from 1.
// Source: Crank, The Mathematics of Diffusion, 2nd ed. 1975 (equations from memory; checked against a
// finite-difference twin). Error under 1e-6 everywhere. Promise: the shape is one of the three and fourier is
// not negative.
double residual_share(Shape shape, double fourier);

// The Fourier number after which this share (above 0, at most 1) is left: the inverse of the above.
double fourier_for_residual(Shape shape, double residual);

// The same for the outermost layer of a plate, this share of its path from the surface inwards (above 0, at most 1;
// 1 for all of a body of any shape).
double fourier_for_residual_of_layer(Shape shape, double layer, double residual);

// A block open on all faces: the product of its three plates (Newman 1936).
double residual_share_of_block(double fourier_length, double fourier_width, double fourier_height);

// L of the Fourier number: half a plate open on two faces, all of a plate open on one, the radius of a
// cylinder or sphere. `thickness` is the full thickness or the diameter. Taking half for whole is an error of
// four in time.
Length path_length(Shape shape, Length thickness, int open_faces);

}  // namespace dampward::drying
