#include "core/papers/wall_charts.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "adapters/files/messages.h"
#include "adapters/pdf/pdf.h"
#include "core/coating/warm_window.h"
#include "core/moist_air/humid_air.h"
#include "tests/pdf/page_boxes.h"
#include "tests/pdf/printed_scale.h"

using namespace dampward;
using namespace dampward::papers;
using namespace dampward::papers::test;

namespace {

constexpr Temperature celsius(double t) {
  return Temperature::celsius(t);
}

ChartFor delta() {
  return {"Tamarin Delta river-health service, radio workshop",
          "fungicidal phenolic varnish",
          "Tamarin Delta",
          "weather.epw",
          0.97,
          "7C2F"};
}

coating::WindowRules varnish() {
  coating::WindowRules rules;
  rules.hottest = celsius(38);
  rules.dew_margin = 3 * kelvin;
  return rules;
}

DewChartSheet dew_sheet() {
  return {{celsius(15), celsius(40), celsius(10), celsius(35), 101325 * pascal, varnish()},
          celsius(31),
          celsius(28.5),
          delta()};
}

WindowChartSheet window_sheet() {
  WindowChartSheet sheet;
  sheet.chart = {celsius(15), celsius(40), RelativeHumidity::percent(40),
                 celsius(10), varnish(),   12 * minute};
  sheet.quickest = "landing-stage telephone";
  sheet.slower = {{"river-launch radio", 2}, {"clinic base receiver", 3}};
  sheet.example_air = celsius(30);
  sheet.example_humidity = RelativeHumidity::percent(88);
  sheet.coats = 3;
  sheet.flashes = 60 * minute;
  sheet.of = delta();
  return sheet;
}

materials::MoistureDiffusion cotton(double fastest) {
  materials::MoistureDiffusion diffusion;
  const auto square_metres = [](double d) { return Diffusivity::si(d); };
  diffusion.diffusivity.value = {square_metres(3e-10), square_metres(1e-9), square_metres(fastest)};
  diffusion.at = celsius(71);
  diffusion.activation_energy.value = {30 * kilojoule_per_mole, 43 * kilojoule_per_mole,
                                       50 * kilojoule_per_mole};
  return diffusion;
}

BakeChartSheet bake_sheet() {
  BakeChartSheet sheet;
  sheet.chart = {"heater cabinet", celsius(50),      celsius(90),     5 * kelvin, 3 * kelvin,
                 15 * kelvin,      0.5 * millimetre, 10 * millimetre, 0.10,       {cotton(5e-9)}};
  sheet.example_set = celsius(60);
  sheet.example_thickness = 2 * millimetre;
  sheet.of = delta();
  return sheet;
}

LitresChartSheet litres_sheet() {
  LitresChartSheet sheet;
  const auto film = [](double low, double usual, double high) {
    const Length each = litre / square_metre;
    return Range<Length>{low * each, usual * each, high * each};
  };
  sheet.chart.tools = {{"suction cup gun on the foot pump", film(0.6, 1.3, 3.8)},
                       {"25 mm flat brush", film(0.09, 0.12, 0.17)}};
  const auto area = [](double low, double usual, double high) {
    return Range<dampward::Area>{low * square_metre, usual * square_metre, high * square_metre};
  };
  sheet.chart.sets = {{"landing-stage telephone", area(0.19, 0.33, 0.58)},
                      {"river-launch radio", area(0.46, 0.88, 1.59)},
                      {"clinic base receiver", area(0.83, 1.63, 2.74)},
                      {"hospital ward switchboard", area(1.02, 1.95, 3.55)},
                      {"workshop test meter", area(0.07, 0.14, 0.25)}};
  sheet.example_area = 0.5 * square_metre;
  sheet.coats = 3;
  sheet.film = {25 * micrometre, 38 * micrometre, 75 * micrometre};
  sheet.of = delta();
  return sheet;
}

FanChartSheet fan_sheet() {
  FanChartSheet sheet;
  sheet.chart.least_rate = 0.2 * (litre / hour);
  sheet.chart.most_rate = 20 * (litre / hour);
  sheet.chart.fire = 560;
  sheet.chart.breathe = 31000;
  sheet.chart.fan = 45 * cubic_metre_per_minute;
  sheet.example_people = 2;
  sheet.example_rate = 2 * (litre / hour);
  sheet.fire_share = 0.1;
  sheet.mixing = 0.4;
  sheet.warm = celsius(32);
  sheet.of = delta();
  return sheet;
}

const Words& english() {
  static const Words words = files::sheet_words("en").value();
  return words;
}

const Measure& fonts() {
  static const auto measure = pdf::measure();
  return *measure;
}

// What the sentence says before its first figure.
std::string before_the_figure(const std::string& key) {
  const std::string all = english()(key);
  return all.substr(0, all.find('{'));
}

}  // namespace

