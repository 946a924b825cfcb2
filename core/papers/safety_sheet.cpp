#include "core/papers/safety_sheet.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/papers/danger.h"
#include "core/papers/detail/room_sketch.h"
#include "core/papers/detail/vapour_curve.h"
#include "core/papers/figures.h"
#include "core/papers/flow.h"
#include "core/papers/parts.h"
#include "core/papers/pen.h"
#include "core/papers/step_words.h"

namespace dampward::papers {
namespace {

constexpr Type small{tiny, 500}, small_name{tiny, 600}, read{reading, 400}, strong{reading, 600};
constexpr double width = right_edge - left_edge;

constexpr const char* percent = "%";
constexpr const char* flow_unit = "m³/min";

class Drawing {
 public:
  Drawing(const SafetySheet& sheet, const Words& words) : sheet_(sheet), words_(words) {}

  Pages pages(const Paper& paper, const Measure& measure) {
    Flow flow;
    flow.head = [this](Pen& pen) { return head_and_moments(pen); };
    flow.running = sheet_.place + "   " + words_("safety_sheet");
    flow.sheet = flow.running;
    flow.plan = sheet_.plan;
    flow.notes = words_("notes");
    rows(flow);
    return pages_of(flow, paper, words_, measure);
  }

 private:
  const SafetySheet::Stretch& worst() const { return sheet_.stretches[sheet_.worst]; }
  std::string clock(Instant time) const { return clock_of(time, sheet_.clock); }
  std::string day(Instant time) const {
    const Date date(std::chrono::floor<std::chrono::days>(sheet_.clock.local(time)));
    return weekday_name(words_, time, sheet_.clock) + " " + iso_text(date);
  }
  bool same_day(Instant a, Instant b) const {
    return std::chrono::floor<std::chrono::days>(sheet_.clock.local(a)) ==
           std::chrono::floor<std::chrono::days>(sheet_.clock.local(b));
  }
  // A clock time, with its day where that is not the day of the row.
  std::string clock_on(Instant time, Instant row) const {
    return (same_day(time, row) ? "" : weekday_name(words_, time, sheet_.clock) + " ") + clock(time);
  }

  void rows(Flow& flow) {
    const auto add = [&](auto draw, bool with_next = false) {
      flow.rows.push_back({std::move(draw), with_next});
    };
    add([this](Pen& pen, double y) { return vapour(pen, y); });
    add([this](Pen& pen, double y) { return room_and_limits(pen, y); });
    add([this](Pen& pen, double y) { return ticks(pen, y); }, true);
    const std::vector<std::string> all = things_to_tick();
    for (std::size_t i = 0; i < all.size(); i += 2)
      add([this, left = all[i], right = i + 1 < all.size() ? all[i + 1] : ""](Pen& pen, double y) {
        return tick_row(pen, y, left, right);
      });
    if (sheet_.stretches.size() > 1) {
      add([this](Pen& pen, double y) { return heading(pen, y, words_("safety_days")); }, true);
      add([this](Pen& pen, double y) { return columns(pen, y); }, true);
      for (const SafetySheet::Stretch& stretch : sheet_.stretches)
        add([this, &stretch](Pen& pen, double y) { return moments_row(pen, y, stretch); });
    }
    if (!sheet_.crew.empty())
      add([this](Pen& pen, double y) { return heading(pen, y, words_("safety_people_rows")); }, true);
    for (const SafetySheet::Person& person : sheet_.crew)
      add([this, &person](Pen& pen, double y) { return person_row(pen, y, person); });
    for (const SafetySheet::Group& group : sheet_.cautions) {
      add([this, &group](Pen& pen, double y) { return heading(pen, y, words_("safety_when_" + group.when)); },
          true);
      for (const std::string& hazard : group.hazards)
        add([this, hazard](Pen& pen, double y) {
          return caution(pen, y + 5, words_("caution_" + hazard), danger_of(hazard));
        });
    }
    add([this](Pen& pen, double y) {
      return y + 6 + pen.text(left_edge, y + 8, words_("safety_codes"), strong, Side::left, width);
    });
  }

