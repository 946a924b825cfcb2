#include "adapters/files/quantity_text.h"

#include <charconv>
#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {
namespace {

// One unit: value in SI base units = number · factor + offset.
struct Unit {
  std::string_view word;
  double factor;
  double offset = 0;
};

struct Measure {
  std::string_view name;  // "a length"
  std::string_view like;  // "a length such as 250 mm or 10 in"
  std::span<const Unit> units;
  double lowest, highest;  // SI; beyond them no workshop has such a value
  bool plain = false;      // a number without unit
};

constexpr double f_offset = 273.15 - 32 / 1.8;
constexpr Unit temperature_units[] = {
    {"°C", 1, 273.15}, {"C", 1, 273.15}, {"°F", 1 / 1.8, f_offset}, {"F", 1 / 1.8, f_offset}};
constexpr Unit step_units[] = {{"K", 1},        {"C°", 1},       {"°C", 1},     {"C", 1},
                               {"F°", 1 / 1.8}, {"°F", 1 / 1.8}, {"F", 1 / 1.8}};
constexpr Unit length_units[] = {{"mm", millimetre.si()}, {"cm", centimetre.si()}, {"m", 1},
                                 {"km", kilometre.si()},  {"in", inch.si()},       {"ft", foot.si()},
                                 {"um", micrometre.si()}, {"µm", micrometre.si()}, {"mil", mil.si()}};
constexpr Unit area_units[] = {{"m2", 1}, {"cm2", 1e-4}, {"ft2", square_foot.si()}};
constexpr Unit volume_units[] = {{"L", litre.si()},       {"l", litre.si()}, {"ml", millilitre.si()},
                                 {"mL", millilitre.si()}, {"m3", 1},         {"gal", us_gallon.si()},
                                 {"ft3", cubic_foot.si()}};
constexpr Unit mass_units[] = {{"g", gram.si()}, {"kg", 1}, {"lb", pound.si()}, {"oz", ounce.si()}};
constexpr Unit duration_units[] = {{"min", minute.si()}, {"h", hour.si()}, {"s", 1}, {"d", day.si()}};
constexpr Unit power_units[] = {{"W", 1}, {"kW", kilowatt.si()}};
constexpr Unit flow_units[] = {{"m3/min", cubic_metre_per_minute.si()},
                               {"m3/h", cubic_metre_per_hour.si()},
                               {"cfm", cubic_foot_per_minute.si()},
                               {"L/min", litre_per_minute.si()},
                               {"ml/min", litre_per_minute.si() / 1000}};
constexpr Unit pressure_units[] = {{"Pa", 1}, {"hPa", hectopascal.si()}, {"kPa", kilopascal.si()}};
constexpr Unit density_units[] = {{"kg/L", 1000}, {"kg/m3", 1}, {"g/mL", 1000}, {"g/cm3", 1000}};
constexpr Unit deposition_units[] = {{"mg/m2/d", milligram_per_square_metre_day.si()},
                                     {"mg/(m2d)", milligram_per_square_metre_day.si()}};
constexpr Unit transfer_units[] = {{"W/m2K", 1}, {"W/(m2K)", 1}};
constexpr Unit angle_units[] = {{"deg", 1}, {"°", 1}};
constexpr Unit percent_units[] = {{"%", 0.01}};
constexpr Unit vapour_units[] = {{"%", 0.01}, {"ppm", 1e-6}};

constexpr Measure temperature_measure{"a temperature", "a temperature with its unit, such as 71 °C or 160 °F",
                                      temperature_units, 173.15, 1773.15};
constexpr Measure step_measure{"a temperature difference", "a temperature difference such as 5 K or 9 F°",
                               step_units, 0, 500};
constexpr Measure length_measure{"a length", "a length such as 250 mm, 10 in or 1.2 m", length_units, 0, 1e6};
constexpr Measure area_measure{"an area", "an area such as 0.9 m2 or 9.5 ft2", area_units, 0, 1e5};
constexpr Measure volume_measure{"a volume", "a volume such as 2 L, 500 ml or 0.5 gal", volume_units, 0, 1e4};
constexpr Measure mass_measure{"a mass", "a mass such as 8.5 kg, 120 g or 3 lb", mass_units, 0, 1e5};
constexpr Measure duration_measure{"a time", "a time such as 20 min or 3 h", duration_units, 0,
                                   20 * year.si()};
constexpr Measure power_measure{"a power", "a power such as 600 W or 2.4 kW", power_units, 0, 1e6};
constexpr Measure flow_measure{"a flow", "a flow such as 1.2 m3/min, 400 cfm or 0.15 L/min", flow_units, 0,
                               1e3};
constexpr Measure pressure_measure{"a pressure", "a pressure such as 1013 hPa", pressure_units, 0, 1e7};
constexpr Measure density_measure{"a density", "a density such as 0.95 kg/L or 950 kg/m3", density_units, 1,
                                  3e4};
constexpr Measure deposition_measure{"a salt deposition", "a salt deposition such as 60 mg/m2/d",
                                     deposition_units, 0, 1e5 * milligram_per_square_metre_day.si()};
constexpr Measure transfer_measure{"a heat transfer coefficient",
                                   "a heat transfer coefficient such as 5 W/m2K", transfer_units, 0, 1e5};
constexpr Measure angle_measure{"an angle", "an angle such as 60 deg", angle_units, 0, 360};
constexpr Measure share_measure{"a share", "a share from 0 % to 100 %, such as 30 %", percent_units, 0, 1};
constexpr Measure vapour_measure{"a share", "a share such as 1.1 % or 500 ppm", vapour_units, 0, 1};
constexpr Measure number_measure{"a number", "a plain number of 0 or more, such as 3", {}, 0, 1e9, true};

constexpr const Measure* all_measures[] = {
    &temperature_measure, &length_measure, &area_measure,   &volume_measure,   &mass_measure,
    &duration_measure,    &power_measure,  &flow_measure,   &pressure_measure, &density_measure,
    &deposition_measure,  &angle_measure,  &vapour_measure, &step_measure,     &transfer_measure};

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
}