TEST_CASE(
    "the printed dew point scales, a ruler and a hand half a millimetre off give the model's dew point") {
  const DewChartSheet sheet = dew_sheet();
  for (const Paper& paper : {a4, us_letter}) {
    const Page page = dew_chart(sheet, paper, english(), fonts()).value();
    const auto scales = printed_scales(page);
    REQUIRE(scales.size() == 4);
    const PrintedScale &air = scales[0], &wet = scales[1], &dew = scales[2], &surface = scales[3];
    const double error = told_error(page, before_the_figure("chart_dew_error"));
    CHECK(error < 0.8);
    Hand hand;
    int read = 0;
    double worst = 0;
    for (int i = 0; i < 4000; ++i) {
      const double t = hand.figure(air.low(), air.high()),
                   b = hand.figure(wet.low(), std::min(t, wet.high()));
      if (b > t) continue;
      const double exact = charts::dew_point_of(sheet.chart, celsius(t), celsius(b)).celsius();
      // The model's own answer lies within the scale.
      if (exact < dew.low() + error || exact > dew.high() - error) continue;
      const auto still = dew.read(air.at(t), wet.at(b));
      REQUIRE(still);
      CHECK(std::abs(*still - exact) < 0.05);
      const auto found = dew.read(air.near(t, hand.slip()), wet.near(b, hand.slip()), hand.slip());
      if (!found) continue;
      ++read;
      worst = std::max(worst, std::abs(*found - exact));
    }
    CHECK(read > 500);
    CHECK(worst < error);
    CHECK(worst > 0.2 * error);  // the error told is not told for show
    // The same line named by the coldest surface.
    for (double t = surface.low(); t <= surface.high(); t += 0.7)
      CHECK(std::abs(surface.at(t).y - dew.at(t - 3).y) < 0.15);
  }
}

TEST_CASE("the dew point chart meets published pairs of thermometers") {
  const Page page = dew_chart(dew_sheet(), a4, english(), fonts()).value();
  const auto scales = printed_scales(page);
  const auto read = [&](double dry, double wet) {
    return scales[2].read(scales[0].at(dry), scales[1].at(wet)).value();
  };
  // A fan-blown psychrometer by WMO-No. 8 annex 4.B at 1013.25 hPa (formulas from memory):
  //   e = ew(wet) − 6.53e-4 (1 + 0.000944 wet) p (dry − wet),  ew = 6.112 exp(17.62 t/(243.12 + t)) hPa
  // It holds the psychrometer's coefficient apart from ours, which is thermodynamic: they part by up to 0.15 K here.
  const auto by_wmo = [](double dry, double wet) {
    const double vapour = 6.112 * std::exp(17.62 * wet / (243.12 + wet)) -
                          6.53e-4 * (1 + 0.000944 * wet) * 1013.25 * (dry - wet);
    const double logarithm = std::log(vapour / 6.112);
    return 243.12 * logarithm / (17.62 - logarithm);
  };
  for (const auto& [dry, wet] :
       {std::pair{30.0, 25.0}, {35.0, 28.0}, {25.0, 20.0}, {32.0, 30.0}, {22.0, 18.0}})
    CHECK(std::abs(read(dry, wet) - by_wmo(dry, wet)) < 0.2);
  // US Weather Bureau psychrometric tables, 30 inches of mercury, printed in whole °F (from memory): dry 80, wet 70 give 65;
  // dry 90, wet 80 give 77. Rounding alone is 0.3 K.
  const auto fahrenheit = [](double t) { return Temperature::fahrenheit(t).celsius(); };
  CHECK(std::abs(read(fahrenheit(80), fahrenheit(70)) - fahrenheit(65)) < 0.4);
  CHECK(std::abs(read(fahrenheit(90), fahrenheit(80)) - fahrenheit(77)) < 0.4);
}

TEST_CASE("at another pressure the dew point chart meets the handbook's humidity ratio") {
  // 30 °C with a 25 °C wet bulb at 95461 Pa: W = 0.0192281274 (ASHRAE Fundamentals 2017, as tests of psychrolib quote it, read).
  DewChartSheet sheet = dew_sheet();
  sheet.chart.pressure = 95461 * pascal;
  const auto scales = printed_scales(dew_chart(sheet, a4, english(), fonts()).value());
  const double dew = scales[2].read(scales[0].at(30), scales[1].at(25)).value();
  const double ratio =
      moist_air::humidity_ratio({celsius(dew), RelativeHumidity::fraction(1), sheet.chart.pressure})
          .fraction();
  CHECK(std::abs(ratio / 0.0192281274 - 1) < 0.003);  // 0.05 K, what two ticks part
}