  double caution(Pen& pen, double y, const std::string& words, Danger danger = Danger::any,
                 double x = left_edge, double room = width) const {
    return y + std::max(pen.caution(x, y, room, words, danger), 8.0) - 2;
  }

  double heading(Pen& pen, double y, const std::string& words) const {
    pen.line(left_edge, y + 3, left_edge + 25, y + 3, thick, Ink::petrol);
    pen.line(left_edge + 25, y + 3, right_edge, y + 3);
    return y + 5 + pen.text(left_edge, y + 9.5, words, {doing, 600}, Side::left, width);
  }

  double head_and_moments(Pen& pen) const {
    const auto flow = [](double figure) { return with_unit(figure, 1, flow_unit); };
    const std::string people =
        sheet_.fan_people ? with_unit(up(sheet_.fan_people->in(cubic_metre_per_minute), 0), 0, flow_unit)
                          : words_("safety_no_air_enough");
    const std::string date =
        iso_text(Date(std::chrono::floor<std::chrono::days>(sheet_.clock.local(worst().fan_on))));
    const double waterline =
        head(pen, {words_("safety_sheet"), sheet_.shop, sheet_.place, day(worst().fan_on),
                   words_("safety_why", {flow(down(sheet_.fan.in(cubic_metre_per_minute), 1)),
                                         flow(up(sheet_.fan_fire.in(cubic_metre_per_minute), 1)), people}),
                   "", "", "", "DAMPWARD AIR " + date});
    const Instant start = worst().fan_on;
    return waterline + pen.moments(waterline, {{words_("safety_fan_on"), clock(start)},
                                               {words_("safety_last"), clock_on(worst().last, start)},
                                               {words_("safety_clear"), clock_on(worst().clear, start)},
                                               {words_("safety_fan_off"), clock_on(worst().fan_off, start)}});
  }

  double vapour(Pen& pen, double y) const {
    if (!sheet_.allowed) return caution(pen, y + 4, words_("safety_no_fire"), Danger::fire);
    if (sheet_.curve.empty() || !sheet_.peak)
      return caution(pen, y + 4, words_("safety_no_curve"), Danger::fire);
    y = vapour_curve(pen, y, sheet_, words_);
    if (!sheet_.people) y = caution(pen, y + 5, words_("safety_no_people_wall"));
    return y;
  }

  double room_and_limits(Pen& pen, double y) const {
    constexpr double middle = 106;
    const double low = std::max(sketch(pen, y + 3), limits(pen, y, middle));
    double end = low + 5;
    end += pen.text(
        left_edge, end,
        sheet_.purge ? words_("safety_purge", {time_taken(*sheet_.purge)}) : words_("safety_no_purge"),
        sheet_.purge ? read : strong, Side::left, width);
    return end - 3;
  }

  // The room, and what follows from its doors.
  double sketch(Pen& pen, double y) const {
    const double low = room_sketch(pen, y, sheet_, words_);
    if (sheet_.ways_out >= 2) return low;
    return caution(pen, low + 4, words_("safety_one_way"), Danger::fire, left_edge, sketch_width) - 3;
  }

  // The triple, or where it is passed, words: a bar would draw it as room to spare.
  double triple_or_stop(Pen& pen, double y, double x, const Triple& triple, double value,
                        double limit) const {
    const bool kept = triple.floor ? value >= limit : value <= limit;
    if (kept) return y + pen.triple(x, y, right_edge - x, triple);
    return caution(pen, y + 5,
                   words_(triple.floor ? "safety_under" : "safety_over",
                          {triple.value_words, triple.value + thin_space + triple.unit,
                           triple.limit + thin_space + triple.unit}),
                   Danger::fire, x, right_edge - x) +
           3;
  }

  Triple triple_of(double value, double limit, int digits, const std::string& unit,
                   bool floor = false) const {
    Triple triple;
    triple.value = figure_text(value, digits);
    triple.limit = figure_text(limit, digits);
    triple.spare =
        figure_text(std::max(0.0, floor ? down(value - limit, digits) : down(limit - value, digits)), digits);
    triple.unit = triple.spare_unit = unit;
    triple.spare_words = words_("spare");
    triple.floor = floor;
    return triple;
  }

