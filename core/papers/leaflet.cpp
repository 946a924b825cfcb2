#include "core/papers/leaflet.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"

#include "core/papers/detail/tight_row.h"
#include "core/papers/figures.h"
#include "core/papers/step_words.h"

namespace dampward::papers {
namespace {

// No flame so near to wet lacquer. Source: 29 CFR 1910.107(c)(6), 20 feet.
constexpr Length no_flame_within = 6.1 * metre;
constexpr int mornings = 3;

// What goes first where a page is short of room; each goes with all before it.
enum class Without { nothing, lesser_lists, reasons, morning_boxes };
// Rows may stand so much apart where there is room.
constexpr double most_gap = 2.5;

std::string whole(double figure) {
  return fixed(figure, 0);
}

// Things with commas of their own, in a row.
std::string in_a_row(const std::vector<std::string>& things) {
  std::string row;
  for (const std::string& thing : things) row += (row.empty() ? "" : "; ") + thing;
  return row;
}

class Drawing {
 public:
  Drawing(const LeafletSheet& sheet, const Paper& paper, const Words& words, const Measure& measure,
          Without without, double gap)
      : sheet_(sheet), words_(words), without_(without), gap_(gap), page_{paper, {}}, pen_(page_, measure) {}

  // How far it runs over its foot; zero or less: it fits.
  double draw() {
    double y = heading();
    y = moments(y);
    int number = 0;
    for (TightRow row : {safe(), test(), clean(), dry(), brush(), unmask(), close()}) {
      row.number = ++number;
      y = tight_row(pen_, y, row) + gap_;
      ++rows_;
    }
    pen_.line(left_edge, y, right_edge, y);
    y += 4.5;
    y += pen_.text(left_edge, y, "<b>" + words_("leaflet_stop") + "</b> " + words_("leaflet_signs"),
                   tight_strong, Side::left, right_edge - left_edge);
    y += pen_.text(left_edge, y, whose(), {tiny, 500}, Side::left, right_edge - left_edge);
    foot(pen_, words_, words_("leaflet") + "   " + sheet_.kind,
         sheet_.id.empty() ? "" : words_("leaflet_id", {sheet_.id}));
    return y - lead(tiny) - pen_.bottom();
  }

  int rows() const { return rows_; }
  Page page() && { return std::move(page_); }

 private:
  bool heated() const { return sheet_.heat != LeafletSheet::Heat::none; }
  bool left_out(Without what) const { return without_ >= what; }

  // Up to ten hours by the minute, then by the hour, from three days on by the day; rounded up.
  std::string at_least(Duration time) const {
    if (time < 10 * hour) return time_taken(time);
    if (time < 72 * hour) return whole(up(time.in(hour))) + thin_space + "h";
    return words_("leaflet_days", {whole(up(time.in(day)))});
  }
  std::string closes() const { return time_taken(down(sheet_.closes.in(minute)) * minute); }

  std::string box() const {
    const auto side = [](Length length) { return whole(up(length.in(centimetre))); };
    return side(sheet_.length) + " × " + side(sheet_.width) + " × " + side(sheet_.height) + thin_space + "cm";
  }

  std::string why() const {
    switch (sheet_.heat) {
      case LeafletSheet::Heat::lamp:
        return words_("leaflet_lamp", {box(), with_unit(down(sheet_.lamp.in(watt)), 0, "W")});
      case LeafletSheet::Heat::sun:
        return words_("leaflet_sun",
                      {box(), with_unit(down(sheet_.black_lid.in(square_metre) * 1e4), 0, "cm²")});
      case LeafletSheet::Heat::none:
        break;
    }
    return words_("leaflet_dry", {box()});
  }

  // Lower than that of other sheets: this one may not have a second page.
  double heading() {
    constexpr Type name{clock_size, 700}, kind{doing, 500}, what{reading, 600, Ink::petrol};
    const double beside = left_edge + pen_.width_of(words_("leaflet_name"), name) + 4;
    const double room = right_edge - pen_.width_of(words_("leaflet"), what) - 4 - beside;
    const bool fits = pen_.width_of(sheet_.kind, kind) <= room;
    pen_.text(right_edge, top_edge + 8, words_("leaflet"), what, Side::right);
    pen_.text(left_edge, top_edge + 8, words_("leaflet_name"), name);
    if (fits) pen_.text(beside, top_edge + 8, sheet_.kind, kind);
    return top_edge + 10.5 +
           pen_.text(left_edge, top_edge + 14, (fits ? "" : "<b>" + sheet_.kind + ".</b> ") + why(),
                     {reading, 400}, Side::left, right_edge - left_edge);
  }

