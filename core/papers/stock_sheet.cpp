#include "core/papers/stock_sheet.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/papers/figures.h"
#include "core/papers/flow.h"
#include "core/papers/pen.h"
#include "core/papers/step_words.h"

namespace dampward::papers {
namespace {

constexpr Type small{tiny, 500}, small_name{tiny, 600}, strong{reading, 600}, figures{value_size, 600};
constexpr double left_column = 112, date_column = 138, box_column = 168;
constexpr std::size_t most_moments = 4;

// In hundredths of a litre: need goes up, stock down.
double litres_up(Volume volume) {
  return up(volume.in(litre), 2);
}
double litres_down(Volume volume) {
  return down(volume.in(litre), 2);
}
std::string number(double litres) {
  return fixed(litres, 2);
}
std::string told(double litres) {
  return number(litres) + thin_space + "L";
}

class Drawing {
 public:
  Drawing(const StockSheet& sheet, const Words& words) : sheet_(sheet), words_(words) {}

  Pages pages(const Paper& paper, const Measure& measure) {
    Flow flow;
    flow.head = [this](Pen& pen) { return head_and_moments(pen); };
    flow.running = flow.sheet = words_("stock_sheet");
    flow.plan = sheet_.plan;
    flow.notes = words_("notes");
    for (const StockSheet::Item& item : sheet_.items) {
      flow.rows.push_back({[this, &item](Pen& pen, double y) { return item_row(pen, y, item); }, true});
      for (std::size_t i = 0; i < item.lots.size(); ++i)
        flow.rows.push_back(
            {[this, &item, i](Pen& pen, double y) { return lot_row(pen, y, item.lots[i], i); }});
      if (item.lots.empty())
        flow.rows.push_back({[this](Pen& pen, double y) {
          return y + 4 +
                 pen.text(words_column, y + 6, words_("stock_no_lot"), strong, Side::left,
                          right_edge - words_column);
        }});
    }
    return pages_of(flow, paper, words_, measure);
  }

 private:
  std::string day(Instant time) const {
    const Date date(std::chrono::floor<std::chrono::days>(sheet_.clock.local(time)));
    return weekday_name(words_, time, sheet_.clock) + " " + iso_text(date);
  }

  double head_and_moments(Pen& pen) const {
    const double waterline = head(pen, {words_("stock_sheet"), sheet_.shop, words_("stock_name"),
                                        day(sheet_.from), words_("stock_why"), "", "", ""});
    std::vector<Moment> moments;
    for (const StockSheet::Item& item : sheet_.items) {
      if (item.first_use && moments.size() < most_moments)
        moments.push_back({item.name + ", " + weekday_name(words_, *item.first_use, sheet_.clock),
                           clock_of(*item.first_use, sheet_.clock)});
    }
    if (moments.empty()) {
      pen.line(left_edge, waterline, right_edge, waterline, wall_width, Ink::petrol);
      return waterline + 4;
    }
    return waterline + pen.moments(waterline, moments);
  }

  // When it is needed and whether it lasts: a wall where it does, words where it does not.
  double item_row(Pen& pen, double y, const StockSheet::Item& item) const {
    pen.line(left_edge, y + 2, left_edge + 25, y + 2, thick, Ink::petrol);
    pen.line(left_edge + 25, y + 2, right_edge, y + 2);
    if (item.first_use) {
      pen.text(left_edge, y + 10.5, clock_of(*item.first_use, sheet_.clock), {clock_size, 700});
      pen.text(left_edge, y + 16, words_("stock_needed_by"), small_name, Side::left,
               words_column - left_edge - 3);
      const double below = pen.height_of(words_("stock_needed_by"), small_name, words_column - left_edge - 3);
      pen.text(left_edge, y + 16 + below, day(*item.first_use), small_name, Side::left,
               words_column - left_edge - 1);
    }
    double low = y + 10.5;
    const double room = right_edge - words_column;
    low += pen.text(words_column, low, item.name, {doing, 600}, Side::left, room);
    const double most = litres_up(item.needed.high), there = litres_down(item.in_stock),
                 lacks = litres_up(item.to_get);
    if (most <= there) {
      Triple triple;
      triple.value = number(most);
      triple.spare = number(std::max(0.0, down(there - most, 2)));
      triple.limit = number(there);
      triple.unit = triple.spare_unit = "L";
      triple.value_words = words_("stock_at_most");
      triple.spare_words = words_("spare");
      triple.limit_words = words_("stock_there");
      low += pen.triple(words_column, low - 4, 101, triple) - 1;
    } else {
      low +=
          pen.caution(words_column, low + 0.5, room,
                      words_(item.is_short ? "stock_short" : "stock_may_be_short",
                             {told(there), told(litres_up(item.needed.typical)), told(most), told(lacks)}));
      low += pen.text(words_column + 10.5, low + 1.5, words_("stock_get", {told(lacks)}), figures, Side::left,
                      room - 10.5);
    }
    low = std::max(low, y + 27);
    pen.text(words_column, low + 2.5, words_("stock_lots"), small_name, Side::left,
             left_column - words_column - 3);
    pen.text(left_column, low + 2.5, words_("stock_left"), small_name);
    pen.text(date_column, low + 2.5, words_("stock_use_by"), small_name);
    pen.text(box_column, low + 2.5, words_("stock_counted"), small_name);
    return low + 4.5;
  }

  double lot_row(Pen& pen, double y, const StockSheet::Lot& lot, std::size_t place) const {
    pen.line(words_column, y, right_edge, y);
    const double base = y + 8.2, name_room = left_column - words_column - 10;
    if (!lot.expired) pen.text(words_column - 8, base, std::to_string(place + 1), figures);
    const Type named = pen.width_of(lot.lot, figures) < name_room ? figures : strong;
    const double more =
        pen.text(words_column, base, lot.lot, named, Side::left, name_room) - lead(named.points);
    pen.text(left_column, base, figure(number(litres_down(lot.left)), "L"), figures);
    const double after = base + more;
    if (lot.use_by) pen.text(date_column, base, iso_text(*lot.use_by), strong);
    pen.box(box_column, y + 1.4, right_edge - box_column, 8.6, hair);
    pen.line(box_column, y + 10, right_edge, y + 10, 0.4);
    pen.text(right_edge - 1.5, y + 7.4, "L", small, Side::right);
    double end = after + 3;
    if (lot.expired) {
      pen.line(words_column - 2, base - 2, box_column - 3, base - 2, thick);
      end += pen.text(words_column, end + 2.5, words_("stock_expired"), strong, Side::left,
                      right_edge - words_column);
    } else if (!lot.use_by) {
      end += pen.text(words_column, end + 2.5, words_("stock_no_date"), strong, Side::left,
                      right_edge - words_column);
    }
    return std::max(end, y + 11.5);
  }

  const StockSheet& sheet_;
  const Words& words_;
};

}  // namespace

Pages stock_sheet(const StockSheet& sheet, const Paper& paper, const Words& words, const Measure& measure) {
  return Drawing(sheet, words).pages(paper, measure);
}

}  // namespace dampward::papers