  double limits(Pen& pen, double y, double x) const {
    if (sheet_.allowed && sheet_.peak) {
      const double value = up(*sheet_.peak * 100, 1), limit = down(*sheet_.allowed * 100, 1);
      Triple fire = triple_of(value, limit, 1, percent);
      fire.value_words = words_("safety_fire_value");
      fire.limit_words = words_("safety_fire_limit");
      y = triple_or_stop(pen, y, x, fire, value, limit);
    }
    y = worst_person(pen, y, x);
    const double there = down(sheet_.fan.in(cubic_metre_per_minute), 1);
    const double needed = up(sheet_.fan_fire.in(cubic_metre_per_minute), 1);
    Triple fan = triple_of(there, needed, 1, flow_unit, true);
    fan.value_words = words_("safety_fan_value");
    fan.limit_words = words_("safety_fan_limit");
    return triple_or_stop(pen, y, x, fan, there, needed);
  }

  static std::optional<double> index_of(const SafetySheet::Person& person) {
    if (!person.average || !person.short_term) return std::nullopt;
    return std::max(*person.average, *person.short_term);
  }

  // People's limit beside fire's: whoever breathes the worst air against the mask they wear.
  double worst_person(Pen& pen, double y, double x) const {
    const SafetySheet::Person* worst = nullptr;
    for (const SafetySheet::Person& person : sheet_.crew) {
      if (!person.day) continue;
      if (!index_of(person))
        return caution(pen, y + 5, words_("safety_unknown"), Danger::any, x, right_edge - x) + 3;
      if (worst == nullptr || *index_of(person) / person.trust > *index_of(*worst) / worst->trust)
        worst = &person;
    }
    return worst == nullptr ? y : person_triple(pen, y, x, right_edge, *worst);
  }

  double person_triple(Pen& pen, double y, double x, double right, const SafetySheet::Person& person) const {
    const std::optional<double> index = index_of(person);
    if (!index) return caution(pen, y + 5, words_("safety_unknown"), Danger::any, x, right - x) + 3;
    const double value = up(*index, 1), limit = down(person.trust, 1);
    Triple triple = triple_of(value, limit, 1, words_("safety_times"));
    triple.value_words = words_("safety_people_value");
    triple.limit_words = words_(person.trust > 1 ? "safety_people_limit" : "safety_people_free");
    if (person.mask == SafetySheet::Mask::not_enough || value > limit)
      return caution(pen, y + 5,
                     words_("safety_over", {triple.value_words, triple.value + thin_space + triple.unit,
                                            triple.limit + thin_space + triple.unit}),
                     Danger::any, x, right - x) +
             3;
    return y + pen.triple(x, y, right - x, triple);
  }

  double ticks(Pen& pen, double y) const {
    pen.line(left_edge, y + 3, left_edge + 25, y + 3, thick, Ink::petrol);
    pen.line(left_edge + 25, y + 3, right_edge, y + 3);
    pen.text(left_edge, y + 11.5, clock(worst().fan_on), {clock_size, 700});
    double end = y + 11.5 +
                 pen.text(words_column, y + 11.5, words_("safety_tick"), {doing, 600}, Side::left,
                          right_edge - words_column);
    end = caution(pen, end + 0.5, words_("safety_within", {with_unit(6.1, 1, "m")}), Danger::fire) + 1.5;
    end += pen.text(left_edge, end,
                    sheet_.near ? words_("safety_gun", {with_unit(up(*sheet_.near * 100, 1), 1, percent)})
                                : words_("safety_gun_unknown"),
                    strong, Side::left, width) -
           2;
    return end;
  }

  std::vector<std::string> things_to_tick() const {
    std::vector<std::string> all;
    for (const std::string& hot : sheet_.hot) all.push_back(words_("safety_off", {hot}));
    for (const char* key :
         {"lamps", "phones", "flames", "motors", "drains", "bond", "rags", "fan", "masks", "out", "help"})
      all.push_back(words_("safety_tick_" + std::string(key)));
    return all;
  }

