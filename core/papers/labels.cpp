#include "core/papers/labels.h"

#include <algorithm>
#include <cctype>
#include <initializer_list>

#include "core/papers/flow.h"
#include "core/papers/parts.h"
#include "core/papers/step_words.h"

namespace dampward::papers {
namespace {

constexpr double whole = right_edge - left_edge, inset = 3, least_height = 60, most_height = 80;
constexpr Type small_name{tiny, 600}, title{tiny, 600, Ink::petrol}, read{reading, 400}, firm{reading, 600};
constexpr const char* no_break = "\u00a0";

// The largest of the sizes at which the words stand in one line; else the last, for a text that is broken.
struct Fit {
  Type type;
  bool one_line = false;
};
Fit fitted(const Pen& pen, const std::string& words, double room, std::initializer_list<double> sizes) {
  for (const double size : sizes) {
    if (pen.width_of(words, {size, 700}) <= room) return {{size, 700}, true};
  }
  return {{*(sizes.end() - 1), 700}, false};
}

// Empty where the serial is too long for a code that outlives a copier.
std::string code_of(const std::string& serial, const std::string& what) {
  std::string text = "DAMPWARD " + serial + " " + what;
  std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return std::toupper(c); });
  return text.size() <= longest_code ? text : "";
}

// Where one label or tag is drawn, its edges left out.
struct Place {
  double x, y, width;
  double beside_code() const { return width - code_size; }
  double code_x() const { return x + width - code_size + 3; }
};
// Gives where it ends.
using Cell = std::function<double(Pen&, const Place&)>;

class Drawing {
 public:
  Drawing(const LabelSet& set, const Words& words) : set_(set), words_(words) {}

  Flow flow(const Paper& paper, const Measure& measure) const {
    Flow flow;
    flow.running = words_("labels_cut");
    flow.sheet = words_("labels_sheet") + "   " + set_.shop;
    flow.plan = set_.plan;
    Page scratch{paper, {}};
    Pen pen(scratch, measure);
    std::vector<Cell> row;
    const auto end_row = [&](double width) {
      if (!row.empty())
        flow.rows.push_back({[row, width](Pen& to, double y) { return beside(to, y, row, width); }});
      row.clear();
    };
    for (Cell& cell : cells()) {
      // Long words take the whole width.
      const bool wide = beside(pen, 0, {cell}, whole / 2) > most_height;
      if (wide) end_row(whole / 2);
      row.push_back(std::move(cell));
      if (wide || row.size() == 2) end_row(wide ? whole : whole / 2);
    }
    end_row(whole / 2);
    return flow;
  }

 private:
  std::vector<Cell> cells() const {
    std::vector<Cell> all;
    for (const LabelSet::Unit& unit : set_.units) {
      all.emplace_back([this, &unit](Pen& pen, const Place& at) { return label(pen, at, unit); });
      for (std::size_t i = 0; i < unit.bags.size(); ++i)
        all.emplace_back([this, &unit, i](Pen& pen, const Place& at) { return tag(pen, at, unit, i); });
    }
    return all;
  }

  // Of one height, each in its share of the width.
  static double beside(Pen& pen, double y, const std::vector<Cell>& row, double width) {
    double end = y + least_height;
    for (std::size_t i = 0; i < row.size(); ++i)
      end = std::max(end,
                     row[i](pen, {left_edge + static_cast<double>(i) * width + inset, y, width - 2 * inset}));
    const double right = left_edge + static_cast<double>(row.size()) * width;
    for (const double at : {y, end}) cut(pen, left_edge, at, right, at);
    for (double at = left_edge; at < right + 1; at += width) cut(pen, at, y, at, end);
    return end;
  }

  static void cut(Pen& pen, double x1, double y1, double x2, double y2) {
    pen.stroke({{{x1, y1}, {x2, y2}}, line_width, Ink::black, false, true, false});
  }

  // A serial beside the code where it fits, else below it over the whole width. Gives where it ends.
  static double serial(Pen& pen, const Place& place, const std::string& words, bool code) {
    const auto& [x, y, inner] = place;
    const Fit fit =
        fitted(pen, words, code ? place.beside_code() : inner, {name_size, clock_size, value_size});
    if (fit.one_line) {
      pen.text(x, y + 17, words, fit.type);
      return y + 17;
    }
    const double top = code ? y + 36 : y + 14;
    return top + pen.text(x, top, words, fit.type, Side::left, inner) - lead(value_size);
  }

  double label(Pen& pen, const Place& place, const LabelSet::Unit& unit) const {
    const auto& [x, y, inner] = place;
    const std::string code = code_of(unit.serial, "LABEL");
    pen.text(x, y + 6, words_("label_treated"), title, Side::left,
             code.empty() ? inner : place.beside_code());
    if (!code.empty()) pen.code(place.code_x(), y + 0.5, code);
    double at = serial(pen, place, unit.serial, !code.empty()) + 4;
    const bool below = at > y + 30 || code.empty();
    const double room = below ? inner : place.beside_code();
    pen.line(x, at, x + room, at, wall_width, Ink::petrol);
    at += 5.5;
    at += pen.text(x, at, unit.kind, firm, Side::left, room);
    at += pen.text(x, at, way(unit), read, Side::left, room);
    if (!below) at = std::max(at, y + 34);
    at += pen.text(x, at, lots(unit), read, Side::left, inner);
    return dates(pen, x, std::max(at - 3.5, y + least_height - 16.5), unit);
  }

