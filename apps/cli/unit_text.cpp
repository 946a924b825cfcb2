#include "apps/cli/unit_text.h"

#include <cmath>
#include <regex>

#include "core/base/format.h"

namespace dampward::cli {
namespace {

std::string joined(double value, int digits, const char* unit) {
  return fixed(value, digits) + "\u00A0" + unit;
}

}  // namespace

std::string UnitText::temperature(Temperature t) const {
  return us_ ? joined(t.fahrenheit(), 0, "°F") : joined(t.celsius(), 0, "°C");
}

std::string UnitText::setting(Temperature t) const {
  const double value = us_ ? t.fahrenheit() : t.celsius();
  return joined(std::floor(value + 1e-6), 0, us_ ? "°F" : "°C");
}

std::string UnitText::step(TemperatureStep step) const {
  return us_ ? joined(step.in(fahrenheit_step), 1, "°F") : joined(step.in(kelvin), 1, "K");
}

std::string UnitText::length(Length length) const {
  return us_ ? joined(length.in(foot), 0, "ft") : joined(length.in(metre), 1, "m");
}

std::string UnitText::side(Length length) const {
  const auto up = [](double size) { return std::ceil(size - 1e-9); };
  return us_ ? joined(up(length.in(inch)), 0, "in") : joined(up(length.in(centimetre)), 0, "cm");
}

std::string UnitText::hours(Duration time) const {
  return joined(time.in(hour), 1, "h");
}

std::string UnitText::minutes(Duration time) const {
  return joined(time.in(minute), 0, "min");
}

std::string UnitText::volume(Volume volume) const {
  return us_ ? joined(volume.in(us_gallon), 2, "gal") : joined(volume.in(litre), 2, "L");
}

std::string UnitText::volume(const Range<Volume>& range) const {
  const Volume unit = us_ ? us_gallon : litre;
  return fixed(range.low.in(unit), 1) + " to " + joined(range.high.in(unit), 1, us_ ? "gal" : "L");
}

std::string UnitText::amount(Volume amount) const {
  constexpr double small = 0.1;  // litres: below, two digits after the point tell little
  if (amount.in(litre) >= small) return volume(amount);
  return us_ ? joined(128 * amount.in(us_gallon), 1, "fl oz") : joined(1000 * amount.in(litre), 0, "mL");
}

std::string UnitText::flow(VolumeFlow flow) const {
  return us_ ? joined(flow.in(cubic_foot_per_minute), 0, "cfm")
             : joined(flow.in(cubic_metre_per_minute), 1, "m³/min");
}

std::string UnitText::rate(VolumeFlow flow) const {
  return us_ ? joined(flow.in(us_gallon / minute), 3, "gal/min")
             : joined(flow.in(litre_per_minute), 2, "L/min");
}

std::string UnitText::space(Volume volume) const {
  return us_ ? joined(volume.in(foot * foot * foot), 0, "ft³") : joined(volume.in(cubic_metre), 1, "m³");
}

std::string UnitText::area(Area area) const {
  return us_ ? joined(area.in(square_foot), 1, "ft²") : joined(area.in(square_metre), 2, "m²");
}

std::string UnitText::film(const Range<Length>& range) const {
  const Length unit = us_ ? mil : micrometre;
  const int digits = us_ ? 1 : 0;
  return fixed(range.low.in(unit), digits) + " to " + joined(range.high.in(unit), digits, us_ ? "mil" : "µm");
}

std::string UnitText::sentence(const std::string& metric) const {
  if (!us_) return metric;
  static const std::regex figure(R"((-?\d+(?:\.\d+)?)( | )(°C|K|m³/min|m|L)(?![A-Za-z0-9³²/]))");
  std::string text;
  auto rest = metric.cbegin();
  for (std::sregex_iterator match(metric.begin(), metric.end(), figure), end; match != end; ++match) {
    text.append(rest, metric.cbegin() + match->position());
    const double value = std::stod((*match)[1].str());
    const std::string unit = (*match)[3].str();
    text += unit == "°C"       ? temperature(Temperature::celsius(value))
            : unit == "K"      ? step(value * kelvin)
            : unit == "m³/min" ? flow(value * cubic_metre_per_minute)
            : unit == "m"      ? length(value * metre)
                               : volume(value * litre);
    rest = metric.cbegin() + match->position() + match->length();
  }
  return text.append(rest, metric.cend());
}

}  // namespace dampward::cli
