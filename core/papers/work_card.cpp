#include "core/papers/work_card.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/papers/danger.h"
#include "core/papers/detail/mask_rows.h"
#include "core/papers/detail/window_strip.h"
#include "core/papers/figures.h"
#include "core/papers/flow.h"
#include "core/papers/parts.h"

namespace dampward::papers {
namespace {

constexpr double wide = right_edge - left_edge;

std::string names_of(const std::vector<WorkCard::Item>& items) {
  std::vector<std::string> names;
  for (const WorkCard::Item& item : items) names.push_back(item.name);
  return listed(names);
}

std::string words_of(const WorkCard::Item& item) {
  std::string words = item.name;
  if (item.count > 1) words += " (" + std::to_string(item.count) + ")";
  return item.what.empty() ? words : words + ": " + item.what;
}

int pieces(const std::vector<WorkCard::Item>& items) {
  int sum = 0;
  for (const WorkCard::Item& item : items) sum += item.count;
  return sum;
}

class Card {
 public:
  Card(const WorkCard& card, const Words& words) : card_(card), words_(words) {}

  Flow flow() {
    Flow flow;
    flow.head = [this](Pen& pen) { return first_head(pen); };
    flow.running = card_.unit + "   " + words_("work_card");
    flow.sheet = flow.running;
    flow.plan = card_.plan;
    flow.notes = words_("notes");
    for (std::size_t i = 0; i < card_.lines.size(); ++i) add(i, flow.rows);
    return flow;
  }

 private:
  std::string clock(Instant time) const { return clock_of(time, card_.clock); }
  std::string day(Instant time) const { return weekday_name(words_, time, card_.clock); }
  const WorkCard::Line* line_of(const char* code) const {
    const auto found = std::find_if(card_.lines.begin(), card_.lines.end(),
                                    [&](const WorkCard::Line& line) { return line.key.code == code; });
    return found == card_.lines.end() ? nullptr : &*found;
  }

  // What a reader in the workshop holds against the card: unit and step; none where the serial is too long for its side.
  std::string code(const std::string& step) const {
    std::string text = "DAMPWARD " + card_.unit + " " + step;
    std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return std::toupper(c); });
    return text.size() <= longest_code ? text : "";
  }

  std::string why() const {
    const std::string ours = time_taken(card_.stripped ? card_.spray_hands : card_.brush_hands),
                      other = time_taken(card_.stripped ? card_.brush_hands : card_.spray_hands);
    std::string why = words_(card_.stripped ? "card_spray_stripped" : "card_brush_assembled", {ours, other});
    if (!card_.way_reason.empty()) why += " " + card_.way_reason;
    if (card_.bake)
      why += " " + words_("card_weakest", {card_.bake->weakest});
    else
      why += " " + words_("card_no_heat");
    if (card_.findings.empty()) return why;
    std::vector<std::string> found;
    for (const std::string& finding : card_.findings)
      found.push_back(words_.has("found_" + finding) ? words_("found_" + finding) : finding);
    return words_("card_found", {listed(found)}) + " " + why;
  }

  double first_head(Pen& pen) const {
    const double y = head(pen, {words_("work_card"), card_.shop, card_.unit, card_.kind, why(), "", "", "",
                                code(card_.lines.empty() ? "" : card_.lines.front().id)});
    std::vector<Moment> moments;
    if (!card_.lines.empty()) {
      const Instant begins = card_.lines.front().starts;
      moments.push_back({words_("card_begins", {day(begins)}), clock(begins)});
    }
    for (const auto& [step, word] : {std::pair("load", "card_into_oven"), {"cabinet_in", "card_into_box"}}) {
      if (const auto* line = line_of(step))
        moments.push_back({words_(word, {day(line->starts)}), clock(line->starts)});
    }
    if (card_.warm && !card_.warm->starts.empty()) {
      const Instant coat = card_.warm->starts.front();
      moments.push_back({words_("card_first_coat", {day(coat)}), clock(coat)});
    }
    moments.push_back({words_("card_close", {day(card_.close_from)}), clock(card_.close_from)});
    return y + pen.moments(y, moments);
  }

