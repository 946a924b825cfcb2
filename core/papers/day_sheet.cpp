#include "core/papers/day_sheet.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <set>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/papers/danger.h"
#include "core/papers/figures.h"
#include "core/papers/flow.h"
#include "core/papers/parts.h"

namespace dampward::papers {
namespace {

constexpr double wide = right_edge - left_edge;

class DayPages {
 public:
  DayPages(const DaySheet& sheet, const DaySheet::Day& day, const Words& words)
      : sheet_(sheet), day_(day), words_(words) {}

  Flow flow() {
    Flow flow;
    flow.head = [this](Pen& pen) { return first_head(pen); };
    flow.running = sheet_.role + "   " + words_("day_sheet") + ", " + date();
    flow.sheet = flow.running;
    flow.plan = sheet_.plan;
    flow.notes = words_("notes");
    std::size_t gap = 0;
    const auto gaps_before = [&](Instant time) {
      for (; gap < day_.gaps.size() && day_.gaps[gap].from < time; ++gap)
        flow.rows.push_back(gap_row(day_.gaps[gap]));
    };
    for (const DaySheet::Row& row : day_.rows) {
      gaps_before(row.starts);
      flow.rows.push_back({[this, &row](Pen& pen, double y) { return step(pen, y, step_of(row)); }});
    }
    gaps_before(Instant::max());
    flow.rows.push_back({[this](Pen& pen, double y) { return air(pen, y); }});
    return flow;
  }

 private:
  Date local_date(Instant time) const {
    return Date(std::chrono::floor<std::chrono::days>(sheet_.clock.local(time)));
  }
  std::string date() const {
    return weekday_name(words_, day_.begins, sheet_.clock) + " " + iso_text(local_date(day_.begins));
  }
  // With its day, where that is not the sheet's.
  std::string clock(Instant time) const {
    const std::string told = clock_of(time, sheet_.clock);
    return local_date(time) == local_date(day_.begins)
               ? told
               : weekday_name(words_, time, sheet_.clock) + thin_space + told;
  }
  Moment moment(const char* word, Instant time) const {
    const bool today = local_date(time) == local_date(day_.begins);
    const std::string label = today ? "" : weekday_name(words_, time, sheet_.clock) + ", ";
    return {label + words_(word), clock_of(time, sheet_.clock)};
  }

  double first_head(Pen& pen) const {
    std::set<std::string> units;
    for (const DaySheet::Row& row : day_.rows) {
      if (!row.unit.empty()) units.insert(row.unit);
    }
    std::string code = "DAMPWARD DAY " + iso_text(local_date(day_.begins)) + " " + sheet_.person;
    std::transform(code.begin(), code.end(), code.begin(), [](unsigned char c) { return std::toupper(c); });
    if (code.size() > longest_code) code.clear();
    const std::string why =
        words_("day_why", {std::to_string(day_.rows.size()), std::to_string(units.size())});
    const double y =
        head(pen, {words_("day_sheet"), sheet_.shop, sheet_.role, date(), why, "", "", "", code});
    std::vector<Moment> moments = {moment("day_begin", day_.begins)};
    if (day_.mask_on) moments.push_back(moment("day_mask_on", *day_.mask_on));
    if (day_.mask_off) moments.push_back(moment("day_mask_off", *day_.mask_off));
    moments.push_back(moment("day_end", day_.ends));
    return y + pen.moments(y, moments);
  }

  std::string title(const DaySheet::Row& row) const {
    if (!row.key.code.empty()) return row.unit + ": " + step_name(words_, row.key);
    const double litres = up(row.mix.in(litre), 2);
    return words_("day_mix", {row.pot, fixed(litres, 2) + thin_space + "L"});
  }