TEST_CASE("the printed window scales give the coldest surface, and never more minutes than the model") {
  for (const Duration cooling : {8 * minute, 12 * minute, 40 * minute}) {
    WindowChartSheet sheet = window_sheet();
    sheet.chart.cooling = cooling;
    for (const Paper& paper : {a4, us_letter}) {
      const Page page = window_chart(sheet, paper, english(), fonts()).value();
      const auto scales = printed_scales(page);
      REQUIRE(scales.size() == 4);
      const PrintedScale &humidity = scales[0], &air = scales[1], &surface = scales[2], &room = scales[3];
      const double error = told_error(page, before_the_figure("chart_window_error"));
      CHECK(error < 0.6);
      // The curves as they stand on the page, each with the name that lies on it; the thick one is where no clock runs.
      struct Curve {
        std::vector<std::pair<double, double>> points;
        std::optional<double> minutes;
        double y_at(double x) const {
          for (std::size_t i = 1; i < points.size(); ++i) {
            if (points[i].first < x) continue;
            const double share = (x - points[i - 1].first) / (points[i].first - points[i - 1].first);
            return points[i - 1].second + share * (points[i].second - points[i - 1].second);
          }
          return points.back().second;
        }
      };
      std::vector<Curve> curves;
      for (const papers::Mark& mark : page.marks) {
        const auto* stroke = std::get_if<Stroke>(&mark);
        if (stroke == nullptr || stroke->points.size() < 20 || stroke->ink != Ink::black) continue;
        Curve curve{stroke->points, {}};
        for (const papers::Mark& other : page.marks) {
          const auto* text = std::get_if<Text>(&other);
          if (text == nullptr || text->type.points != tiny || text->halo <= 0 ||
              !joined(text->runs).ends_with("min"))
            continue;
          if (std::abs(curve.y_at(text->x) - (text->y - 1.3)) < 0.05)
            curve.minutes = std::strtod(joined(text->runs).c_str(), nullptr);
        }
        if (!curve.minutes && stroke->width == line_width) continue;  // too near its neighbour to be named
        curves.push_back(curve);
      }
      REQUIRE(curves.size() >= 3);
      Hand hand;
      int clocks = 0, free = 0;
      double worst = 0;
      for (int i = 0; i < 4000; ++i) {
        const double h = hand.figure(humidity.low(), 100),
                     t = hand.figure(air.low(), std::min(air.high(), room.high()));
        const auto coldest = charts::floor_of(sheet.chart, celsius(t), RelativeHumidity::percent(h));
        const auto found = surface.read(humidity.near(h, hand.slip()), air.near(t, hand.slip()), hand.slip());
        if (!found || *found > surface.high()) continue;
        worst = std::max(worst, std::abs(*found - coldest.celsius()));
        // Level, and above the room's air.
        const double y = surface.at(*found).y + hand.slip(), x = room.at(t).x + hand.slip();
        const auto exact = charts::time_down_to(sheet.chart, coldest, celsius(t));
        for (const Curve& curve : curves) {
          if (curve.points.front().first > x || curve.points.back().first < x || curve.y_at(x) > y) continue;
          if (!curve.minutes) {
            CHECK_FALSE(exact);
            ++free;
          } else if (exact) {
            CHECK(exact->in(minute) >= *curve.minutes);
            ++clocks;
          }
        }
      }
      CHECK(clocks > 100);
      CHECK(free > 100);
      CHECK(worst < error);
      CHECK(worst > 0.2 * error);
    }
  }
}

TEST_CASE("the window's coldest surface is the one a plan would keep") {
  // Air of 31 °C and 86 % has its dew point at 28.4 °C (ASHRAE formulas); three kelvin over it is 31.4 °C.
  const charts::WindowChart chart = window_sheet().chart;
  CHECK(charts::floor_of(chart, celsius(31), RelativeHumidity::percent(86)).celsius() ==
        doctest::Approx(31.4).epsilon(0.002));
  coating::WindowRules cold = varnish();
  cold.coldest = celsius(15);
  charts::WindowChart limited = chart;
  limited.rules = cold;
  CHECK(charts::floor_of(limited, celsius(16), RelativeHumidity::percent(40)) == celsius(15));
}

