#include "core/route/coating_way.h"

#include "core/base/format.h"
#include "core/route/detail/labour.h"

namespace dampward::route {
namespace {

using detail::labour_of;
using detail::minutes;
using detail::plus;
using detail::times;
using equipment::CoatingWay;
using equipment::Operation;

// All estimates; a stopwatch on three units settles each.
// Masking a point for the gun, and keeping a brush off it; both with a few minutes to begin.
const Range<double> mask_point_spray = {0.4, 0.75, 1.5}, mask_point_brush = {0.15, 0.3, 0.7};  // min
const Range<double> mask_begin = {3, 5, 10};                                                   // min
// All coats together: a gun crosses a square metre in minutes, a brush works round every part.
const Range<double> spray_begin = {1, 2, 4}, spray_pace = {7, 11, 22};      // min, min/m²
const Range<double> brush_begin = {6, 10, 20}, brush_pace = {36, 60, 120};  // min, min/m²
// An assembled unit is only opened: covers, shields and cells off.
constexpr double opening_share = 0.4;
constexpr double unmask_share = 1.0 / 3;

Range<Duration> linear(const Range<double>& begin, const Range<double>& pace, const Range<double>& amount) {
  return minutes(begin.low + pace.low * amount.low, begin.typical + pace.typical * amount.typical,
                 begin.high + pace.high * amount.high);
}

Range<double> square_metres(const Range<Area>& area) {
  return {area.low.in(square_metre), area.typical.in(square_metre), area.high.in(square_metre)};
}

WayLabour given(const equipment::Kind& kind) {
  const auto time = [&](Operation operation) { return labour_of(kind, operation).hands_on; };
  return {time(Operation::strip), time(Operation::mask), time(Operation::coat), time(Operation::unmask),
          time(Operation::reassemble)};
}

// The other way's labour from the usual way's and the kind's contacts and areas.
WayLabour estimated(const equipment::Kind& kind, CoatingWay way, const WayLabour& usual) {
  const bool spray = way == CoatingWay::spray_stripped;
  const double opening = spray ? 1 / opening_share : opening_share;
  WayLabour labour;
  labour.strip = times(opening, usual.strip);
  labour.mask = linear(mask_begin, spray ? mask_point_spray : mask_point_brush, kind.contacts.value);
  labour.coat = spray ? linear(spray_begin, spray_pace, square_metres(kind.spray_area_stripped.value))
                      : linear(brush_begin, brush_pace, square_metres(kind.spray_area_assembled.value));
  labour.unmask = times(unmask_share, labour.mask);
  labour.reassemble = times(opening, usual.reassemble);
  labour.estimated = true;
  return labour;
}

double typical_minutes(const WayLabour& labour) {
  return labour.total().typical.in(minute);
}

const char* words(CoatingWay way) {
  return way == CoatingWay::spray_stripped ? "spraying it stripped" : "brushing it assembled";
}

CoatingWay other(CoatingWay way) {
  return way == CoatingWay::spray_stripped ? CoatingWay::brush_assembled : CoatingWay::spray_stripped;
}

}  // namespace

Range<Duration> WayLabour::total() const {
  return plus(plus(plus(strip, mask), plus(coat, unmask)), reassemble);
}

WayChoice choose_way(const equipment::Kind& kind, WayMeans means) {
  WayChoice choice;
  const CoatingWay usual = kind.usual_way;
  const WayLabour as_usual = given(kind), as_other = estimated(kind, other(usual), as_usual);
  const bool usually_sprayed = usual == CoatingWay::spray_stripped;
  choice.spray = usually_sprayed ? as_usual : as_other;
  choice.brush = usually_sprayed ? as_other : as_usual;
  const Area stripped = kind.spray_area_stripped.value.typical;
  choice.reach = stripped > Area{} ? kind.spray_area_assembled.value.typical / stripped : 0;

  const std::string compare = format(
      "hands-on {} to spray it stripped, {} to brush it assembled, where a brush reaches {} % of its surface",
      detail::words(choice.spray.total()), detail::words(choice.brush.total()), fixed(100 * choice.reach, 0));
  if (!means.can_spray && !means.can_brush) {
    choice.possible = false;
    choice.reason = "the shop has neither gun and sprayer nor a hand for the brush";
    return choice;
  }
  if (means.can_spray != means.can_brush) {
    choice.way = means.can_spray ? CoatingWay::spray_stripped : CoatingWay::brush_assembled;
    choice.reason = format("{}: the shop can do nothing else; {}", words(choice.way), compare);
    return choice;
  }

  choice.way = usual;
  const double usual_time = typical_minutes(as_usual), other_time = typical_minutes(as_other);
  const bool reaches = choice.reach >= least_reach;
  const bool has_reason = !kind.way_reason.empty();
  const bool much_cheaper = usual_time > (has_reason ? usual_way_patience : 1.0) * other_time;
  const bool may_change = usually_sprayed ? reaches : !has_reason;
  if (much_cheaper && may_change) {
    choice.way = other(usual);
    choice.reason = format("{} instead of the usual way: {}", words(choice.way), compare);
    return choice;
  }
  choice.reason = format("{}: {}", words(usual), has_reason ? kind.way_reason : "the kind's usual way");
  while (choice.reason.ends_with('.')) choice.reason.pop_back();
  choice.reason += format(" ({})", compare);
  if (much_cheaper && usually_sprayed) choice.reason += "; brushing is quicker, but leaves most of it bare";
  if (much_cheaper && !usually_sprayed)
    choice.reason += "; spraying is quicker, but the reason to brush stands";
  return choice;
}

}  // namespace dampward::route
