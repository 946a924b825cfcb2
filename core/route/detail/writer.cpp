#include "core/route/detail/writer.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/route/detail/labour.h"
#include "core/route/lifting.h"

namespace dampward::route::detail {
namespace {

using equipment::CoatingWay;
using equipment::Labour;
using equipment::Operation;

const char* stopwatch = "a stopwatch on three units";

Labour guessed(Range<Duration> time, int people = 1) {
  return {time, people, Mark::estimate, stopwatch};
}

// One minute a line, half to twice; never under two.
Labour by_line(std::size_t lines) {
  const double n = static_cast<double>(std::max<std::size_t>(lines, 1));
  return guessed(minutes(std::max(1.0, 0.5 * n), std::max(2.0, n), std::max(4.0, 2 * n)));
}

Labour with_people(Labour labour, int people) {
  labour.people = std::max(labour.people, people);
  return labour;
}

Labour with_time(Labour labour, const Range<Duration>& time) {
  labour.hands_on = time;
  return labour;
}

std::vector<std::string> told(const std::vector<ListedPart>& list) {
  std::vector<std::string> lines;
  for (const ListedPart& part : list) lines.push_back(format("{}: {} ({})", part.name, part.what, part.why));
  return lines;
}

int banks(const equipment::Kind& kind) {
  int count = 0;
  for (const equipment::Part& part : kind.parts) {
    for (const HazardId& hazard : part.hazards) count += hazard.text == "H01";
  }
  return count;
}

}  // namespace

bool Writer::found(std::string_view finding) const {
  return std::find(subject_.findings.begin(), subject_.findings.end(), finding) != subject_.findings.end();
}

// The slow end; 4 h where the lacquer names none, an estimate.
Duration Writer::touch_dry() const {
  return means_.lacquer.touch_dry ? means_.lacquer.touch_dry->high : 4 * hour;
}

void Writer::write() {
  open();
  clean();
  cover();
  dry();
  coat();
  finish();
  route_.steps = list_.take_steps();
  route_.gaps = list_.take_gaps();
}

void Writer::open() {
  const equipment::Kind& kind = subject_.kind;
  const double bank_minutes = 2.0 * banks(kind);  // per bank of capacitors: hazard table H01
  list_.add(StepCode::make_safe, "Make safe",
            "nothing is opened before it is disconnected, discharged and proved dead", "make_safe",
            "make_safe", guessed(minutes(5 + bank_minutes, 10 + bank_minutes, 20 + bank_minutes)));
  auto& test =
      list_.add(StepCode::test, "Test first",
                "alignment and insulation as it came, so that what the treatment changes can be told", "test",
                "test", labour_of(kind, Operation::test));
  if (kind.transmits) test.notes.emplace_back("transmit into a dummy load only");
  if (kind.semiconductors) test.notes.emplace_back("insulation tester only with the semiconductors out");
  if (found("low_insulation"))
    test.notes.emplace_back("write down every insulation reading: it is the measure of the drying");
  if (found("fault")) {
    list_.add(StepCode::repair, "Put faults right", "a fault under lacquer is found late and mended badly",
              "test", "test", guessed(minutes(20, 60, 240)));
  }
  const bool spray = route_.way.way == CoatingWay::spray_stripped;
  const WayLabour& labour = spray ? route_.way.spray : route_.way.brush;
  auto& strip = list_.add(StepCode::strip, spray ? "Strip" : "Open",
                          spray ? "air and lacquer must reach both sides of everything"
                                : "it is coated assembled: only covers come off",
                          "strip", "strip", with_time(labour_of(kind, Operation::strip), labour.strip));
  strip.notes = {"bag, tag and photograph what comes off", "nothing is unsoldered"};
  if (found("wax_unknown"))
    strip.notes.emplace_back(
        "melt a scraping of the unknown wax on the hot plate and write down where it melts");
  if (!route_.lists.removed.empty()) {
    auto& out = list_.add(StepCode::take_out, "Take out what heat or solvent would hurt",
                          "cells always; and what this kind and this shop take out", "strip", "strip",
                          by_line(route_.lists.removed.size()));
    out.notes = told(route_.lists.removed);
    if (!route_.valves.empty()) out.notes.push_back(route_.valves);
  }
}

void Writer::clean() {
  auto& clean = list_.add(StepCode::clean, "Clean", "film on dirt or salt peels and holds the damp in",
                          "clean", "clean", labour_of(subject_.kind, Operation::clean));
  Range<Duration> standing;
  for (const CleanerChoice& choice : route_.cleaning) {
    clean.notes.push_back(choice.reason);
    if (!choice.try_first.empty()) {
      clean.notes.push_back(
          format("{} may soften {}: wipe, do not soak", choice.name, listed(choice.try_first)));
    }
    standing = {std::max(standing.low, choice.dries_in.low),
                std::max(standing.typical, choice.dries_in.typical),
                std::max(standing.high, choice.dries_in.high)};
  }
  auto& proof =
      list_.add(StepCode::salt_proof, "Prove it free of salt", "salt under a film draws water through it",
                "clean", "clean", guessed(minutes(3, 5, 10)));
  proof.notes = {
      "rinse or swab with clean water: it must come off within 2 µS/cm of how it went on (estimate)",
      "if it does not, rinse again: the step is repeated, not passed"};
  // The proof itself leaves it wet, whatever it was cleaned with.
  const Range<Duration> from_proof = minutes(10, 20, 60);
  standing = {std::max(standing.low, from_proof.low), std::max(standing.typical, from_proof.typical),
              std::max(standing.high, from_proof.high)};
  list_.wait(
      StepCode::solvent_free, "Stand until free of solvent",
      "solvent that goes into an oven lights there: a few millilitres fill it past its flammable limit",
      "flash", standing, Attendance::unattended);
}

void Writer::cover() {
  const Range<Duration>& time = route_.masking.before;
  if (time.high > Duration{}) {
    auto& cover = list_.add(
        StepCode::cover, route_.masking.all_before_bake ? "Mask" : "Plug, cap and paper",
        "contacts, adjustments and sockets stay free of film; what is covered now costs no warm minutes",
        "mask", "mask", with_time(labour_of(subject_.kind, Operation::mask), time));
    cover.notes = told(route_.lists.mask);
    cover.notes.push_back(route_.masking_reason);
    cover.notes.emplace_back("count the masks on: the same number comes off");
  }
  if (!route_.lists.loosen.empty()) {
    auto& loosen = list_.add(StepCode::loosen, "Loosen", "so that both sides are dried and coated", "strip",
                             "strip", by_line(route_.lists.loosen.size()));
    loosen.notes = told(route_.lists.loosen);
  }
  if (!route_.lists.tighten.empty()) {
    auto& tighten =
        list_.add(StepCode::tighten, "Tighten before coating", "film under a foot or lug insulates it",
                  "strip", "strip", by_line(route_.lists.tighten.size()));
    tighten.notes = told(route_.lists.tighten);
  }
}

void Writer::dry() {
  const equipment::Kind& kind = subject_.kind;
  const int carriers = carrying(kind, means_.shop.site).people;
  const Labour load = with_people(labour_of(kind, Operation::load), carriers);
  const Labour unload = with_people(labour_of(kind, Operation::unload), carriers);
  if (const auto* heat = std::get_if<Heat>(&facts_.drying)) {
    list_.add(StepCode::load, "Load the oven",
              "faces open, air between the units, a probe on the slowest lump", "oven", "load", load);
    list_.in_no_place();
    std::string title = format("Bake at {} °C", fixed(heat->set_point.celsius(), 0));
    if (heat->stepped_to)
      title += format(", then hold at {} °C with the vent shut", fixed(heat->stepped_to->celsius(), 0));
    list_.wait(StepCode::bake, title,
               "until what can dry in a shift is dry; somebody is within call all the time", "bake",
               heat->hold, Attendance::watched);
    list_.last_order().kind = GapKind::same_stay;
    list_.add(StepCode::unload, "Unload",
              "one unit at a time, so that each meets the lacquer inside its window", "oven", "unload",
              unload);
    list_.in_no_place();
    list_.last_order().kind = GapKind::same_stay;
  } else {
    const auto& none = std::get<NoHeat>(facts_.drying);
    list_.add(StepCode::cabinet_in, format("Into the {}", none.means), none.reason, "oven", "load", load);
    list_.in_no_place();
    list_.wait(StepCode::cabinet, format("Dry in the {}", none.means), none.reason, "bake", none.time,
               Attendance::unattended);
    list_.last_order().kind = GapKind::same_stay;
    list_.add(StepCode::cabinet_out, format("Out of the {}", none.means),
              "straight to the coat, before it takes up damp", "oven", "unload", unload);
    list_.in_no_place();
    list_.last_order().kind = GapKind::same_stay;
  }
  out_of_heat_ = list_.last();
  if (route_.masking.after.high > Duration{}) {
    auto& tape = list_.add(StepCode::tape, "Tape what is left", "common tape does not stand the bake", "mask",
                           "mask", with_time(labour_of(kind, Operation::mask), route_.masking.after));
    tape.notes.push_back(route_.masking_reason);
    tape.notes.emplace_back("gloves: above 45 °C it is not for bare hands");
  }
}

void Writer::coat() {
  const bool spray = route_.way.way == CoatingWay::spray_stripped;
  const WayLabour& labour = spray ? route_.way.spray : route_.way.brush;
  const char* skill = spray ? "spray" : "brush";
  const int coats = std::max(rule_.coats, 1);
  const Labour each = with_time(labour_of(subject_.kind, Operation::coat), times(1.0 / coats, labour.coat));
  std::string first;
  for (int coat = 1; coat <= coats; ++coat) {
    const std::string before = last_coat_;
    auto& step = list_.add(
        StepCode::coat, format("Coat {} of {}", coat, coats),
        coat == 1 ? route_.way.reason
                  : std::string("several thin films hold where one thick film runs and traps solvent"),
        skill, "coat", each, coats == 1 ? 0 : coat);
    if (coat == 1) {
      step.hazard_step_too = "mix";
      if (spray) step.notes = told(route_.lists.brush);
      for (const SolventConflict& conflict : route_.conflicts) step.notes.push_back(conflict.why);
      if (means_.lacquer.isocyanate)
        step.notes.emplace_back("isocyanate: supplied air only, nobody else in the room");
      first = step.id;
    }
    last_coat_ = step.id;
    list_.wait(StepCode::flash, coat == coats ? "Flash off" : format("Flash off before coat {}", coat + 1),
               "solvent must leave before the next film shuts it in", "flash", rule_.flash,
               Attendance::unattended, coats == 1 ? 0 : coat);
    list_.last_order().kind = GapKind::flash;
    list_.last_order().longest = Duration{};
    list_.last_order().reason = "the film flashes off from the moment the coat is on";
    last_flash_ = list_.last();
    if (coat == 1) continue;
    std::optional<Duration> latest;
    if (means_.lacquer.recoat_latest) latest = means_.lacquer.recoat_latest->low;
    list_.gap(GapKind::flash, before, last_coat_, rule_.flash.high, latest,
              format("{} to {} min between coats; the longer, so that no solvent is shut in",
                     fixed(rule_.flash.low.in(minute), 0), fixed(rule_.flash.high.in(minute), 0)));
  }

  const Duration opens = facts_.window ? facts_.window->opens : Duration{};
  const std::optional<Duration> closes = facts_.window ? facts_.window->closes : std::nullopt;
  list_.gap(GapKind::warm_window, out_of_heat_, first, opens, closes,
            "cool enough for the lacquer, and still warm enough above the dew point");
  list_.gap(GapKind::warm_window, out_of_heat_, last_flash_, Duration{}, closes,
            "the last film must flash off while the surface is still above the dew point", true);
}

void Writer::finish() {
  const equipment::Kind& kind = subject_.kind;
  const materials::Lacquer& lacquer = means_.lacquer;
  const bool spray = route_.way.way == CoatingWay::spray_stripped;
  const WayLabour& labour = spray ? route_.way.spray : route_.way.brush;

  auto& unmask = list_.add(StepCode::unmask, "Unmask gently", "wires pull loose and soft film tears", "mask",
                           "unmask", with_time(labour_of(kind, Operation::unmask), labour.unmask));
  unmask.notes = {"only when the film is dry to the touch", "count the masks off"};
  list_.gap(GapKind::touch_dry, last_coat_, unmask.id, touch_dry(), std::nullopt,
            lacquer.touch_dry ? "the film is dry to the touch"
                              : "the film is dry to the touch; the lacquer names no time: 4 h, an estimate");
  auto& touch_up = list_.add(StepCode::touch_up, "Touch up by brush",
                             "bare rims beside masks and cut edges are where damp gets in", "touch_up",
                             "touch_up", labour_of(kind, Operation::touch_up));
  touch_up.notes = told(route_.lists.touch_up);
  list_.wait(StepCode::film_dry, "Let the last film dry", "airing counts from a dry film", "flash",
             lacquer.touch_dry.value_or(Range<Duration>(2 * hour, 3 * hour, 4 * hour)),
             Attendance::unattended);
  film_dry_ = list_.last();
  list_.add(StepCode::mark, "Mark", "whoever opens it next must know it was treated, when and with what",
            "mark", "all", labour_of(kind, Operation::mark));
  const std::string marked = list_.last();
  list_.continue_from(film_dry_);
  list_.wait(StepCode::airing, "Air before closing", "vapour shut into a case lights at the first spark",
             "airing", lacquer.airing_before_closing, Attendance::unattended);
  list_.last_order().kind = GapKind::airing;
  auto& close = list_.add(StepCode::reassemble, "Put together and close",
                          "what came off goes back by its tag; cells last", "assemble", "reassemble",
                          with_time(labour_of(kind, Operation::reassemble), labour.reassemble));
  list_.gap(GapKind::order, marked, close.id, Duration{}, std::nullopt, "");
  auto& retest = list_.add(StepCode::retest, "Test again",
                           "alignment and insulation against what was written down first", "test", "retest",
                           labour_of(kind, Operation::retest));
  if (kind.transmits) retest.notes.emplace_back("transmit into a dummy load only");
  retest.notes.emplace_back("earth bond and every safety contact before power");
  auto& recheck = list_.add(StepCode::recheck, "Check again",
                            "the film changes circuit constants while it ages; by now they have settled",
                            "test", "retest", labour_of(kind, Operation::retest));
  list_.gap(GapKind::recheck, film_dry_, recheck.id, lacquer.constants_settle, std::nullopt,
            format("{} h after the film is dry", fixed(lacquer.constants_settle.in(hour), 0)));
}

}  // namespace dampward::route::detail