// One spelling for what keyboards and spreadsheets write in several ways.
std::string plain_spelling(std::string_view text) {
  std::string plain(text);
  constexpr std::string_view pairs[][2] = {{"−", "-"},      {"…", ".."}, {"²", "2"},      {"³", "3"},
                                           {"μ", "µ"},      {"º", "°"},  {"\u00A0", " "}, {"\u202F", " "},
                                           {"\u2009", " "}, {"·", ""}};
  for (const auto& pair : pairs) replace_all(plain, pair[0], pair[1]);
  return plain;
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

std::string without_blanks(std::string_view text) {
  std::string packed(text);
  std::erase_if(packed, [](char c) { return c == ' ' || c == '\t'; });
  return packed;
}

const Unit* find_unit(std::string_view word, std::span<const Unit> units) {
  for (const Unit& unit : units) {
    if (unit.word == word) return &unit;
  }
  const std::string small = lower_case(word);
  for (const Unit& unit : units) {
    if (lower_case(unit.word) == small) return &unit;
  }
  return nullptr;
}

// Only what stands there exactly: "MM" must not be named after some other measure's "mm".
const Measure* measure_of_unit(std::string_view word) {
  for (const Measure* measure : all_measures) {
    for (const Unit& unit : measure->units) {
      if (unit.word == word) return measure;
    }
  }
  return nullptr;
}

struct Number {
  double value = 0;
  std::string_view digits;  // as written
};

// The number at the front of `text`, taken off it. A point or comma belongs to it only between digits.
std::optional<Number> take_number(std::string_view& text, Decimal decimal) {
  std::size_t i = 0;
  std::string plain;
  if (i < text.size() && (text[i] == '-' || text[i] == '+')) {
    if (text[i] == '-') plain += '-';
    ++i;
  }
  const std::size_t first_digit = i;
  bool marked = false;
  for (; i < text.size(); ++i) {
    const char c = text[i];
    const bool between = i > first_digit && i + 1 < text.size() && is_digit(text[i + 1]);
    if (is_digit(c)) {
      plain += c;
    } else if (!marked && (c == '.' || (c == ',' && decimal != Decimal::point)) && between) {
      plain += '.';
      marked = true;
    } else {
      break;
    }
  }
  if (i == first_digit) return std::nullopt;
  if (i < text.size() && (text[i] == 'e' || text[i] == 'E')) {
    std::size_t j = i + 1;
    if (j < text.size() && (text[j] == '-' || text[j] == '+')) ++j;
    if (j < text.size() && is_digit(text[j])) {
      while (j < text.size() && is_digit(text[j])) ++j;
      plain.append(text.substr(i, j - i));
      std::erase(plain, '+');
      i = j;
    }
  }
  Number number;
  number.digits = text.substr(0, i);
  const auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), number.value);
  if (error == std::errc::result_out_of_range) number.value = HUGE_VAL;
  text.remove_prefix(i);
  return number;
}

