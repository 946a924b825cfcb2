#include "core/papers/mixing_sheet.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/papers/figures.h"
#include "core/papers/pen.h"

namespace dampward::papers {
namespace {

constexpr Type small{tiny, 500}, small_name{tiny, 600}, read{reading, 400}, does{doing, 600};

class Drawing {
 public:
  Drawing(const MixingSheet& sheet, Page& page, const Words& words, const Measure& measure)
      : sheet_(sheet), words_(words), pen_(page, measure) {}

  void draw() {
    double y =
        pen_.moments(waterline_, {{words_("mix_at"), clock(sheet_.mix)}, {words_("use_until"), until()}}) +
        waterline_ + 1;
    y = before_a_can_opens(y + 4);
    y = lots(y + 4);
    y = checks(y + 6);
    y += pen_.text(left_edge, y + 6, words_("what_is_left", {until()}), {reading, 600}, Side::left,
                   right_edge - left_edge);
    notes(pen_, y + 4, words_("notes"));
    foot(pen_, words_, words_("pot", {sheet_.pot}) + "   " + words_("mixing_sheet"), sheet_.plan);
  }

 private:
  std::string clock(Instant time) const { return clock_text(sheet_.clock.local(time)); }

  // The end of the day is 24:00 of that day, not the next day's first minute.
  std::string until() const {
    const std::string time = clock(sheet_.use_by);
    return time == "00:00" ? "24:00" : time;
  }

  double head_() {
    const Date day(std::chrono::floor<std::chrono::days>(sheet_.clock.local(sheet_.mix)));
    std::string serials;
    for (const std::string& unit : sheet_.units) serials += (serials.empty() ? "" : ", ") + unit;
    return head(pen_, {words_("mixing_sheet") + " " + iso_text(day), sheet_.shop, words_("pot", {sheet_.pot}),
                       words_(sheet_.brushed ? "by_brush" : "by_gun"), words_("for_units", {serials}),
                       words_("mix"), jug(sheet_.ready.typical).amount, jug(sheet_.ready.typical).unit});
  }

  // What hurts is told before what to do.
  double before_a_can_opens(double y) {
    const double room = right_edge - left_edge;
    y += pen_.caution(left_edge, y, room, words_("before_a_can_opens")) + 2;
    return y + pen_.caution(left_edge, y, room, words_("mask_and_gloves"));
  }

  // Many lots stand closer; a tick is never under 7 mm.
  double row(double y, const MixingSheet::Take& take) {
    const bool close = sheet_.takes.size() > 4;
    const double tick = close ? 7 : 8, base = close ? 6.2 : 7.5;
    pen_.line(left_edge, y, left_edge + 25, y, thick, Ink::petrol);
    pen_.line(left_edge + 25, y, right_edge, y, hair);
    const Jug told = jug(take.amount);
    pen_.text(left_edge, y + base + 0.8, figure(told.amount, told.unit), {value_size, 700});
    constexpr double words = 50, room = hand_column - 4 - words;
    const std::string lot = words_("lot", {take.lot});
    const double beside = words + pen_.width_of(take.item, does) + 4;
    const bool one_line = beside + pen_.width_of(lot, small) < words + room;
    double end = y + base + pen_.text(words, y + base, take.item, does, Side::left, room);
    if (one_line)
      pen_.text(beside, y + base, lot, small);
    else
      end += pen_.text(words, end, lot, small, Side::left, room);
    const double top = y + (close ? 1.2 : 2.5);
    pen_.box(hand_column, top, 34, tick, hair);
    pen_.text(hand_column + 32.5, top + 5.4, told.unit, small, Side::right);
    pen_.box(right_edge - tick, top, tick, tick, 0.4);
    return std::max(one_line ? y + base + 1.5 : end, top + tick + (close ? 1.2 : 2.5));
  }

  double lots(double y) {
    pen_.text(left_edge, y + 3, words_("take"), small_name);
    pen_.text(hand_column, y + 3, words_("you_took"), small_name);
    y += 5;
    for (const MixingSheet::Take& take : sheet_.takes) y = row(y, take);
    if (sheet_.missing > Volume{})
      y += pen_.caution(left_edge, y + 4, right_edge - left_edge,
                        words_("missing", {jugful(sheet_.missing)})) +
           4;
    pen_.line(left_edge, y, right_edge, y, hair);
    const double parts = sheet_.thinner_parts > 0 ? 1 / sheet_.thinner_parts : 0;
    const bool whole = std::abs(parts - std::round(parts)) < 0.01;
    const std::string ratio =
        parts > 0 ? words_("ratio", {fixed(parts, whole ? 0 : 1)}) : words_("unthinned");
    y += pen_.text(left_edge, y + 6.5, ratio, {reading, 600}, Side::left, right_edge - left_edge);
    y += pen_.text(left_edge, y + 6.5, words_("at_worst", {jugful(sheet_.ready.high)}), read, Side::left,
                   right_edge - left_edge);
    return y + 3;
  }

  double checks(double y) {
    const double width = 55, gap = 7.5;
    const std::pair<const char*, const char*> boxes[] = {
        {"cup_seconds", "s"}, {"wet_coat", "µm"}, {"air_here", "°C"}};
    double x = left_edge;
    for (const auto& [word, unit] : boxes) {
      pen_.text(x, y + 3, words_(word), small_name, Side::left, width);
      const double top = y + 8;
      pen_.box(x, top, width, 8.6, hair);
      pen_.line(x, top + 8.6, x + width, top + 8.6, 0.4);
      pen_.text(x + width - 1.5, top + 5.8, unit, small, Side::right);
      x += width + gap;
    }
    return y + 19 +
           pen_.text(left_edge, y + 23.5, words_("cup_decides"), read, Side::left, right_edge - left_edge);
  }

  const MixingSheet& sheet_;
  const Words& words_;
  Pen pen_;
  double waterline_ = head_();
};

}  // namespace

Page mixing_sheet(const MixingSheet& sheet, const Paper& paper, const Words& words, const Measure& measure) {
  Page page{paper, {}};
  Drawing(sheet, page, words, measure).draw();
  return page;
}

}  // namespace dampward::papers
