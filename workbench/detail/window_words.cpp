#include "workbench/detail/window_words.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::workbench {

std::string opened_words(const coating::WarmWindow& window) {
  switch (window.opened) {
    case coating::Opens::on_leaving_the_oven:
      return "it is cool enough on leaving the oven";
    case coating::Opens::hottest_surface:
      return window.opened_by + " has cooled to the lacquer's hottest surface";
  }
  return "";
}

std::string closed_words(const coating::WarmWindow& window) {
  switch (window.closed) {
    case coating::Closes::never:
      break;
    case coating::Closes::dew_margin:
      return window.closed_by + " comes down to dew point plus margin";
    case coating::Closes::coldest_surface:
      return window.closed_by + " comes down to the lacquer's coldest surface";
    case coating::Closes::damp_back: {
      const std::string margin =
          window.margin_lasts ? "the dew-point margin never runs out in this air; " : "";
      if (window.closed_by == undescribed_parts) {
        return format("{}damp going back into slow parts ends it {} h after opening (estimate)", margin,
                      fixed((*window.closes - window.opens).in(hour), 0));
      }
      return format("{}{} % of what the oven drove out of {} is back", margin,
                    fixed(100 * drying::regain_allowed, 0), window.closed_by);
    }
  }
  return "";
}

std::vector<DampBackIn> damp_back_in(const UnitDraft& unit, Duration after_oven) {
  std::vector<DampBackIn> told;
  for (const PartRegain& part : unit.regains) {
    const double share = std::min(1.0, part.course.at(after_oven));
    const Duration tenth = part.course.passes(drying::regain_allowed).value_or(regain_horizon);
    DampBackIn back{part.part, part.name, share, tenth, part.gates, ""};
    if (share > drying::regain_allowed) {
      back.words =
          format("A tenth is back in {} {} min after leaving the oven: coat it first, or in dried air.",
                 part.name, fixed(std::floor(tenth.in(minute)), 0));
    }
    told.push_back(back);
  }
  return told;
}

std::vector<std::string> window_warnings(const Plan& plan) {
  std::vector<std::string> warnings;
  for (const Load& load : plan.loads) {
    if (!load.step_down) continue;
    const StepDownHold& hold = *load.step_down;
    warnings.push_back(format(
        "{}: after the bake step the {} down to {} °C; {} min later shut its vent and take units out one "
        "by one, the last within {} min after that, for damp goes back.",
        load.id, load.oven_name, fixed(hold.to.celsius(), 0), fixed(std::ceil(hold.takes.in(minute)), 0),
        fixed(std::floor(hold.at_most.in(minute)), 0)));
  }
  std::vector<std::string> names;
  for (const Window& window : plan.windows) {
    for (const DampBackIn& part : window.damp_back) {
      const bool told = std::find(names.begin(), names.end(), part.name) != names.end();
      if (!part.words.empty() && !told) names.push_back(part.name);
    }
  }
  if (!names.empty()) {
    warnings.push_back("Damp goes back within minutes into thin open parts (" + listed(names) +
                       "): coat them first, or in dried air.");
  }
  return warnings;
}

}  // namespace dampward::workbench