  // The four figures, smaller than on other sheets for the same reason.
  double moments(double y) {
    const std::pair<std::string, std::string> all[] = {
        {words_(sheet_.sunny_days > 0 ? "leaflet_in_sun" : "leaflet_in_box"), at_least(sheet_.safe)},
        {words_(heated() ? "leaflet_never_above" : "leaflet_no_heat"),
         heated() ? degrees(down(sheet_.never_above)) : words_("leaflet_none")},
        {words_("leaflet_coats_done"), closes()},
        {words_("leaflet_close_after"), at_least(sheet_.before_closing)}};
    pen_.line(left_edge, y, right_edge, y, wall_width, Ink::petrol);
    double x = left_edge;
    for (const auto& [label, figure] : all) {
      pen_.text(x, y + 4.8, label, {tiny, 600});
      pen_.text(x, y + 12, figure, {value_size, 700});
      x += 0.25 * (right_edge - left_edge);
    }
    return y + 14.5;
  }

  void list(TightRow& row, const char* sentence, const std::vector<std::string>& things) const {
    if (!things.empty()) row.body.push_back(words_(sentence, {in_a_row(things)}));
  }

  TightRow safe() const {
    TightRow row;
    row.title = words_("leaflet_safe");
    row.warnings = {{Danger::volt, words_("leaflet_dead")}};
    return row;
  }

  TightRow test() const {
    TightRow row;
    row.title = words_("leaflet_test");
    row.body = {words_("leaflet_test_how")};
    row.reading = {"", "MΩ", ""};
    return row;
  }

  TightRow clean() const {
    TightRow row;
    row.title = words_("leaflet_clean");
    row.warnings = {{Danger::any, words_("leaflet_mould")}};
    for (const std::string& hazard : sheet_.hazards) {
      const std::string ours = "leaflet_" + hazard;
      row.warnings.front().words += " " + words_(words_.has(ours) ? ours : "caution_" + hazard);
    }
    list(row, "leaflet_take_out", sheet_.take_out);
    list(row, "leaflet_cover", sheet_.cover);
    if (!left_out(Without::lesser_lists)) list(row, "leaflet_tighten", sheet_.tighten);

    return row;
  }

  TightRow dry() const {
    TightRow row;
    row.title = words_("leaflet_dry_it");
    row.reading = {words_("leaflet_in_at"), ":", ""};
    row.warnings = {{Danger::fire, words_("leaflet_no_wet")}};
    if (sheet_.heat == LeafletSheet::Heat::lamp)
      row.warnings.front().words += " " + words_("leaflet_lamp_burns");
    std::string how = words_("leaflet_gel", {with_unit(up(sheet_.desiccant.in(kilogram), 1), 1, "kg")});
    if (sheet_.damp_inside && !left_out(Without::morning_boxes)) how += " " + words_("leaflet_damp_inside");
    if (sheet_.sunny_days > 0) how += " " + words_("leaflet_sunny", {std::to_string(sheet_.sunny_days)});
    row.body.push_back(how);
    if (heated())
      row.body.push_back(words_("leaflet_over", {whole(down(sheet_.reads_from)), degrees(up(sheet_.reads_to)),
                                                 degrees(down(sheet_.never_above))}));
    row.inside = [this](Pen& pen, double y) { return heat_and_mornings(pen, y); };
    return row;
  }

  Triple limit() const {
    const double value = up(sheet_.reads_to.celsius(), 1), limit = down(sheet_.never_above.celsius(), 1);
    Triple triple;
    triple.value = figure_text(value, 1);
    triple.limit = figure_text(limit, 1);
    triple.spare = figure_text(std::max(0.0, down(limit - value, 1)), 1);
    triple.unit = "°C";
    triple.spare_unit = "K";
    triple.value_words = words_("leaflet_reads_most");
    triple.spare_words = words_("spare");
    triple.limit_words = words_("leaflet_limit", {sheet_.weakest});
    return triple;
  }

  // The limit at the left, a box for every morning at its right.
  double heat_and_mornings(Pen& pen, double y) const {
    const bool boxes = !left_out(Without::morning_boxes);
    const double bar = boxes ? 84 : right_edge - tight_words,
                 from = heated() ? tight_words + bar + 8 : tight_words;
    double end = y;
    if (heated()) end = y + pen.triple(tight_words, y, bar, limit()) - 2;
    const double each = (right_edge - from) / mornings;
    for (int i = 0; boxes && i < mornings; ++i)
      end = std::max(end, y + 0.5 +
                              reading_box(pen, from + i * each, y, each - (i + 1 < mornings ? 2 : 0),
                                          {words_("leaflet_morning", {std::to_string(i + 1)}), "MΩ", ""}));
    return end;
  }

