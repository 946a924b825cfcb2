#include "core/papers/pen.h"

#include <algorithm>

namespace dampward::papers {
namespace {

constexpr Type small_name{tiny, 600}, small_text{tiny, 500};

// The name of a sheet stands whole at its head; at the foot, beside the page number, as much of it as fits.
std::string fitting(const Pen& pen, std::string words, const Type& type, double room) {
  if (pen.width_of(words, type) <= room) return words;
  const auto rest_of_letter = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; };
  while (!words.empty() && pen.width_of(words + "…", type) > room) {
    while (rest_of_letter(words.back())) words.pop_back();
    words.pop_back();
  }
  return words + "…";
}

}  // namespace

double lead(double points) {
  if (points <= 10) return 4.5;
  if (points <= 12) return 5.25;
  if (points <= 14) return 6;
  if (points <= 18) return 7.5;
  if (points <= 24) return 9;
  return points <= 32 ? 12 : 21;
}

double lead(const Type& type) {
  return type.pitch > 0 ? type.pitch : lead(type.points);
}

void Pen::line(double x1, double y1, double x2, double y2, double width, Ink ink) {
  stroke({{{x1, y1}, {x2, y2}}, width, ink, false, false, false});
}

void Pen::box(double x, double y, double width, double height, double stroke_width) {
  stroke({{{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}},
          stroke_width,
          Ink::black,
          true,
          false,
          false});
}

void Pen::hatch(double x, double y, double width, double height, double step) {
  page_.marks.emplace_back(Hatch{x, y, width, height, step});
}

double Pen::text(double x, double y, const Runs& all, const Type& type, Side side, double width,
                 double halo) {
  page_.marks.emplace_back(Text{x, y, all, type, side, width, halo});
  return (width > 0 ? measure_.lines(all, type, width) : 1) * lead(type);
}

double Pen::text(double x, double y, const std::string& marked, const Type& type, Side side, double width,
                 double halo) {
  return text(x, y, runs(marked), type, side, width, halo);
}

double Pen::width_of(const std::string& marked, const Type& type) const {
  return measure_.width(runs(marked), type);
}

double Pen::height_of(const std::string& marked, const Type& type, double width) const {
  return measure_.lines(runs(marked), type, width) * lead(type);
}

double Pen::triple(double x, double y, double width, const Triple& t) {
  const double from = x + (t.floor ? 3.5 : 1.5), to = x + width - (t.floor ? 1.5 : 3.5), bar = y + 10;
  line(from, bar, to, bar, 0.6);
  wall(t.floor ? from : to, bar, 5, !t.floor);
  disc(t.floor ? to : from, bar, 1.5);
  const Type figures{value_size, 600};
  const auto& [left, right] = t.floor ? std::pair(t.limit, t.value) : std::pair(t.value, t.limit);
  text(x, y + 6, figure(left, t.unit), figures);
  text(x + width, y + 6, figure(right, t.unit), figures, Side::right);
  text((from + to) / 2, y + 6, figure(t.spare, t.spare_unit), {doing, 700, Ink::petrol}, Side::middle);
  const double below = std::max(
      text(x, y + 16.5, t.floor ? t.limit_words : t.value_words, small_text, Side::left, width * 0.38),
      text(x + width, y + 16.5, t.floor ? t.value_words : t.limit_words, small_text, Side::right,
           width * 0.38));
  text((from + to) / 2, y + 16.5, t.spare_words, {tiny, 600, Ink::petrol}, Side::middle);
  return 14.5 + below;
}

void Pen::wall(double x, double y, double height, bool right) {
  line(x, y - height / 2, x, y + height / 2, wall_width);
  hatch(right ? x : x - 3, y - height / 2, 3, height, 1.2);
}

void Pen::wall_line(double x1, double x2, double y, const std::string& words) {
  hatch(x1, y - 2, x2 - x1, 2, 1.4);
  line(x1, y, x2, y, thick);
  text(x2 + 2, y + 1.2, words, {tiny, 700}, Side::left, 30);
}