  // The second place: oven and lacquer.
  double second_head(Pen& pen, const WorkCard::Line& first) const {
    const double y =
        head(pen, {words_("work_card") + ", " + words_("card_from_oven"), card_.shop, card_.unit, card_.kind,
                   words_("card_lacquer", {card_.lacquer}) + " " + words_("card_never_back"), "", "", "",
                   code(first.id)});
    std::vector<Moment> moments = {
        {words_(card_.bake ? "card_into_oven" : "card_into_box", {day(first.starts)}), clock(first.starts)}};
    if (card_.warm) {
      moments.push_back({words_("card_out", {day(card_.warm->leaves)}), clock(card_.warm->leaves)});
      moments.push_back({words_("card_shuts", {day(card_.warm->shuts)}), clock(card_.warm->shuts)});
    }
    moments.push_back({words_("card_close", {day(card_.close_from)}), clock(card_.close_from)});
    moments.push_back({words_("card_done", {day(card_.done)}), clock(card_.done)});
    return y + pen.moments(y, moments);
  }

  std::string who(const WorkCard::Line& line) const {
    const double seconds = std::chrono::duration<double>(line.ends - line.starts).count();
    std::string who = day(line.starts) + "   " + time_taken(seconds * second);
    if (!line.hands) who += "\n" + words_("card_until", {day(line.ends) + " " + clock(line.ends)});
    if (!line.station.empty()) who += "\n" + line.station;
    if (!line.people.empty()) who += "\n" + listed(line.people);
    return who;
  }

  std::vector<Warning> warnings(const WorkCard::Line& line) const {
    std::vector<Warning> all;
    for (const std::string& hazard : line.hazards) {
      if (words_.has("caution_" + hazard)) all.push_back({danger_of(hazard), words_("caution_" + hazard)});
    }
    if (line.key.code == "make_safe") all.push_back({Danger::any, words_("caution_unknown")});
    const bool tested = line.key.code == "test" || line.key.code == "retest" || line.key.code == "recheck";
    if (tested && card_.transmits) all.push_back({Danger::any, words_("card_dummy_load")});
    if (tested && card_.semiconductors) all.push_back({Danger::any, words_("card_semiconductors")});
    return all;
  }

  Step step_of(const WorkCard::Line& line) const {
    Step step;
    step.clock = clock(line.starts);
    step.who = who(line);
    step.title = step_name(words_, line.key);
    step.warnings = warnings(line);
    step.ticks = line.hands ? 1 : 0;
    fill(step, line.key.code);
    const std::string reason = step_reason(words_, line.key);
    if (!reason.empty()) step.body.push_back(words_("why", {reason}));
    if (const auto* list = list_of(line.key.code); list != nullptr && !list->empty())
      step.inside = [list](Pen& pen, double y) { return ticks(pen, y, *list, 0, first_ticks); };
    return step;
  }

  // What a step asks for beside its name and its dangers.
  void fill(Step& step, const std::string& code) const {
    const std::string same = words_("card_not_below");
    if (code == "test" || code == "retest" || code == "recheck") {
      const std::string expect = code == "test" ? "" : same;
      if (code == "retest") step.body.push_back(words_("card_earth_first"));
      if (code == "test" && has_finding("wax_unknown"))
        step.readings.push_back({words_("card_melts_at"), "°C", ""});
      step.readings.push_back({words_("card_insulation"), "MΩ", expect});
      if (card_.transmits) {
        step.readings.push_back({words_("card_receiver"), "µV", ""});
        step.readings.push_back({words_("card_sender"), "W", ""});
      }
    } else if (code == "strip" && has_finding("wax_unknown")) {
      step.body.push_back(words_("card_measure_wax"));
    } else if (code == "salt_proof") {
      step.readings = {{words_("card_rinse_on"), "µS/cm", ""},
                       {words_("card_last_rinse"), "µS/cm", words_("card_within")}};
    } else if (code == "cover" || code == "plug") {
      step.title += ": " + std::to_string(pieces(card_.mask));
      step.readings = {{words_("card_counted_on"), "", std::to_string(pieces(card_.mask))}};
    } else if (code == "tape") {
      step.body.push_back(words_("card_see_masks"));
    } else if (code == "unmask") {
      step.body.push_back(words_("card_touch_dry"));
      step.body.push_back(words_("card_see_masks"));
      step.readings = {{words_("card_counted_off"), "", std::to_string(pieces(card_.mask))}};
    } else if (code == "mark") {
      step.readings = {{words_("card_lot"), "", ""}, {words_("card_next_date"), "", ""}};
    } else if (code == "reassemble") {
      step.body.push_back("<b>" + words_("card_close", {day(card_.close_from)}) + " " +
                          clock(card_.close_from) + ".</b>");
    } else if (code == "load" && card_.bake) {
      const WorkCard::Bake& b = *card_.bake;
      step.body.push_back(words_("card_oven", {b.load, b.oven, degrees(down(b.set)), time_taken(b.hold),
                                               clock(b.hold_starts), degrees(up(b.holds_from))}));
    } else if (code == "bake" && card_.bake) {
      bake(step);
    } else if (code == "unload" || code == "cabinet_out") {
      out(step);
    }
  }