// "1,500" or "1.500": three digits after the mark and one to three before, none of them a leading zero.
bool may_be_thousands(std::string_view digits, char mark) {
  if (digits.starts_with('-')) digits.remove_prefix(1);
  const std::size_t at = digits.find(mark);
  return at != std::string_view::npos && at >= 1 && at <= 3 && digits.size() - at - 1 == 3 &&
         digits.front() != '0';
}

std::string quoted(std::string_view text) {
  return "\"" + std::string(text) + "\"";
}

Problem wrong(std::string_view text, std::string_view why, const Measure& measure, std::string next = "") {
  return {{}, quoted(text) + std::string(why), std::string(measure.like), std::move(next)};
}

// The numbers of a text, one to three, in SI base units.
Result<std::vector<double>> numbers_from_text(std::string_view written, const Measure& measure,
                                              Decimal decimal) {
  written = trimmed(written);
  if (written.empty()) return Problem{{}, "nothing", std::string(measure.like), ""};
  const std::string spelled = plain_spelling(written);

  std::vector<Number> numbers;
  std::vector<std::string> words;
  std::string_view rest = spelled;
  for (;;) {
    rest = trimmed(rest);
    const auto number = take_number(rest, decimal);
    if (!number) {
      const bool not_finite = lower_case(rest).starts_with("nan") || lower_case(rest).starts_with("inf");
      return wrong(written,
                   not_finite ? ", which is no finite number" : ", which holds no number where one belongs",
                   measure);
    }
    if ((decimal != Decimal::point && may_be_thousands(number->digits, ',')) ||
        (decimal == Decimal::comma && may_be_thousands(number->digits, '.'))) {
      return wrong(
          written, ", which may mean two numbers a thousand times apart", measure,
          "Write it without a mark between thousands, and with one or two digits after the decimal mark.");
    }
    const std::size_t dots = rest.find("..");
    numbers.push_back(*number);
    words.push_back(without_blanks(rest.substr(0, dots)));
    if (dots == std::string_view::npos) break;
    rest.remove_prefix(dots + 2);
  }
  if (numbers.size() > 3) {
    return wrong(written, ", a range of more than three numbers", measure, "Write lowest..usual..highest.");
  }

  if (measure.plain) {
    for (const std::string& word : words) {
      if (word.empty()) continue;
      if (word.front() == '-' || word.starts_with("–")) {
        return wrong(written, ", a range written with a dash", measure,
                     "Write a range with two points: 15..20.");
      }
      if (word.front() == ',') {
        return wrong(written, ", with a comma where a point belongs", measure, "");
      }
      return wrong(written, ", which holds more than a number", measure);
    }
  } else if (words.back().empty()) {
    return wrong(written, ", which has no unit", measure);
  }
  std::vector<double> values(numbers.size());
  const Unit* unit = nullptr;
  for (std::size_t i = numbers.size(); i-- > 0;) {
    const std::string& word = words[i];
    if (!word.empty() && !measure.plain) {
      unit = find_unit(word, measure.units);
      if (unit == nullptr) {
        if (word.front() == '-' || word.starts_with("–")) {
          return wrong(written, ", a range written with a dash", measure,
                       "Write a range with two points: 15..20 min.");
        }
        if (word.front() == ',') {
          return wrong(written, ", with a comma where a decimal point belongs", measure,
                       "Write 12.5, not 12,5.");
        }
        const Measure* other = measure_of_unit(word);
        std::vector<std::string> known;
        for (const Unit& candidate : measure.units) known.emplace_back(candidate.word);
        return other != nullptr ? wrong(written, format(", which is {}", other->name), measure)
                                : wrong(written, format(", whose unit \"{}\" is not known", word), measure,
                                        format("Units known here: {}.", listed(known)));
      }
    }
    values[i] = unit == nullptr ? numbers[i].value : numbers[i].value * unit->factor + unit->offset;
    if (!std::isfinite(values[i])) return wrong(written, ", which is too large for any number", measure);
    if (values[i] < measure.lowest) {
      return wrong(written,
                   numbers[i].value < 0 && measure.lowest == 0 ? ", which is below zero"
                                                               : ", which is lower than anything real",
                   measure);
    }
    if (values[i] > measure.highest)
      return wrong(written, ", which is larger than anything in a workshop", measure);
  }
  for (std::size_t i = 1; i < values.size(); ++i) {
    if (values[i] < values[i - 1]) {
      return wrong(written, ", a range that falls", measure,
                   "Write the lowest number first: lowest..usual..highest.");
    }
  }
  return values;
}

