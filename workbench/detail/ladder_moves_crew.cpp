#include <algorithm>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/shop/crew.h"
#include "workbench/detail/ladder_moves.h"

namespace dampward::workbench::moves {
namespace {

using shop::Cost;

std::string clock(std::chrono::minutes time) {
  return format("{:02}:{:02}", time.count() / 60, time.count() % 60);
}

std::string hours_text(const shop::WeekHours& hours) {
  static constexpr const char* names[] = {"sun", "mon", "tue", "wed", "thu", "fri", "sat"};
  std::vector<std::string> lines;
  for (const auto& [day, spans] : hours.days) {
    for (const auto& span : spans)
      lines.push_back(format("{} {}-{}", names[day], clock(span.from), clock(span.to)));
  }
  return list_of(lines);
}

bool has_skill(const shop::Person& person, const std::string& skill) {
  return std::find(person.skills.begin(), person.skills.end(), skill) != person.skills.end();
}

// "more_1", "more_2" …: a name nobody has yet.
template <class Rows>
std::string free_name(const Rows& rows) {
  for (int number = 1;; ++number) {
    std::string name = format("more_{}", number);
    if (std::none_of(rows.begin(), rows.end(), [&](const auto& row) { return row.id.text == name; }))
      return name;
  }
}

Piece one_more(const shop::Shop& shop, const std::vector<std::string>& skills, const std::string& hours) {
  return {"crew." + free_name(shop.crew), format("{{ skills = {}, shifts = {} }}", list_of(skills), hours)};
}

}  // namespace

std::string quoted(const std::string& text) {
  return "\"" + text + "\"";
}

std::string list_of(const std::vector<std::string>& texts) {
  std::string all;
  for (const std::string& text : texts) all += (all.empty() ? "" : ", ") + quoted(text);
  return "[" + all + "]";
}

void longer_shifts(const shop::Shop& shop, const std::string& skill, Candidates& all) {
  constexpr std::chrono::minutes midnight{24 * 60};
  for (const int hours : {1, 2, 4}) {
    Candidate candidate{"shifts", {}, "", Cost::shift_hour, 0};
    std::vector<std::string> who;
    for (const shop::Person& person : shop.crew) {
      if (!shop::comes_in(person) || (!skill.empty() && !has_skill(person, skill))) continue;
      shop::WeekHours longer = person.shifts;
      for (auto& [day, spans] : longer.days) {
        if (!spans.empty()) spans.back().to = std::min(midnight, spans.back().to + std::chrono::hours(hours));
      }
      candidate.pieces.push_back({format("crew.{}.shifts", person.id.text), hours_text(longer)});
      who.push_back(person.name);
    }
    if (who.empty()) return;
    candidate.amount = static_cast<double>(hours) * static_cast<double>(who.size());
    candidate.words = format("{} h longer every working day for {}", hours, listed(who));
    all.push_back(std::move(candidate));
  }
}

void more_hands(const shop::Shop& shop, const std::string& skill, Candidates& all) {
  constexpr std::size_t most = 2;
  std::size_t taken = 0;
  const shop::Person* first = nullptr;
  for (const shop::Person& person : shop.crew) {
    if (!shop::comes_in(person)) continue;
    if (first == nullptr) first = &person;
    if (has_skill(person, skill) || taken == most) continue;
    ++taken;
    std::vector<std::string> skills = person.skills;
    skills.push_back(skill);
    all.push_back({format("training {} {}", person.id.text, skill),
                   {{format("crew.{}.skills", person.id.text), list_of(skills)}},
                   format("{} learns {}", person.name, skill),
                   Cost::training});
  }
  const std::string hours = first == nullptr ? list_of({"mon-fri 07:00-16:00"}) : hours_text(first->shifts);
  all.push_back(
      {"person " + skill, {one_more(shop, {skill}, hours)}, "one more person for " + skill, Cost::person});
}

void second_of_each(const shop::Shop& shop, Candidates& all) {
  for (const shop::Person& person : shop.crew) {
    if (!shop::comes_in(person)) continue;
    all.push_back({"person like " + person.id.text,
                   {one_more(shop, person.skills, hours_text(person.shifts))},
                   format("one more person who does what {} does", person.name),
                   Cost::person});
  }
}

void more_stations(const shop::Shop& shop, const std::string& skill, Candidates& all) {
  all.push_back({"station " + skill,
                 {{"stations." + free_name(shop.stations), format("{{ serves = {} }}", list_of({skill}))}},
                 "one more place for " + skill,
                 Cost::station});
}

void lifting_aid(const shop::Shop& shop, Candidates& all) {
  const double here = shop.site.lifts.value_or(Mass{}).in(kilogram);
  for (const double takes : {50.0, 100.0, 200.0}) {
    if (takes <= here) continue;
    all.push_back({"lifting aid",
                   {{"site.lifts", quoted(fixed(takes, 0) + " kg")}},
                   format("a lifting aid that takes {} kg", fixed(takes, 0)),
                   Cost::lifting,
                   (takes - here) / 10});
  }
}

void stronger_supply(const shop::Shop& shop, Candidates& all) {
  if (!shop.site.power) return;
  const double here = shop.site.power->gives.in(kilowatt);
  for (const double more : {0.5, 1.0, 2.0, 4.0}) {
    all.push_back({"supply",
                   {{"power.gives", quoted(fixed(here + more, 1) + " kW")}},
                   format("a supply of {} kW instead of {}", fixed(here + more, 1), fixed(here, 1)),
                   Cost::kilowatt,
                   more});
  }
}

void longer_power(const shop::Shop& shop, Candidates& all) {
  constexpr double hours_more = 8;
  Candidate candidate{"power", {}, "power for the ovens day and night", Cost::power_hour, 0};
  for (const shop::Oven& oven : shop.ovens) {
    candidate.pieces.push_back({format("ovens.{}.powered", oven.id.text), "\"always\""});
    candidate.amount += hours_more;
  }
  if (!candidate.pieces.empty()) all.push_back(std::move(candidate));
}

void more_lamps(const shop::Shop& shop, Candidates& all) {
  for (const shop::Oven& oven : shop.ovens) {
    if (!oven.lamps) continue;
    for (const int more : {1, 2}) {
      const int count = oven.lamps->count + more;
      all.push_back({"lamps " + oven.id.text,
                     {{format("ovens.{}.lamps.count", oven.id.text), std::to_string(count)}},
                     format("{} lamps in the {} instead of {}", count, oven.name, oven.lamps->count),
                     Cost::lamp,
                     static_cast<double>(more)});
    }
  }
}

void hotter_settings(const shop::Shop& shop, Candidates& all) {
  for (const shop::Oven& oven : shop.ovens) {
    const std::string hottest = fixed(oven.hottest_setting.celsius() + 10, 0) + " °C";
    all.push_back({"setting " + oven.id.text,
                   {{format("ovens.{}.settings", oven.id.text),
                     list_of({fixed(oven.coldest_setting.celsius(), 0) + " °C", hottest})}},
                   format("a thermostat for the {} that reaches {}", oven.name, hottest),
                   Cost::setting});
  }
}

}  // namespace dampward::workbench::moves
