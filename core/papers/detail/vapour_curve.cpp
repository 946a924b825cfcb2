#include "core/papers/detail/vapour_curve.h"

#include <algorithm>
#include <cmath>

#include "core/papers/figures.h"
#include "core/papers/step_words.h"

namespace dampward::papers {
namespace {

constexpr Type small{tiny, 500}, small_name{tiny, 600};
constexpr const char* percent = "%";

// "Mon 2027-02-01"
std::string day_of(Instant time, const SafetySheet& sheet, const Words& words) {
  const Date date(std::chrono::floor<std::chrono::days>(sheet.clock.local(time)));
  return weekday_name(words, time, sheet.clock) + " " + iso_text(date);
}

// Where long clean air was left out, the line goes down and up again.
template <class Across, class Down>
void room_line(Pen& pen, const SafetySheet& sheet, const Words& words, const Across& across,
               const Down& down_at) {
  Stroke line{{}, thick, Ink::petrol, false, false, false};
  line.points.emplace_back(across(sheet.curve.front().at), down_at(0));
  for (std::size_t i = 0; i < sheet.curve.size(); ++i) {
    const SafetySheet::Point& point = sheet.curve[i];
    if (i > 0 && point.at - sheet.curve[i - 1].at > std::chrono::minutes(10)) {
      line.points.emplace_back(across(sheet.curve[i - 1].at), down_at(0));
      line.points.emplace_back(across(point.at), down_at(0));
    }
    line.points.emplace_back(across(point.at), down_at(point.share));
  }
  line.points.emplace_back(across(sheet.curve.back().at), down_at(0));
  pen.stroke(std::move(line));
  const auto top = std::max_element(sheet.curve.begin(), sheet.curve.end(),
                                    [](const auto& a, const auto& b) { return a.share < b.share; });
  // Beside its top, on the side where there is room.
  const Type named{tiny, 600, Ink::petrol};
  const std::string name = words("safety_in_room");
  const double peak = across(top->at);
  const bool left = peak - 2 - pen.width_of(name, named) > across(sheet.curve.front().at);
  pen.text(left ? peak - 2 : peak + 2, down_at(top->share) - 0.2, name, named,
           left ? Side::right : Side::left, 0, 0.8);
}

}  // namespace

double vapour_curve(Pen& pen, double y, const SafetySheet& sheet, const Words& words) {
  const SafetySheet::Stretch& worst = sheet.stretches[sheet.worst];
  constexpr double x = left_edge + 15, across_width = 131, height = 54;
  y += 2.5 + pen.text(left_edge, y + 2.5,
                      words("safety_curve", {day_of(sheet.curve.front().at, sheet, words)}), small_name,
                      Side::left, right_edge - left_edge);
  int lowest = -1;
  if (sheet.people && *sheet.people < 0.002) lowest = -2;
  const double tens = 2 - lowest;
  const auto down_at = [&](double share) {
    const double exponent = std::log10(std::max(share * 100, std::pow(10.0, lowest)));
    return y + height * (2 - std::min(exponent, 2.0)) / tens;
  };
  for (int ten = lowest; ten <= 2; ++ten) {
    const double figure = std::pow(10.0, ten), at = down_at(figure / 100);
    pen.line(x, at, x + across_width, at, ten == lowest ? line_width : hair);
    pen.text(x - 1.5, at + 1.3, with_unit(figure, -std::min(ten, 0), percent), small, Side::right);
  }
  const Instant from = std::min(sheet.curve.front().at, worst.fan_on) - std::chrono::minutes(10);
  const Instant to = std::max(sheet.curve.back().at, worst.fan_off) + std::chrono::minutes(10);
  const auto across = [&](Instant time) {
    const double share =
        std::chrono::duration<double>(time - from) / std::chrono::duration<double>(to - from);
    return x + across_width * share;
  };
  const int step = to - from > std::chrono::hours(10) ? 2 : 1;
  const LocalTime first = std::chrono::ceil<std::chrono::hours>(sheet.clock.local(from));
  for (int i = 0; sheet.clock.instant(first + std::chrono::hours(i)) <= to; i += step) {
    const Instant full = sheet.clock.instant(first + std::chrono::hours(i));
    pen.line(across(full), y + height, across(full), y + height + 1.5);
    pen.text(across(full), y + height + 6, clock_of(full, sheet.clock), small, Side::middle);
  }
  pen.wall_line(x, x + across_width, down_at(1), words("safety_wall_burns", {with_unit(100, 0, percent)}));
  pen.wall_line(x, x + across_width, down_at(*sheet.allowed),
                words("safety_wall_fire", {with_unit(down(*sheet.allowed * 100, 1), 1, percent)}));
  if (sheet.people)
    pen.wall_line(x, x + across_width, down_at(*sheet.people),
                  words("safety_wall_people", {with_unit(down(*sheet.people * 100, 2), 2, percent)}));
  room_line(pen, sheet, words, across, down_at);
  for (const SafetySheet::Stretch& stretch : sheet.stretches) {
    if (stretch.clear < from || stretch.fan_on > to) continue;
    pen.line(across(std::max(stretch.fan_on, from)), y + height, across(std::min(stretch.clear, to)),
             y + height, 1.8, Ink::petrol);
  }
  pen.text(across(worst.fan_on) + 1, y + height - 2.2, words("safety_mask_bar"), {tiny, 600, Ink::petrol},
           Side::left, 0, 0.6);
  return y + height + 6.5;
}

}  // namespace dampward::papers
