#include "workbench/window_answer.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/base/text.h"
#include "core/moist_air/atmosphere.h"
#include "core/moist_air/humid_air.h"
#include "workbench/detail/cautions.h"
#include "workbench/detail/coat_case.h"
#include "workbench/detail/one_kind.h"
#include "workbench/detail/steady_air.h"
#include "workbench/detail/unit_window.h"
#include "workbench/detail/window_words.h"
#include "workbench/workshop.h"

namespace dampward::workbench {
namespace {

// No dryer of a workshop gets a room drier (estimate, as for the remedies of a plan).
constexpr int driest_percent = 20;

Pressure pressure_at(const Workshop& workshop) {
  return moist_air::standard_pressure(workshop.shop.site.altitude);
}

Problem not_known(const char* option, const std::string& id, const std::vector<std::string>& known) {
  return {{"command line"},
          format("{} {}, which nobody knows", option, id),
          "one of " + listed(known),
          did_you_mean(id, known)};
}

// What stands over every window: the lacquer's rules in this air.
WindowAnswer answer_in(const Workshop& workshop, const materials::Lacquer& lacquer, WindowQuestion::Air air,
                       Temperature dew_point) {
  const coating::WindowRules rules = coating::window_rules(lacquer);
  WindowAnswer answer;
  answer.basis = workshop.shop.site.name.empty() ? "the shipped tables" : workshop.shop.site.name;
  answer.lacquer = lacquer.name;
  answer.air = air;
  answer.dew_point = dew_point;
  answer.floor = dew_point + rules.dew_margin;
  if (rules.coldest) answer.floor = std::max(answer.floor, *rules.coldest);
  answer.hottest = rules.hottest;
  answer.hottest_assumed = rules.hottest_assumed;
  answer.cautions = cautions_at({"all", "unload", "coat", "flash"}, workshop.hazards);
  return answer;
}

void set_work(UnitWindow& told, const coating::CoatingWork& work) {
  told.coats = work.coats;
  told.work = work.whole();
  if (told.closes) told.latest_start = *told.closes - work.whole();
}

UnitWindow of_plan(const UnitPlan& unit, const Plan& plan, const PaintShop& paint, const Workshop& workshop) {
  UnitWindow told;
  told.what = unit.unit.text;
  told.usable = true;
  if (unit.no_heat) {
    told.reason =
        "it dries without an oven, so it is as warm as the room and may be coated whenever the air "
        "allows: " +
        unit.no_heat_reason;
  }
  for (const Window& window : plan.windows) {
    if (window.unit != unit.unit) continue;
    told.opens = window.opens_after;
    told.closes = window.closes_after;
    told.opened_by = window.opened_by;
    told.closed_by = window.closed_by;
    told.trade_opens = window.trade_opens_after;
    told.damp_back = window.damp_back;
  }
  for (const Load& load : plan.loads) {
    if (load.id == unit.load) told.held = load.step_down;
  }
  const auto way = unit.way == "spray_stripped" ? equipment::CoatingWay::spray_stripped
                                                : equipment::CoatingWay::brush_assembled;
  if (const auto coat = coat_case(*workshop.kinds.find(unit.kind), way, paint, workshop.shop))
    set_work(told, coat->work);
  return told;
}

UnitWindow of_refusal(const Refusal& refusal) {
  UnitWindow told;
  told.what = refusal.unit.text;
  told.reason = refusal.reason;
  told.settle = refusal.settle;
  told.remedies = refusal.remedies;
  return told;
}

WindowCase bare_case(const SurfaceQuestion& question, const materials::Lacquer& lacquer,
                     const coating::CoatingWork& work, Temperature dew_point, RelativeHumidity humidity) {
  WindowCase bare{
      {}, {question.air.temperature, dew_point, humidity}, coating::window_rules(lacquer), work, {}};
  for (const auto& surface : question.surfaces) {
    bare.surfaces.push_back(
        {surface.name, coating::LumpedCooling{surface.hot, question.air.temperature, surface.time_constant}});
  }
  return bare;
}

}  // namespace

bool WindowAnswer::any() const {
  return std::any_of(windows.begin(), windows.end(), [](const UnitWindow& window) { return window.usable; });
}

Result<WindowAnswer> window_answer(const Workshop& as_is, const records::RecordStore& records,
                                   const WindowQuestion& question) {
  Workshop workshop = as_is;
  if (question.kind && workshop.kinds.find(*question.kind) == nullptr)
    return not_known("--kind", question.kind->text, workshop.kinds.ids());
  const OneKind of_kind(records, question.kind.value_or(KindId{}), 1);
  const records::RecordStore& queue =
      question.kind ? static_cast<const records::RecordStore&>(of_kind) : records;
  const SteadyAir steady(queue, workshop.shop.spray.name, question.air.value_or(WindowQuestion::Air{}));
  if (question.air) workshop.climate.reset();  // the air asked for lasts
  const auto plan =
      make_plan(workshop, question.air ? static_cast<const records::RecordStore&>(steady) : queue, {});
  if (!plan) return plan.problems();
  const auto paint = paint_shop(workshop, {plan->air.warmest, pressure_at(workshop)});
  if (!paint) return paint.problems();

  WindowAnswer answer =
      answer_in(workshop, *paint->lacquer, {plan->air.temperature, plan->air.humidity}, plan->air.dew_point);
  std::vector<std::string> serials;
  const auto asked = [&](const UnitId& unit) {
    serials.push_back(unit.text);
    return !question.unit || *question.unit == unit;
  };
  for (const UnitPlan& unit : plan->units) {
    if (asked(unit.unit)) answer.windows.push_back(of_plan(unit, *plan, *paint, workshop));
  }
  for (const Refusal& refusal : plan->refused) {
    if (asked(refusal.unit)) answer.windows.push_back(of_refusal(refusal));
  }
  if (question.unit && answer.windows.empty()) return not_known("--unit", question.unit->text, serials);
  answer.warnings = window_warnings(*plan);
  return answer;
}

Result<WindowAnswer> window_answer(const Workshop& workshop, const SurfaceQuestion& question) {
  DAMPWARD_PROMISE(!question.surfaces.empty(), "a window is asked for at least one surface");
  const materials::Lacquer* lacquer = workshop.lacquers.find(workshop.shop.lacquer);
  if (lacquer == nullptr) return not_known("--lacquer", workshop.shop.lacquer.text, workshop.lacquers.ids());
  const auto work = coating::coating_work(*lacquer, question.method, question.one_coat);
  if (!work) {
    return Problem{{"command line"},
                   lacquer->name + " by that method",
                   "a method the lacquer has coats for",
                   "Take another --method or --lacquer."};
  }
  const auto dew_at = [&](RelativeHumidity humidity) {
    return moist_air::dew_point({question.air.temperature, humidity, pressure_at(workshop)});
  };
  const Temperature dew_point = dew_at(question.air.humidity);
  WindowAnswer answer = answer_in(workshop, *lacquer, question.air, dew_point);
  const WindowCase bare = bare_case(question, *lacquer, *work, dew_point, question.air.humidity);
  const coating::WarmWindow window = bare.window();
  const coating::WarmCoatViews views = coating::warm_coat_views(bare.surfaces, bare.rules);

  UnitWindow told;
  told.what = "the surfaces";
  told.usable = window.usable();
  told.trade_opens = views.trade_begins;
  if (window.usable()) {
    told.opens = window.opens;
    told.closes = window.closes;
    told.opened_by = opened_words(window);
    told.closed_by = closed_words(window);
  } else {
    told.reason = coating::words(window, *work);
    for (int percent = static_cast<int>(question.air.humidity.percent()); percent >= driest_percent;
         --percent) {
      const auto humidity = RelativeHumidity::percent(percent);
      if (!bare_case(question, *lacquer, *work, dew_at(humidity), humidity).window().usable()) continue;
      told.dry_enough = humidity;
      told.settle = format("Air of the same warmth at {} % humidity or less gives one.", percent);
      break;
    }
    if (!told.dry_enough) told.settle = "No drier air opens one: cooler air, or shorter work.";
  }
  set_work(told, *work);
  answer.windows.push_back(told);
  answer.warnings = window.warnings;
  if (views.disagree) answer.warnings.push_back(views.view);
  return answer;
}

}  // namespace dampward::workbench