double Pen::moments(double y, const std::vector<Moment>& all) {
  const double each = (right() - left_edge) / static_cast<double>(all.size());
  line(left_edge, y, right(), y, wall_width, Ink::petrol);
  double deepest = lead(tiny);
  for (const Moment& moment : all) deepest = std::max(deepest, height_of(moment.label, small_name, each - 3));
  const double low = deepest - lead(tiny);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const double x = left_edge + static_cast<double>(i) * each;
    text(x, y + 5.5, all[i].label, small_name, Side::left, each - 3);
    text(x, y + 14.5 + low, all[i].clock, {clock_size, 700});
  }
  return 18.5 + low;
}

double Pen::caution(double x, double y, double width, const std::string& words, Danger danger) {
  sign(x, y + 2.6, danger);
  return text(x + 10.5, y, words, {reading, 600}, Side::left, width - 10.5);
}

double head(Pen& pen, const Head& h) {
  const Type kind{doing, 600, Ink::petrol}, beside{doing, 500}, name{name_size, 700};
  const double right = pen.right();
  const double room = !h.big.empty() ? 50 : !h.code.empty() ? code_size + 2 : 0;
  pen.text(left_edge, top_edge + 3, h.kind, kind);
  const double after_kind = left_edge + pen.width_of(h.kind, kind) + 4;
  if (after_kind + pen.width_of(h.house, {tiny, 500}) <
      right - std::max(h.code.empty() ? 0 : room, pen.width_of(h.big_words, kind)) - 4)
    pen.text(after_kind, top_edge + 3, h.house, {tiny, 500, Ink::plain});
  const double space = right - left_edge - room;
  const bool fits = pen.width_of(h.name, name) <= space;
  const bool fits_smaller = pen.width_of(h.name, {clock_size, 700}) <= space;
  const Type named = fits ? name : fits_smaller ? Type{clock_size, 700} : Type{value_size, 700};
  // Broken, it pushes what stands below it down.
  const double lower =
      pen.text(left_edge, top_edge + 15, h.name, named, Side::left, fits_smaller ? 0 : space) -
      lead(named.points);
  const double after = left_edge + pen.width_of(h.name, named) + 4;
  std::string why = h.why;
  if (h.beside.empty() || after + pen.width_of(h.beside, beside) < left_edge + space) {
    if (!h.beside.empty()) pen.text(after, top_edge + 15, h.beside, beside);
  } else {
    why = "<b>" + h.beside + ".</b> " + why;
  }
  const double height =
      why.empty() ? 0
                  : pen.text(left_edge, top_edge + 22 + lower, why, {reading, 400}, Side::left, space - 4);
  if (!h.big.empty()) {
    pen.text(right, top_edge + 3, h.big_words, kind, Side::right);
    pen.text(right, top_edge + 22, figure(h.big, h.big_unit), {huge, 700}, Side::right);
  }
  // Its dark squares, not its quiet zone, stand on the margin.
  if (!h.code.empty()) pen.code(right - code_size + 3.5, top_edge - 5, h.code);
  return std::max(top_edge + 31, top_edge + 20.5 + lower + height);
}

void foot(Pen& pen, const Words& words, const std::string& sheet, const std::string& plan, int number,
          int last) {
  const double y = pen.page_height() - 9, right = pen.right();
  pen.line(left_edge, y - 5, right, y - 5);
  const std::string ours =
      (plan.empty() ? "" : plan + "   ") + words("page", {std::to_string(number), std::to_string(last)});
  const double room = right - left_edge - pen.width_of(ours, small_text) - 6;
  pen.text(left_edge, y, fitting(pen, sheet, small_text, room), small_text);
  pen.text(right, y, ours, small_text, Side::right);
  if (!words.checked()) pen.text(right, y + 4.5, words("unchecked"), small_name, Side::right);
}

void notes(Pen& pen, double y, const std::string& word) {
  if (pen.bottom() - y < 14.5) return;
  pen.text(left_edge, y + 5, word, small_name);
  for (double at = y + 12; at < pen.bottom() - 3; at += 8) pen.line(left_edge, at, pen.right(), at);
}

}  // namespace dampward::papers