  std::string way(const LabelSet::Unit& unit) const {
    const std::string way = unit.sprayed ? "label_sprayed" : "label_brushed";
    return unit.coats == 1 ? words_(way + "_once") : words_(way, {std::to_string(unit.coats)});
  }

  // A line each; what nobody can tell yet is left to the pencil.
  std::string lots(const LabelSet::Unit& unit) const {
    const auto line = [this](const std::string& item, const std::string& lot) {
      std::string words = words_("lot", {lot});
      for (std::size_t at = words.find(' '); at != std::string::npos; at = words.find(' ', at))
        words.replace(at, 1, no_break);
      return item + ", <b>" + words + "</b>";
    };
    std::string all;
    for (const LabelSet::Lot& lot : unit.lots) all += (all.empty() ? "" : "\n") + line(lot.item, lot.lot);
    if (unit.lots.empty() || unit.lot_unknown)
      all += (all.empty() ? "" : "\n") + line(unit.lacquer, "______________");
    return all;
  }

  // Planned date, and boxes for what was and for when next; gives where the label ends.
  double dates(Pen& pen, double x, double y, const LabelSet::Unit& unit) const {
    const Date day(std::chrono::floor<std::chrono::days>(set_.clock.local(unit.lacquered)));
    const double width = 26, pitch = 28.5;
    const std::string names[] = {words_("label_planned"), words_("label_lacquered"), words_("label_next")};
    double lines = 0;
    for (const std::string& name : names) lines = std::max(lines, pen.height_of(name, small_name, width));
    for (int i = 0; i < 3; ++i) pen.text(x + i * pitch, y + 3, names[i], small_name, Side::left, width);
    const double top = y + lines - 0.5;
    pen.text(x, top + 6.2, iso_text(day), {reading, 700});
    for (int i = 1; i < 3; ++i) {
      pen.box(x + i * pitch, top, width, 8.6, hair);
      pen.line(x + i * pitch, top + 8.6, x + i * pitch + width, top + 8.6, 0.4);
    }
    return top + 8.6 + 2.5;
  }

  double tag(Pen& pen, const Place& place, const LabelSet::Unit& unit, std::size_t i) const {
    const auto& [x, y, inner] = place;
    const LabelSet::Bag& bag = unit.bags[i];
    const std::string number = std::to_string(i + 1), code = code_of(unit.serial, "BAG " + number);
    pen.disc(x + 2.5, y + 4.5, 2.5);  // to punch for a string
    pen.disc(x + 2.5, y + 4.5, 2.1, Ink::white);
    pen.text(x + 8, y + 5.5, words_("tag_bag"), title);
    const Fit fit = fitted(pen, unit.serial, inner, {huge, name_size, clock_size, value_size});
    const double first = y + (fit.type.points > name_size ? 23.5 : 18);
    double at = first + pen.text(x, first, unit.serial, fit.type, Side::left, fit.one_line ? 0 : inner) -
                lead(fit.type.points) + 3.5;
    pen.line(x, at, x + inner, at, wall_width, Ink::petrol);
    if (!code.empty()) pen.code(place.code_x(), at + 0.5, code);
    const double after_code = code.empty() ? at : at + code_size;
    const double room = code.empty() ? inner : place.beside_code();
    at += 7;
    at += pen.text(x, at, words_("tag_number", {number, std::to_string(unit.bags.size())}), {value_size, 700},
                   Side::left, room) -
          1.5;
    at += pen.text(x, at, content(bag), read, Side::left, room) + 0.5;
    std::string back = words_("tag_back", {weekday_name(words_, unit.goes_back, set_.clock) + " " +
                                           clock_of(unit.goes_back, set_.clock)});
    if (!unit.back_where.empty()) back += ", " + unit.back_where;
    at += pen.text(x, at, back, firm, Side::left, room) - 3;
    pen.box(x, at, tick_side, tick_side, 0.4);
    pen.text(x + 10, at + 5.6, words_("tag_yes"), firm);
    pen.box(x + 26, at, tick_side, tick_side, 0.4);
    pen.text(x + 36, at + 5.6, words_("tag_no"), firm);
    return std::max(at + tick_side + 2, after_code + 1);
  }

  std::string content(const LabelSet::Bag& bag) const {
    if (bag.content.empty()) return words_("tag_screws");
    return bag.count > 1 ? std::to_string(bag.count) + " × " + bag.content : bag.content;
  }

  const LabelSet& set_;
  const Words& words_;
};

}  // namespace

Pages labels(const LabelSet& set, const Paper& paper, const Words& words, const Measure& measure) {
  const Drawing drawing(set, words);
  return pages_of(drawing.flow(paper, measure), paper, words, measure);
}

}  // namespace dampward::papers