  Step step_of(const DaySheet::Row& row) const {
    Step step;
    step.clock = clock_of(row.starts, sheet_.clock);
    if (row.ends > row.starts)
      step.who = time_taken(std::chrono::duration<double>(row.ends - row.starts).count() * second);
    if (row.masked) step.who += (step.who.empty() ? "" : "\n") + words_("day_mask");
    step.title = title(row);
    for (const std::string& id : row.hazards)
      step.warnings.push_back({danger_of(id), words_("caution_" + id)});
    std::string where = row.station;
    for (const std::string& more :
         {row.kind, row.others.empty() ? "" : words_("day_with", {listed(row.others)})}) {
      if (!more.empty()) where += (where.empty() ? "" : ", ") + more;
    }
    if (!where.empty()) step.body.push_back(where);
    if (row.window) {
      step.body.push_back(words_("card_no_coat_after", {clock(row.window->no_coat_after)}));
      step.body.push_back(words_("day_window", {clock(row.window->opens), clock(row.window->shuts)}));
    }
    step.masked = row.masked;
    return step;
  }

  Row gap_row(const DaySheet::Gap& gap) const {
    return {[this, &gap](Pen& pen, double y) {
      using Kind = DaySheet::Gap::Kind;
      const char* word = gap.kind == Kind::meal   ? "day_break"
                         : gap.kind == Kind::call ? "day_call"
                                                  : "day_free";
      const double taken = std::chrono::duration<double>(gap.to - gap.from).count();
      const std::string told = words_(word) + ", " + time_taken(taken * second);
      const Type type{doing, 500};
      const double from = words_column + pen.width_of(told, type) + 5;
      pen.line(left_edge, y, pen.right(), y);
      pen.text(left_edge, y + 5.6, clock_of(gap.from, sheet_.clock), {doing, 700});
      pen.text(words_column, y + 5.6, told, type);
      if (from < pen.right() - 5) pen.hatch(from, y, pen.right() - from, 7.8, 3);
      if (gap.masked) pen.line(left_edge - 3, y, left_edge - 3, y + 7.8, wall_width, Ink::petrol);
      return y + 7.8;
    }};
  }

  std::string respirator(const DaySheet::Air& air) const {
    if (air.supplied) return words_("day_mask_air");
    return words_(air.factor && *air.factor > 10 ? "day_mask_full" : "day_mask_half");
  }

  // The day's air without the respirator in words, behind it as value, spare and limit.
  double air(Pen& pen, double y) const {
    pen.line(left_edge, y, pen.right(), y);
    const double top = y + 7;
    if (!day_.air || !day_.air->whole_day || !day_.air->worst_quarter) {
      const std::string worn = day_.air ? respirator(*day_.air) : "";
      std::string told = words_("day_air_unknown");
      if (day_.air && day_.air->factor) told += " " + words_("day_wear", {worn});
      return top + pen.caution(left_edge, top, wide, told) + 1;
    }
    const DaySheet::Air& air = *day_.air;
    const bool quarter = *air.worst_quarter > *air.whole_day;
    const double worst = up(std::max(*air.worst_quarter, *air.whole_day), 1);
    std::string told;
    if (air.factor)
      told = words_(quarter ? "day_air_quarter" : "day_air_day", {fixed(worst, 1)}) + " " +
             words_("day_wear", {respirator(air)});
    else
      told = air.against_mist ? words_("day_mist", {respirator(air)}) : words_("day_no_mask");
    const double words_end = top + pen.caution(left_edge, top, 88, told);
    const double value =
        std::min(9.99, up(std::max(*air.worst_quarter, *air.whole_day) / air.factor.value_or(1), 2));
    const Triple triple{fixed(value, 2),
                        fixed(std::max(0.0, 1 - value), 2),
                        "1",
                        "",
                        "",
                        words_(air.factor ? "day_behind" : "day_bare"),
                        words_("spare"),
                        words_(quarter ? "day_limit_quarter" : "day_limit_day")};
    const double drawn = y + pen.triple(left_edge + 96, y, 84, triple);
    return std::max(words_end + 1, drawn + 1);
  }

  const DaySheet& sheet_;
  const DaySheet::Day& day_;
  const Words& words_;
};

}  // namespace

Pages day_sheet(const DaySheet& sheet, const Paper& paper, const Words& words, const Measure& measure) {
  Pages pages;
  for (const DaySheet::Day& day : sheet.days) {
    DayPages drawing(sheet, day, words);
    for (Page& page : pages_of(drawing.flow(), paper, words, measure)) pages.push_back(std::move(page));
  }
  return pages;
}

}  // namespace dampward::papers