  // Two side by side.
  double tick_row(Pen& pen, double y, const std::string& left, const std::string& right) const {
    double height = tick(pen, left_edge, y, left, 76);
    if (!right.empty()) height = std::max(height, tick(pen, left_edge + 92, y, right, 76));
    return y + std::max(height + 1.6, tick_pitch);
  }

  static double column(int i) { return i == 0 ? left_edge : 62 + (i - 1) * 34; }

  double columns(Pen& pen, double y) const {
    int i = 1;
    double deepest = 0;
    for (const char* key : {"safety_fan_on", "safety_last", "safety_clear", "safety_fan_off"})
      deepest = std::max(deepest, pen.text(column(i++), y + 4, words_(key), small_name, Side::left, 32));
    return y + deepest;
  }

  double moments_row(Pen& pen, double y, const SafetySheet::Stretch& stretch) const {
    const Type figures{value_size, 600};
    pen.line(left_edge, y + 0.5, right_edge, y + 0.5);
    pen.text(column(0), y + 7.5, day(stretch.fan_on), {doing, 600});
    int i = 1;
    for (const Instant time : {stretch.fan_on, stretch.last, stretch.clear, stretch.fan_off})
      pen.text(column(i++), y + 7.5, clock_on(time, stretch.fan_on), figures);
    return y + 9.5;
  }

  std::string mask_words(SafetySheet::Mask mask) const {
    switch (mask) {
      case SafetySheet::Mask::none:
        return words_("safety_mask_none");
      case SafetySheet::Mask::half:
        return words_("safety_mask_half");
      case SafetySheet::Mask::full:
        return words_("safety_mask_full");
      case SafetySheet::Mask::supplied:
        return words_("safety_mask_supplied");
      case SafetySheet::Mask::not_enough:
        break;
    }
    return words_("safety_mask_not_enough");
  }

  double person_row(Pen& pen, double y, const SafetySheet::Person& person) const {
    constexpr double bar = 118;
    pen.line(left_edge, y + 1, right_edge, y + 1);
    double low = y + 7;
    const double room = bar - 6 - left_edge;
    low += pen.text(left_edge, low, person.name, {doing, 600}, Side::left, room);
    if (!person.day) {
      low += pen.text(left_edge, low, words_("safety_none_breathed"), strong, Side::left, room);
      return low - 2;
    }
    low +=
        pen.text(left_edge, low, day(*person.day) + ": " + mask_words(person.mask), strong, Side::left, room);
    double end = person_triple(pen, y + 1.5, bar, right_edge, person);
    const bool filters = person.mask == SafetySheet::Mask::half || person.mask == SafetySheet::Mask::full;
    const std::string peak = with_unit(up(person.peak.ppm(), 0), 0, "ppm");
    low = std::max(low, end + 3.5);
    if (person.average && person.short_term) {
      const std::string average = fixed(up(*person.average, 1), 1),
                        brief = fixed(up(*person.short_term, 1), 1);
      const std::string told =
          person.short_at
              ? words_("safety_average_at", {average, brief, clock_on(*person.short_at, *person.day)})
              : words_("safety_average", {average, brief});
      const std::string most =
          person.highest_use
              ? words_("safety_peak", {peak, with_unit(down(person.highest_use->ppm(), 0), 0, "ppm")})
              : words_("safety_peak_only", {peak});
      low += pen.text(left_edge, low, told + "; " + most, strong, Side::left, width);
    }
    if (filters && !person.highest_use)
      low = caution(pen, low + 0.5, words_("safety_peak_unknown", {peak})) + 2;
    return low - 2;
  }

  const SafetySheet& sheet_;
  const Words& words_;
};

}  // namespace

Pages safety_sheet(const SafetySheet& sheet, const Paper& paper, const Words& words, const Measure& measure) {
  return Drawing(sheet, words).pages(paper, measure);
}

}  // namespace dampward::papers