TEST_CASE("the printed oven scales give the model's hold within the error they tell") {
  for (const Paper& paper : {a4, us_letter}) {
    const BakeChartSheet sheet = bake_sheet();
    const Page page = bake_chart(sheet, paper, english(), fonts()).value();
    const auto scales = printed_scales(page);
    REQUIRE(scales.size() == 4);
    const PrintedScale &limit = scales[0], &set = scales[1], &hold = scales[2], &thickness = scales[3];
    const double error = told_error(page, before_the_figure("chart_bake_error")) / 100;
    CHECK(error < 0.12);
    Hand hand;
    int read = 0;
    double worst = 0;
    for (int i = 0; i < 3000; ++i) {
      const double t = hand.figure(set.low(), set.high());
      const double l = std::exp(hand.figure(std::log(thickness.low()), std::log(thickness.high())));
      const double exact = charts::hold_of(sheet.chart, celsius(t), l * millimetre).in(hour);
      const auto found = hold.read(set.near(t, hand.slip()), thickness.near(l, hand.slip()), hand.slip());
      if (!found) continue;
      ++read;
      worst = std::max(worst, std::abs(*found / exact - 1));
    }
    CHECK(read > 2000);
    CHECK(worst < error);
    CHECK(worst > 0.2 * error);
    // A limit stands where its set point does: 5 K of the oven's own, 15 K of margin.
    for (double t = limit.low(); t <= limit.high(); t += 1.3)
      CHECK(std::abs(limit.at(t).y - set.at(t - 20).y) < 0.1);
  }
}

TEST_CASE(
    "twice the thickness takes four times as long, and a sheet open on one side as much as one twice as "
    "thick") {
  const charts::BakeChart chart = bake_sheet().chart;
  const Duration thin = charts::hold_of(chart, celsius(60), 2 * millimetre);
  CHECK(charts::hold_of(chart, celsius(60), 4 * millimetre).in(hour) == doctest::Approx(4 * thin.in(hour)));
  CHECK(drying::path_length(equipment::Shape::plate, 2 * millimetre, 1).in(millimetre) ==
        doctest::Approx(drying::path_length(equipment::Shape::plate, 4 * millimetre, 2).in(millimetre)));
  // Crank: 10 % of the moisture is left in a plate at D t/l² = 0.848 with l half its thickness ([Crank1975] eq. 4.18 from memory, first
  // term: 4/π² ln(0.8106/0.1)). D of the safe side at 57 °C, by the same Arrhenius law as in the table.
  const double diffusivity =
      drying::effective_diffusivity(
          {equipment::Shape::plate, 1 * millimetre, cotton(5e-9), materials::Isotherm::none, {}, 1, {}},
          celsius(57), drying::Side::safe)
          .si();
  CHECK(thin.in(second) == doctest::Approx(0.848 * 1e-6 / diffusivity).epsilon(0.002));
}

TEST_CASE("the printed litres scales give area times litres for each square metre") {
  const LitresChartSheet sheet = litres_sheet();
  for (const Paper& paper : {a4, us_letter}) {
    const Page page = litres_chart(sheet, paper, english(), fonts()).value();
    const auto scales = printed_scales(page);
    REQUIRE(scales.size() == 3);
    const double error = told_error(page, before_the_figure("chart_litres_error")) / 100;
    CHECK(error < 0.15);
    Hand hand;
    double worst = 0;
    for (int i = 0; i < 3000; ++i) {
      const auto pick = [&](const PrintedScale& scale) {
        return std::exp(hand.figure(std::log(scale.low()), std::log(scale.high())));
      };
      const double area = pick(scales[0]), each = pick(scales[2]);
      const auto found =
          scales[1].read(scales[0].near(area, hand.slip()), scales[2].near(each, hand.slip()), hand.slip());
      if (found) worst = std::max(worst, std::abs(*found / (area * each) - 1));
    }
    CHECK(worst < error);
    CHECK(worst > 0.2 * error);
    // Each gun's bar runs from what it usually takes to the worst, on the height of the scale.
    for (const auto& tool : sheet.chart.tools) {
      const double usual = scales[2].at(tool.on_the_surface.typical.in(litre / square_metre)).y;
      const double most = scales[2].at(tool.on_the_surface.high.in(litre / square_metre)).y;
      const bool there = std::any_of(page.marks.begin(), page.marks.end(), [&](const papers::Mark& mark) {
        const auto* stroke = std::get_if<Stroke>(&mark);
        return stroke != nullptr && stroke->points.size() == 2 && stroke->points[0].first > scales[2].x() &&
               std::abs(stroke->points[0].second - usual) < 0.1 &&
               std::abs(stroke->points[1].second - most) < 0.1;
      });
      CHECK(there);
    }
  }
}