  bool has_finding(const char* finding) const {
    return std::find(card_.findings.begin(), card_.findings.end(), finding) != card_.findings.end();
  }

  void bake(Step& step) const {
    const WorkCard::Bake& b = *card_.bake;
    if (b.stepped_to) step.body.push_back(words_("card_stepped", {degrees(down(*b.stepped_to))}));
    if (!b.stays_damp.empty()) step.body.push_back(words_("card_stays_damp", {b.stays_damp}));
    step.more = [this, b](Pen& pen, double y) {
      return y + 1 +
             pen.triple(words_column, y + 1, 105,
                        {fixed(up(b.peak), 0), fixed(down((b.limit - b.peak).in(kelvin)), 0),
                         fixed(down(b.limit), 0), "°C", "K", words_("peak"), words_("spare"),
                         words_("limit_of", {b.weakest})});
    };
  }

  void out(Step& step) const {
    if (!card_.warm) return;
    const WorkCard::Warm& w = *card_.warm;
    if (w.opens > w.leaves) step.body.push_back(words_("card_not_before", {clock(w.opens)}));
    step.body.push_back(words_("card_no_coat_after", {clock(w.last_start)}));
    step.more = [this, w](Pen& pen, double y) {
      return window_strip(
          pen, left_edge, y + 2, wide, {w.leaves, w.opens, w.shuts, w.flash_ends, w.starts, w.ends},
          {words_("card_opens"), words_("card_shuts_short"), words_("card_flash_off"), words_("spare"),
           [&](int coat) { return words_("card_coat_n", {std::to_string(coat)}); }},
          card_.clock);
    };
  }

  void add(std::size_t i, std::vector<Row>& rows) {
    const WorkCard::Line& line = card_.lines[i];
    const std::string& code = line.key.code;
    // All coats and what flashes between them are one row: nobody turns pages at the gun.
    const bool coated = code == "coat" || code == "flash";
    if (coated && line.key.code != "coat") return;
    if (code == "coat" && line.key.turn > 1) return;
    Step step = code == "coat" ? coats(line) : step_of(line);
    Row row{[step](Pen& pen, double y) { return papers::step(pen, y, step); }, false, nullptr};
    if (code == "load" || code == "cabinet_in")
      row.head = [this, line](Pen& pen) { return second_head(pen, line); };
    const bool masks = code == "cover" || code == "plug" ||
                       (code == "tape" && line_of("cover") == nullptr && line_of("plug") == nullptr);
    const std::vector<WorkCard::Item>* list = list_of(code);
    row.with_next = masks;
    rows.push_back(row);
    if (masks && card_.drawing) {
      kind_drawing_rows(*card_.drawing, words_, rows);
      rows.back().with_next = true;
    }
    if (masks) mask_rows(mask_items(), {words_("card_on"), words_("card_off")}, rows);
    if (list != nullptr) further_ticks(*list, rows);
  }