template <class T>
struct Reading;

#define DAMPWARD_READING(Type, measure_name, from_si) \
  template <>                                         \
  struct Reading<Type> {                              \
    static constexpr const Measure& measure() {       \
      return measure_name;                            \
    }                                                 \
    static constexpr Type make(double si) {           \
      return from_si;                                 \
    }                                                 \
  };
DAMPWARD_READING(Temperature, temperature_measure, Temperature::kelvins(si))
DAMPWARD_READING(TemperatureStep, step_measure, TemperatureStep::si(si))
DAMPWARD_READING(Length, length_measure, Length::si(si))
DAMPWARD_READING(Area, area_measure, Area::si(si))
DAMPWARD_READING(Volume, volume_measure, Volume::si(si))
DAMPWARD_READING(Mass, mass_measure, Mass::si(si))
DAMPWARD_READING(Duration, duration_measure, Duration::si(si))
DAMPWARD_READING(Power, power_measure, Power::si(si))
DAMPWARD_READING(VolumeFlow, flow_measure, VolumeFlow::si(si))
DAMPWARD_READING(Pressure, pressure_measure, Pressure::si(si))
DAMPWARD_READING(Density, density_measure, Density::si(si))
DAMPWARD_READING(DepositionRate, deposition_measure, DepositionRate::si(si))
DAMPWARD_READING(HeatTransferCoefficient, transfer_measure, HeatTransferCoefficient::si(si))
DAMPWARD_READING(Angle, angle_measure, Angle{si})
DAMPWARD_READING(RelativeHumidity, share_measure, RelativeHumidity::fraction(si))
DAMPWARD_READING(MassShare, share_measure, MassShare::fraction(si))
DAMPWARD_READING(TransferEfficiency, share_measure, TransferEfficiency::fraction(si))
DAMPWARD_READING(VapourShare, vapour_measure, VapourShare::fraction(si))
DAMPWARD_READING(double, number_measure, si)
#undef DAMPWARD_READING

}  // namespace

template <class T>
Result<Range<T>> range_from_text(std::string_view text, Decimal decimal) {
  const auto numbers = numbers_from_text(text, Reading<T>::measure(), decimal);
  if (!numbers) return numbers.problems();
  const std::vector<double>& n = *numbers;
  const double typical = n.size() == 3 ? n[1] : 0.5 * (n.front() + n.back());
  return Range<T>{Reading<T>::make(n.front()), Reading<T>::make(typical), Reading<T>::make(n.back())};
}

template <class T>
Result<T> quantity_from_text(std::string_view text, Decimal decimal) {
  const auto numbers = numbers_from_text(text, Reading<T>::measure(), decimal);
  if (!numbers) return numbers.problems();
  if (numbers->size() > 1) {
    return wrong(trimmed(text), ", a range where one value belongs", Reading<T>::measure());
  }
  return Reading<T>::make(numbers->front());
}

template <class T>
std::string_view looks_like() {
  return Reading<T>::measure().like;
}

#define DAMPWARD_READ(Type)                                                      \
  template Result<Type> quantity_from_text<Type>(std::string_view, Decimal);     \
  template Result<Range<Type>> range_from_text<Type>(std::string_view, Decimal); \
  template std::string_view looks_like<Type>();
DAMPWARD_READ(Temperature)
DAMPWARD_READ(TemperatureStep)
DAMPWARD_READ(Length)
DAMPWARD_READ(Area)
DAMPWARD_READ(Volume)
DAMPWARD_READ(Mass)
DAMPWARD_READ(Duration)
DAMPWARD_READ(Power)
DAMPWARD_READ(VolumeFlow)
DAMPWARD_READ(Pressure)
DAMPWARD_READ(Density)
DAMPWARD_READ(DepositionRate)
DAMPWARD_READ(HeatTransferCoefficient)
DAMPWARD_READ(Angle)
DAMPWARD_READ(RelativeHumidity)
DAMPWARD_READ(MassShare)
DAMPWARD_READ(TransferEfficiency)
DAMPWARD_READ(VapourShare)
DAMPWARD_READ(double)
#undef DAMPWARD_READ

}  // namespace dampward::files