TEST_CASE("the printed fan scales give fresh air against fire and to breathe") {
  const FanChartSheet sheet = fan_sheet();
  for (const Paper& paper : {a4, us_letter}) {
    const Page page = fan_chart(sheet, paper, english(), fonts()).value();
    const auto scales = printed_scales(page);
    REQUIRE(scales.size() == 4);
    const PrintedScale &people = scales[0], &fire = scales[1], &breathe = scales[2], &rate = scales[3];
    const double error = told_error(page, before_the_figure("chart_fan_error")) / 100;
    CHECK(error < 0.15);
    Hand hand;
    double worst = 0;
    for (int i = 0; i < 3000; ++i) {
      const double n = std::floor(hand.figure(1, 12.99));
      const double r = std::exp(hand.figure(std::log(rate.low()), std::log(rate.high())));
      const charts::Place one = people.near(n, hand.slip()), two = rate.near(r, hand.slip());
      const double slip = hand.slip();
      const auto used = n * r * (litre / hour);
      if (const auto found = fire.read(one, two, slip))
        worst = std::max(worst, std::abs(*found / (560 * used).in(cubic_metre_per_minute)-1));
      if (const auto found = breathe.read(one, two, slip))
        worst = std::max(worst, std::abs(*found / (31000 * used).in(cubic_metre_per_minute)-1));
    }
    CHECK(worst < error);
    CHECK(worst > 0.2 * error);
  }
}

TEST_CASE(
    "nothing on a wall chart lies over anything else or off the page, in four languages on both papers") {
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    for (const Paper& paper : {a4, us_letter}) {
      INFO(language << " " << paper.width);
      for (const auto& page :
           {bake_chart(bake_sheet(), paper, words, fonts()),
            window_chart(window_sheet(), paper, words, fonts()),
            litres_chart(litres_sheet(), paper, words, fonts()),
            fan_chart(fan_sheet(), paper, words, fonts()), dew_chart(dew_sheet(), paper, words, fonts())}) {
        if (!page) FAIL(to_text(page.problems().front()));
        check_page(*page, fonts());
      }
    }
  }
}

TEST_CASE("every wall chart holds its example, both walls and what wet lacquer forbids") {
  const std::string never = english()("chart_never_wet");
  for (const auto& page :
       {bake_chart(bake_sheet(), a4, english(), fonts()),
        window_chart(window_sheet(), a4, english(), fonts()),
        litres_chart(litres_sheet(), a4, english(), fonts()), fan_chart(fan_sheet(), a4, english(), fonts()),
        dew_chart(dew_sheet(), a4, english(), fonts())}) {
    REQUIRE(page);
    std::string all;
    int hatches = 0, petrol_dots = 0;
    for (const papers::Mark& mark : page->marks) {
      if (const auto* text = std::get_if<Text>(&mark)) all += joined(text->runs) + "\n";
      hatches += std::holds_alternative<Hatch>(mark) ? 1 : 0;
      const auto* disc = std::get_if<Disc>(&mark);
      petrol_dots += disc != nullptr && disc->ink == Ink::petrol ? 1 : 0;
    }
    CHECK(all.find(never) != std::string::npos);
    CHECK(all.find("Example: ") != std::string::npos);
    CHECK(all.find("fungicidal phenolic varnish") != std::string::npos);
    CHECK(all.find("weather.epw") != std::string::npos);
    CHECK(hatches >= 2);
    CHECK(petrol_dots >= 3);
  }
}

TEST_CASE("words too long for one page are refused, and the chart says which") {
  LitresChartSheet sheet = litres_sheet();
  sheet.chart.tools[0].name =
      "suction cup gun on the foot pump that somebody built out of a bicycle, two tyres and a barrel";
  auto page = litres_chart(sheet, us_letter, english(), fonts());
  REQUIRE_FALSE(page);
  CHECK(to_text(page.problems().front()).find("bicycle") != std::string::npos);

  DewChartSheet long_names = dew_sheet();
  for (int i = 0; i < 40; ++i) long_names.of.lacquer += " fungicidal phenolic varnish of the second delivery";
  page = dew_chart(long_names, a4, english(), fonts());
  REQUIRE_FALSE(page);
  CHECK(to_text(page.problems().front()).find("second delivery") != std::string::npos);
  CHECK(to_text(page.problems().front()).find("one page") != std::string::npos);
}
