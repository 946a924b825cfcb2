#pragma once

#include "core/charts/scale.h"
#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::charts {

// The units in which the charts print.
inline constexpr Printed<Temperature> in_celsius{[](const Temperature& t) { return t.celsius(); },
                                                 [](double t) { return Temperature::celsius(t); }};
inline constexpr Printed<RelativeHumidity> in_percent{[](const RelativeHumidity& h) { return h.percent(); },
                                                      [](double h) { return RelativeHumidity::percent(h); }};
inline constexpr Printed<Length> in_millimetres{[](const Length& l) { return l.in(millimetre); },
                                                [](double l) { return l * millimetre; }};
inline constexpr Printed<Duration> in_hours{[](const Duration& t) { return t.in(hour); },
                                            [](double t) { return t * hour; }};
inline constexpr Printed<Area> in_square_metres{[](const Area& a) { return a.in(square_metre); },
                                                [](double a) { return a * square_metre; }};
inline constexpr Printed<Volume> in_litres{[](const Volume& v) { return v.in(litre); },
                                           [](double v) { return v * litre; }};
inline constexpr Printed<Length> in_litres_on_a_square_metre{
    // a volume on an area is a thickness
    [](const Length& l) { return l.in(litre / square_metre); },
    [](double l) { return l * (litre / square_metre); }};
inline constexpr Printed<VolumeFlow> in_litres_an_hour{[](const VolumeFlow& f) { return f.in(litre / hour); },
                                                       [](double f) { return f * (litre / hour); }};
inline constexpr Printed<VolumeFlow> in_cubic_metres_a_minute{
    [](const VolumeFlow& f) { return f.in(cubic_metre_per_minute); },
    [](double f) { return f * cubic_metre_per_minute; }};
inline constexpr Printed<double> in_persons{[](const double& n) { return n; }, [](double n) { return n; }};

}  // namespace dampward::charts
