#pragma once

#include <compare>

namespace dampward {

// A number with a dimension, kept in SI base units. Multiply by a unit to make one, divide by it to read it:
//   Duration hold = 3 * hour;  double h = hold.in(hour);
template <int Kg, int M, int S, int K = 0, int Mol = 0>
class Quantity {
 public:
  constexpr Quantity() = default;
  static constexpr Quantity si(double value) {
    Quantity quantity;
    quantity.si_ = value;
    return quantity;
  }

  constexpr double si() const { return si_; }
  constexpr double in(Quantity unit) const { return si_ / unit.si_; }

  constexpr Quantity operator-() const { return si(-si_); }
  constexpr Quantity& operator+=(Quantity other) { return *this = *this + other; }
  constexpr Quantity& operator-=(Quantity other) { return *this = *this - other; }
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return si(a.si_ + b.si_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return si(a.si_ - b.si_); }
  friend constexpr Quantity operator*(double factor, Quantity a) { return si(factor * a.si_); }
  friend constexpr Quantity operator*(Quantity a, double factor) { return si(factor * a.si_); }
  friend constexpr Quantity operator/(Quantity a, double divisor) { return si(a.si_ / divisor); }
  friend constexpr auto operator<=>(Quantity a, Quantity b) = default;

 private:
  double si_ = 0;
};

namespace detail {
template <int Kg, int M, int S, int K, int Mol>
constexpr auto make_quantity(double si) {
  if constexpr (Kg == 0 && M == 0 && S == 0 && K == 0 && Mol == 0) {
    return si;  // a ratio is a plain number
  } else {
    return Quantity<Kg, M, S, K, Mol>::si(si);
  }
}
}  // namespace detail

template <int A, int B, int C, int D, int E, int F, int G, int H, int I, int J>
constexpr auto operator*(Quantity<A, B, C, D, E> a, Quantity<F, G, H, I, J> b) {
  return detail::make_quantity<A + F, B + G, C + H, D + I, E + J>(a.si() * b.si());
}
template <int A, int B, int C, int D, int E, int F, int G, int H, int I, int J>
constexpr auto operator/(Quantity<A, B, C, D, E> a, Quantity<F, G, H, I, J> b) {
  return detail::make_quantity<A - F, B - G, C - H, D - I, E - J>(a.si() / b.si());
}
template <int A, int B, int C, int D, int E>
constexpr auto operator/(double a, Quantity<A, B, C, D, E> b) {
  return detail::make_quantity<-A, -B, -C, -D, -E>(a / b.si());
}

using Length = Quantity<0, 1, 0>;
using Area = Quantity<0, 2, 0>;
using Volume = Quantity<0, 3, 0>;
using Mass = Quantity<1, 0, 0>;
using Duration = Quantity<0, 0, 1>;
using Speed = Quantity<0, 1, -1>;
using Density = Quantity<1, -3, 0>;
using Pressure = Quantity<1, -1, -2>;
using Energy = Quantity<1, 2, -2>;
using Power = Quantity<1, 2, -3>;
using HeatFlux = Quantity<1, 0, -3>;
using TemperatureStep = Quantity<0, 0, 0, 1>;
using HeatCapacity = Quantity<1, 2, -2, -1>;             // J/K
using SpecificHeat = Quantity<0, 2, -2, -1>;             // J/(kg K)
using HeatConductance = Quantity<1, 2, -3, -1>;          // W/K
using HeatTransferCoefficient = Quantity<1, 0, -3, -1>;  // W/(m² K)
using ThermalConductivity = Quantity<1, 1, -3, -1>;      // W/(m K)
using Diffusivity = Quantity<0, 2, -1>;
using KinematicViscosity = Quantity<0, 2, -1>;
using VolumeFlow = Quantity<0, 3, -1>;
using MassFlow = Quantity<1, 0, -1>;
using SurfaceDensity = Quantity<1, -2, 0>;   // kg/m²
using DepositionRate = Quantity<1, -2, -1>;  // kg/(m² s)
using MolarMass = Quantity<1, 0, 0, 0, -1>;
using MolarEnergy = Quantity<1, 2, -2, 0, -1>;

inline constexpr Length metre = Length::si(1), kilometre = 1e3 * metre, centimetre = 1e-2 * metre,
                        millimetre = 1e-3 * metre, micrometre = 1e-6 * metre, inch = 25.4 * millimetre,
                        foot = 12.0 * inch, mil = 1e-3 * inch;
inline constexpr Area square_metre = Area::si(1), square_foot = Area::si(0.3048 * 0.3048);
inline constexpr Volume cubic_metre = Volume::si(1), litre = 1e-3 * cubic_metre,
                        millilitre = 1e-6 * cubic_metre, us_gallon = 3.785411784 * litre,
                        cubic_foot = Volume::si(0.3048 * 0.3048 * 0.3048);
inline constexpr Mass kilogram = Mass::si(1), gram = 1e-3 * kilogram, milligram = 1e-6 * kilogram,
                      pound = 0.45359237 * kilogram, ounce = pound / 16;
inline constexpr Duration second = Duration::si(1), minute = 60 * second, hour = 3600 * second,
                          day = 24 * hour, year = 365.25 * day;
inline constexpr Speed metre_per_second = Speed::si(1), foot_per_minute = Speed::si(0.3048 / 60);
inline constexpr Density kilogram_per_cubic_metre = Density::si(1), kilogram_per_litre = Density::si(1000);
inline constexpr Pressure pascal = Pressure::si(1), hectopascal = 100 * pascal, kilopascal = 1000 * pascal;
inline constexpr Energy joule = Energy::si(1), kilojoule = 1000 * joule;
inline constexpr Power watt = Power::si(1), kilowatt = 1000 * watt;
inline constexpr HeatFlux watt_per_square_metre = HeatFlux::si(1);
inline constexpr TemperatureStep kelvin = TemperatureStep::si(1), fahrenheit_step = kelvin / 1.8;
inline constexpr HeatCapacity joule_per_kelvin = HeatCapacity::si(1);
inline constexpr SpecificHeat joule_per_kilogram_kelvin = SpecificHeat::si(1);
inline constexpr HeatConductance watt_per_kelvin = HeatConductance::si(1);
inline constexpr HeatTransferCoefficient watt_per_square_metre_kelvin = HeatTransferCoefficient::si(1);
inline constexpr ThermalConductivity watt_per_metre_kelvin = ThermalConductivity::si(1);
inline constexpr Diffusivity square_metre_per_second = Diffusivity::si(1);
inline constexpr KinematicViscosity centistokes = KinematicViscosity::si(1e-6);
inline constexpr VolumeFlow cubic_metre_per_minute = cubic_metre / minute,
                            cubic_metre_per_hour = cubic_metre / hour, litre_per_minute = litre / minute,
                            cubic_foot_per_minute = cubic_foot / minute;
inline constexpr MassFlow kilogram_per_second = MassFlow::si(1);
inline constexpr DepositionRate milligram_per_square_metre_day = milligram / square_metre / day;
inline constexpr MolarMass gram_per_mole = MolarMass::si(1e-3);
inline constexpr MolarEnergy kilojoule_per_mole = MolarEnergy::si(1e3);

}  // namespace dampward