  TightRow brush() const {
    TightRow row;
    row.title = words_("leaflet_brush");
    row.reading = {words_("leaflet_out_at"), ":", ""};
    row.warnings = {
        {Danger::fire, words_("leaflet_no_flame", {with_unit(no_flame_within.in(metre), 1, "m")})},
        {Danger::any, (sheet_.fungicide ? words_("leaflet_poison") + " " : "") + words_("leaflet_solvent")}};
    row.body.push_back(
        "<b>" +
        (sheet_.opens > Duration{} ? words_("leaflet_opens", {time_taken(sheet_.opens), closes()})
                                   : words_("leaflet_at_once", {closes()})) +
        "</b>" +
        (left_out(Without::reasons) ? ""
                                    : " " + words_(sheet_.sweats ? "leaflet_sweats" : "leaflet_damp_back")));
    const std::string usual = jugful(sheet_.needed.typical), worst = jugful(sheet_.needed.high);
    std::string coats = sheet_.coats > 1
                            ? words_("leaflet_coats", {sheet_.lacquer, std::to_string(sheet_.coats),
                                                       time_taken(sheet_.flash), usual, worst})
                            : words_("leaflet_one_coat", {sheet_.lacquer, usual, worst});
    if (sheet_.thinner > Volume{}) coats += " " + words_("leaflet_thinner", {jugful(sheet_.thinner)});
    row.body.push_back(coats);
    if (!left_out(Without::reasons) && sheet_.times_limit > 0)
      row.body.push_back(words_("leaflet_why_brush",
                                {with_unit(down(sheet_.room.in(cubic_metre)), 0, "m³"),
                                 whole(up(sheet_.share_of_limit * 100)), whole(up(sheet_.times_limit))}));
    return row;
  }

  TightRow unmask() const {
    TightRow row;
    row.title = words_("leaflet_unmask");
    row.warnings = {{Danger::fire, words_("leaflet_rags")}};
    row.body = {words_("leaflet_peel", {at_least(sheet_.touch_dry)})};
    if (!left_out(Without::lesser_lists)) list(row, "leaflet_touch_up", sheet_.touch_up);

    return row;
  }

  TightRow close() const {
    TightRow row;
    row.title = words_("leaflet_close", {at_least(sheet_.before_closing), at_least(sheet_.before_use)});
    row.warnings = {{Danger::fire, words_("leaflet_smell")}};
    row.body = {words_("leaflet_again_how")};
    row.reading = {"", "MΩ", ""};
    return row;
  }

  std::string whose() const {
    return words_("leaflet_for", {degrees(std::round(sheet_.air.celsius())),
                                  whole(std::round(sheet_.humidity.percent())) + thin_space + "%"});
  }

  const LeafletSheet& sheet_;
  const Words& words_;
  Without without_;
  double gap_;
  int rows_ = 0;
  Page page_;
  Pen pen_;
};

// The words whoever asked can make shorter.
std::string longest_words(const LeafletSheet& sheet) {
  std::vector<std::string> all = {sheet.kind, sheet.lacquer, sheet.weakest};
  for (const auto* list : {&sheet.take_out, &sheet.cover}) all.push_back(in_a_row(*list));
  return "\"" +
         *std::max_element(all.begin(), all.end(),
                           [](const auto& a, const auto& b) { return a.size() < b.size(); }) +
         "\"";
}

}  // namespace

Result<Page> leaflet(const LeafletSheet& sheet, const Paper& paper, const Words& words,
                     const Measure& measure) {
  double over = 0;
  for (const Without without :
       {Without::nothing, Without::lesser_lists, Without::reasons, Without::morning_boxes}) {
    Drawing trial(sheet, paper, words, measure, without, 0);
    over = trial.draw();
    if (over > 0) continue;
    Drawing drawing(sheet, paper, words, measure, without, std::min(most_gap, -over / trial.rows()));
    drawing.draw();
    return std::move(drawing).page();
  }
  return Problem{
      {"leaflet"},
      format("words that run {} mm over the page; the longest are {}", whole(up(over)), longest_words(sheet)),
      "one page, always: a leaflet is not turned over",
      "Shorter names of parts and lacquer help, or --paper a4, which is longer than letter."};
}

}  // namespace dampward::papers