  const std::vector<WorkCard::Item>* list_of(const std::string& code) const {
    if (code == "take_out") return &card_.removed;
    if (code == "tighten") return &card_.tighten;
    if (code == "loosen") return &card_.loosen;
    if (code == "touch_up") return &card_.touch_up;
    return nullptr;
  }

  std::vector<std::string> mask_items() const {
    std::vector<std::string> items;
    for (const WorkCard::Item& item : card_.mask) items.push_back(words_of(item));
    return items;
  }

  // Items to tick, two a line. The first lines stand in the step itself, so that it is never parted from them.
  static constexpr std::size_t first_ticks = 6;
  static double ticks(Pen& pen, double y, const std::vector<WorkCard::Item>& items, std::size_t from,
                      std::size_t most) {
    constexpr double column = 70, width = 52;
    const std::size_t end = std::min(items.size(), from + most);
    for (std::size_t i = from; i < end; i += 2) {
      double height = tick(pen, words_column, y + 1, words_of(items[i]), width);
      if (i + 1 < end)
        height = std::max(height, tick(pen, words_column + column, y + 1, words_of(items[i + 1]), width));
      y += std::max(height + 1.6, tick_pitch);
    }
    return y;
  }
  static void further_ticks(const std::vector<WorkCard::Item>& items, std::vector<Row>& rows) {
    for (std::size_t i = first_ticks; i < items.size(); i += 2)
      rows.push_back(
          {[&items, i](Pen& pen, double y) { return ticks(pen, y, items, i, 2); }, false, nullptr});
  }

  Step coats(const WorkCard::Line& first) const {
    Step step;
    step.clock = clock(first.starts);
    step.who = who(first);
    step.title = words_("step_coat");
    step.masked = true;
    step.ticks = 0;
    step.warnings = warnings(first);
    for (const WorkCard::Line& line : card_.lines) {
      if (line.key.code == "flash" || (line.key.code == "coat" && &line != &first)) {
        for (const Warning& warning : warnings(line)) step.warnings.push_back(warning);
      }
    }
    const std::string pots = card_.pots.empty() ? "–" : listed(card_.pots);
    step.body.push_back(words_(card_.coats > 1 ? "card_coats" : "card_one_coat",
                               {std::to_string(card_.coats), jugful(card_.amount), pots}));
    if (!card_.brush.empty()) step.body.push_back(words_("card_by_brush", {names_of(card_.brush)}));
    if (!card_.bare.empty()) step.body.push_back(words_("card_bare", {names_of(card_.bare)}));
    if (!card_.respirator.empty()) step.body.push_back(words_("card_respirator", {card_.respirator}));
    step.body.push_back(words_("why", {step_reason(words_, first.key)}));
    step.more = [this](Pen& pen, double y) { return coat_boxes(pen, y + 3); };
    return step;
  }

  // A clock, a tick and a box for the film of every coat, three a line.
  double coat_boxes(Pen& pen, double y) const {
    constexpr double each = 51.5;
    double x = words_column, end = y;
    int coat = 0;
    const std::string film = words_(
        "to", {fixed(card_.wet_coat.low.in(micrometre), 0), fixed(card_.wet_coat.high.in(micrometre), 0)});
    for (const WorkCard::Line& line : card_.lines) {
      if (line.key.code != "coat") continue;
      if (coat > 0 && coat % 3 == 0) {
        x = words_column;
        y = end + 4;
      }
      ++coat;
      pen.text(x, y + 8, clock(line.starts), {value_size, 700});
      pen.text(x, y + 1, words_("card_coat_n", {std::to_string(coat)}), {tiny, 600});
      tick(pen, x + 40, y);
      end = y + 9.5 + reading_box(pen, x, y + 9.5, 48, {words_("card_wet_film"), "µm", film});
      x += each;
    }
    return end + 1.5;
  }

  const WorkCard& card_;
  const Words& words_;
};

}  // namespace

Pages work_card(const WorkCard& card, const Paper& paper, const Words& words, const Measure& measure) {
  return pages_of(Card(card, words).flow(), paper, words, measure);
}

}  // namespace dampward::papers
