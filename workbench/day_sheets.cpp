#include "workbench/day_sheets.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/line/calendar.h"
#include "workbench/step_cautions.h"
#include "workbench/step_keys.h"

namespace dampward::workbench {
namespace {

using papers::DaySheet;

// Shorter ones are no rest, and only fill the page.
constexpr line::Minute shortest_gap = 20;

Instant after(Instant start, Duration time) {
  return start + std::chrono::seconds(static_cast<long>(std::lround(time.in(second))));
}

bool is_at(const UnitStep& step, const std::string& person) {
  return std::any_of(step.people.begin(), step.people.end(),
                     [&](const PersonId& id) { return id.text == person; });
}

std::optional<DaySheet::Window> window_at(const UnitPlan& unit, const UnitStep& step, const Plan& plan) {
  const std::string code = key_of(unit, step).code;
  if (code != "coat" && code != "unload" && code != "cabinet_out") return std::nullopt;
  const auto window = std::find_if(plan.windows.begin(), plan.windows.end(),
                                   [&](const Window& w) { return w.unit == unit.unit; });
  if (window == plan.windows.end()) return std::nullopt;
  // The coats and flashes from this step on, as the timetable sets them apart.
  std::optional<Instant> first, last;
  for (const UnitStep& other : unit.steps) {
    const std::string other_code = key_of(unit, other).code;
    if (other.starts < step.starts || (other_code != "coat" && other_code != "flash")) continue;
    if (other_code == "coat" && (!first || other.starts < *first)) first = other.starts;
    if (!last || other.ends > *last) last = other.ends;
  }
  if (!first || !last) return std::nullopt;
  DaySheet::Window told;
  told.opens = std::chrono::ceil<std::chrono::minutes>(after(window->leaves_oven, window->opens_after));
  told.shuts = std::chrono::floor<std::chrono::minutes>(after(window->leaves_oven, window->closes_after));
  told.no_coat_after = std::chrono::floor<std::chrono::minutes>(told.shuts - (*last - *first));
  return told;
}

// The pots that this person mixes: whoever lays the first coat out of one.
std::vector<DaySheet::Row> pots_of(const std::string& person, const Plan& plan) {
  std::vector<DaySheet::Row> rows;
  for (const MixedPot& pot : plan.mixing) {
    const UnitPlan* of = nullptr;
    const UnitStep* first = nullptr;
    for (const UnitPlan& unit : plan.units) {
      if (std::find(pot.units.begin(), pot.units.end(), unit.unit) == pot.units.end()) continue;
      for (const UnitStep& step : unit.steps) {
        if (key_of(unit, step).code != "coat" || step.starts < pot.mix) continue;
        if (first != nullptr && first->starts <= step.starts) continue;
        first = &step;
        of = &unit;
      }
    }
    if (of == nullptr || !is_at(*first, person)) continue;
    DaySheet::Row row;
    row.starts = pot.mix;
    row.ends = first->starts;
    row.station = plan.name_of(first->station);
    row.hazards = hazards_of("mix", plan);
    row.pot = pot.id;
    row.mix = pot.ready.typical;
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<DaySheet::Row> rows_of(const std::string& person, const Plan& plan) {
  std::vector<DaySheet::Row> rows = pots_of(person, plan);
  for (const UnitPlan& unit : plan.units) {
    for (const UnitStep& step : unit.steps) {
      if (!is_at(step, person)) continue;
      DaySheet::Row row{key_of(unit, step),
                        step.starts,
                        step.ends,
                        unit.unit.text,
                        unit.kind_name,
                        plan.name_of(step.station),
                        {},
                        hazards_at(unit, step, plan)};
      for (const PersonId& other : step.people) {
        if (other.text != person) row.others.push_back(plan.name_of(other.text));
      }
      row.window = window_at(unit, step, plan);
      rows.push_back(std::move(row));
    }
  }
  std::stable_sort(rows.begin(), rows.end(),
                   [](const auto& a, const auto& b) { return a.starts < b.starts; });
  return rows;
}

// Each caution once a day, where it first counts; what holds everywhere stands at the first row.
void tell_once(DaySheet::Day& day, const Plan& plan) {
  for (std::string& id : hazards_of("all", plan)) day.rows.front().hazards.push_back(std::move(id));
  std::set<std::string> told;
  for (DaySheet::Row& row : day.rows) {
    std::vector<std::string> fresh;
    for (const std::string& id : row.hazards) {
      if (told.insert(id).second) fresh.push_back(id);
    }
    row.hazards = std::move(fresh);
  }
}

class Days {
 public:
  Days(const PersonAir& person, const line::Person* hours, const Plan& plan)
      : person_(person), hours_(hours), plan_(plan) {}

  std::vector<DaySheet::Day> days() const {
    std::vector<DaySheet::Day> all;
    for (DaySheet::Row& row : rows_of(person_.person.text, plan_)) {
      const PersonDay* air = day_at(row.starts);
      if (all.empty() || !same_day(all.back(), row, air)) all.push_back(opened(row, air));
      DaySheet::Day& day = all.back();
      day.ends = std::max(day.ends, row.ends);
      day.rows.push_back(std::move(row));
    }
    for (DaySheet::Day& day : all) finish(day);
    return all;
  }

 private:
  // The last day begun by then, unless its work was over long before.
  const PersonDay* day_at(Instant time) const {
    const PersonDay* found = nullptr;
    for (const PersonDay& day : person_.days) {
      if (day.begins <= time && time < day.ends) found = &day;
    }
    return found;
  }
  std::chrono::local_days date(Instant time) const {
    return std::chrono::floor<std::chrono::days>(plan_.clock.local(time));
  }
  bool same_day(const DaySheet::Day& day, const DaySheet::Row& row, const PersonDay* air) const {
    return air != nullptr ? air->begins == day.begins : date(day.begins) == date(row.starts);
  }
  static DaySheet::Day opened(const DaySheet::Row& row, const PersonDay* air) {
    DaySheet::Day day;
    day.begins = air != nullptr ? air->begins : row.starts;
    day.ends = air != nullptr ? air->ends : row.ends;
    if (air != nullptr)
      day.air = DaySheet::Air{air->exposure_index, air->stel_index, air->respirator_factor, air->supplied_air,
                              air->sprays};
    return day;
  }

  void finish(DaySheet::Day& day) const {
    tell_once(day, plan_);
    add_gaps(day);
    const PersonDay* air = day_at(day.begins);
    if (air == nullptr || air->masks.empty()) return;
    day.mask_on = air->masks.front().from;
    day.mask_off = std::chrono::ceil<std::chrono::minutes>(air->masks.back().to);
    const auto masked = [&](Instant from, Instant to) {
      return std::any_of(air->masks.begin(), air->masks.end(),
                         [&](const MaskOn& mask) { return mask.from < to && from < mask.to; });
    };
    // A pot is mixed behind the mask, however few minutes the timetable leaves it.
    for (DaySheet::Row& row : day.rows) row.masked = !row.pot.empty() || masked(row.starts, row.ends);
    for (DaySheet::Gap& gap : day.gaps) {
      if (gap.kind != DaySheet::Gap::Kind::meal) gap.masked = masked(gap.from, gap.to);
    }
  }

  line::Span span(Instant from, Instant to) const {
    return {line::minute_at(from, plan_.from), line::minute_after(to, plan_.from)};
  }
  DaySheet::Gap gap(const line::Span& span, DaySheet::Gap::Kind kind) const {
    return {line::instant_of(span.from, plan_.from), line::instant_of(span.to, plan_.from), kind};
  }

  // Breaks, and what is left of the shifts between the rows.
  void add_gaps(DaySheet::Day& day) const {
    if (hours_ == nullptr) return;
    using Kind = DaySheet::Gap::Kind;
    line::Calendar today = line::common(hours_->shifts, {span(day.begins, day.ends)});
    line::Calendar busy, hot;
    for (const DaySheet::Row& row : day.rows) busy.push_back(span(row.starts, row.ends));
    const bool watches =
        std::find(hours_->skills.begin(), hours_->skills.end(), "oven") != hours_->skills.end();
    for (const Load& load : plan_.loads) {
      if (watches) hot.push_back(span(load.starts, load.last_out));
    }
    const line::Calendar breaks = line::common(today, hours_->breaks);
    for (const line::Span& pause : breaks) day.gaps.push_back(gap(pause, Kind::meal));
    const line::Calendar free = line::without(line::without(today, line::tidied(busy)), breaks);
    hot = line::tidied(hot);
    for (const line::Span& piece : free) {
      if (piece.length() < shortest_gap) continue;
      const bool call = !line::common(hot, {piece}).empty();
      day.gaps.push_back(gap(piece, call ? Kind::call : Kind::nothing));
    }
    std::sort(day.gaps.begin(), day.gaps.end(), [](const auto& a, const auto& b) { return a.from < b.from; });
  }

  const PersonAir& person_;
  const line::Person* hours_;
  const Plan& plan_;
};

}  // namespace

std::vector<DaySheet> day_sheets(const Plan& plan) {
  std::vector<DaySheet> sheets;
  for (const PersonAir& person : plan.people) {
    const auto hours =
        std::find_if(plan.problem.people.begin(), plan.problem.people.end(),
                     [&](const line::Person& known) { return known.id == person.person.text; });
    DaySheet sheet;
    sheet.person = person.person.text;
    sheet.role = plan.name_of(sheet.person);
    sheet.shop = plan.shop;
    sheet.days = Days(person, hours == plan.problem.people.end() ? nullptr : &*hours, plan).days();
    sheet.clock = plan.clock;
    if (!sheet.days.empty()) sheets.push_back(std::move(sheet));
  }
  return sheets;
}

}  // namespace dampward::workbench
