#include <algorithm>
#include <cmath>

#include "core/papers/detail/chart_page.h"

namespace dampward::papers {
namespace {

// For a measuring jug, upwards: running short in mid-coat is worse than a spoonful left.
struct Jug {
  double amount;
  const char* unit;
};
Jug jug(Volume volume) {
  if (volume < 0.1 * litre) return {std::ceil(volume.in(millilitre)-1e-6), "mL"};
  return {up_to(volume.in(litre), 0.01), "L"};
}

std::string micrometres(Length film, bool upwards) {
  const double size = film.in(micrometre);
  return with_unit(upwards ? up_to(size, 1) : down_to(size, 1), "µm");
}

Volume usual(const LitresChartSheet& sheet) {
  return sheet.example_area * sheet.chart.tools[sheet.example_tool].on_the_surface.typical;
}

// How much larger than usual a named set may be.
double largest_over_usual(const charts::LitresChart& chart) {
  double largest = 1;
  for (const charts::LitresChart::Set& set : chart.sets)
    largest = std::max(largest, set.area.high / set.area.typical);
  return largest;
}

ChartWords told(const LitresChartSheet& sheet, const Words& words, double misread) {
  const Jug mix = jug(usual(sheet));
  ChartWords told;
  told.name = words("chart_litres");
  told.how = words("chart_litres_how");
  told.example = words("chart_litres_example",
                       {with_unit(sheet.example_area.in(square_metre), "m²"),
                        sheet.chart.tools[sheet.example_tool].name, with_unit(mix.amount, mix.unit)});
  told.zones = {
      {{words("chart_litres_thin"), words("chart_litres_thin_when", {micrometres(sheet.film.low, true)})},
       {words("chart_litres_right"),
        words("chart_litres_right_when", {micrometres(sheet.film.low, true),
                                          micrometres(sheet.film.high, false), figure_text(sheet.coats)})},
       {words("chart_litres_thick"),
        words("chart_litres_thick_when", {micrometres(sheet.film.high, false)})}}};
  told.notes = {words("chart_litres_dots")};
  told.error = words("chart_litres_error", {figure_text(up_to(100 * misread, 1)),
                                            figure_text(up_to(largest_over_usual(sheet.chart), 0.1))});
  return told;
}

charts::Frame frame_in(const charts::Frame& all) {
  return {78, all.top + 25, 60, all.height - 30};
}

// A name beside a scale at its usual figure; a bar up to the worst, where that is higher.
struct Named {
  std::string name;
  double usual, worst;
};

// The nearest places to those wished, rising up the page and nowhere closer than `pitch`: neighbours that would touch share their
// middle. Rising figures stand higher.
std::vector<double> spread_out(const std::vector<double>& wished, double pitch) {
  struct Crowd {
    double sum;  // of the places its first would take
    std::size_t count;
    double first() const { return sum / static_cast<double>(count); }
  };
  std::vector<Crowd> crowds;
  for (std::size_t i = 0; i < wished.size(); ++i) {
    crowds.push_back({wished[i], 1});
    while (crowds.size() > 1) {
      Crowd &below = crowds[crowds.size() - 2], &above = crowds.back();
      const double next = below.first() - pitch * static_cast<double>(below.count);
      if (above.first() <= next) break;
      below.sum += above.sum + pitch * static_cast<double>(below.count * above.count);
      below.count += above.count;
      crowds.pop_back();
    }
  }
  std::vector<double> places;
  for (const Crowd& crowd : crowds) {
    for (std::size_t k = 0; k < crowd.count; ++k)
      places.push_back(crowd.first() - pitch * static_cast<double>(k));
  }
  return places;
}

void names(ChartPage& page, const charts::Scale& scale, std::vector<Named> all, bool left, double width) {
  constexpr Type type{tiny, 600};
  std::sort(all.begin(), all.end(), [](const Named& a, const Named& b) { return a.usual < b.usual; });
  double tallest = lead(tiny);
  std::vector<double> wished;
  for (const Named& one : all) {
    tallest = std::max(tallest, page.pen().height_of(one.name, type, width));
    wished.push_back(scale.at(one.usual).y);
  }
  const std::vector<double> places = spread_out(wished, tallest + 0.8);
  const double way = left ? -1 : 1, lane = scale.at(scale.low()).x + way * 16;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const double usual = scale.at(all[i].usual).y, worst = scale.at(all[i].worst).y;
    page.pen().disc(lane, usual, 1);
    if (worst < usual) page.pen().line(lane, usual, lane, worst, thick);
    page.pen().line(lane, usual, lane + way * 5, places[i]);
    const double height = page.pen().height_of(all[i].name, type, width);
    page.label(lane + way * 6, places[i] + 1.2 - 0.5 * (height - lead(tiny)), all[i].name, type,
               left ? Side::right : Side::left, width, 3);
  }
}

}  // namespace

Result<Page> litres_chart(const LitresChartSheet& sheet, const Paper& paper, const Words& words,
                          const Measure& measure) {
  const charts::LitresChart& chart = sheet.chart;
  charts::Frame frame;
  {
    ChartPage trial(paper, words, measure);
    frame = frame_in(trial.lay(told(sheet, words, 0.1), sheet.of));
  }
  if (frame.height < 60) frame.height = 60;
  const charts::LitresScales scales = charts::placed(chart, frame);
  ChartPage page(paper, words, measure);
  const charts::Frame all =
      page.lay(told(sheet, words, charts::worst_misreading(scales.ruler()).share), sheet.of);

  const double mix_x = scales.mix.scale.at(scales.mix.scale.low()).x;
  page.title(frame.left - 3, all.top + 6.5, 15, words("chart_litres_area"));
  page.title(mix_x, all.top + 6.5, 12, words("chart_litres_mix"));
  page.title(frame.right(), all.top + 6.5, 18, words("chart_litres_each"));
  const Length on_the_surface = chart.tools[sheet.example_tool].on_the_surface.typical;
  page.ruler(scales.ruler(), sheet.example_area.in(square_metre),
             charts::in_litres_on_a_square_metre.figure(on_the_surface));
  page.scale(scales.area.scale, ChartPage::On::left);
  page.scale(scales.mix.scale, ChartPage::On::left);
  page.scale(scales.on_the_surface.scale, ChartPage::On::right);
  std::vector<Named> sets, tools;
  for (const auto& set : chart.sets)
    sets.push_back({set.name, charts::in_square_metres.figure(set.area.typical),
                    charts::in_square_metres.figure(set.area.typical)});
  for (const auto& tool : chart.tools)
    tools.push_back({tool.name, charts::in_litres_on_a_square_metre.figure(tool.on_the_surface.typical),
                     charts::in_litres_on_a_square_metre.figure(tool.on_the_surface.high)});
  names(page, scales.area.scale, sets, true, frame.left - 22 - left_edge);
  names(page, scales.on_the_surface.scale, tools, false, right_edge - frame.right() - 22);

  const Jug mix = jug(usual(sheet));
  const double y = scales.mix.at(usual(sheet)).y;
  const bool falls = scales.on_the_surface.at(on_the_surface).y > scales.area.at(sheet.example_area).y;
  page.answer(mix_x + 3, y + (falls ? -3 : 9), figure_text(mix.amount), mix.unit, Side::left);
  return std::move(page).done();
}

}  // namespace dampward::papers
