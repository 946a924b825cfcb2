#include "shops.h"

#include <algorithm>
#include <map>
#include <optional>

namespace dampward::line::test {
namespace {

using Random = std::mt19937;

int between(Random& random, int low, int high) {
  return low + static_cast<int>(random() % static_cast<std::uint32_t>(high - low + 1));
}

Calendar repeated(const Calendar& day, Minute length, int days) {
  Calendar all;
  for (int d = 0; d < days; ++d) {
    for (const Span& span : day) all.push_back({span.from + d * length, span.to + d * length});
  }
  return all;
}

// Builds the planted plan, writing the problem around it.
class Planter {
 public:
  Planter(std::uint32_t seed, Window window) : random_(seed), window_(window) {}

  Problem grow() {
    crew();
    const int units = between(random_, 1, 6);
    for (int u = 0; u < units; ++u)
      problem_.units.push_back({"u" + std::to_string(u), std::nullopt, 0, 1, {}});
    for (int u = 0; u < units;) {
      const int together = std::min(units - u, between(random_, 1, 3));
      load(u, together);
      u += together;
    }
    problem_.capacities.push_back({"vapour", {{0, std::max<std::int64_t>(peak(), 1)}}});
    repeat();
    return problem_;
  }

 private:
  static constexpr Minute day = 600, shift_end = 480;

  void crew() {
    const int people = between(random_, 1, 3);
    const std::vector<std::string> skills{"bench", "oven", "spray"};
    for (int p = 0; p < people; ++p) {
      Person person{"p" + std::to_string(p), {}, {{0, shift_end}}, {{240, 260}}};
      for (const std::string& skill : skills) {
        if (p == 0 || between(random_, 0, 1)) person.skills.push_back(skill);
      }
      problem_.people.push_back(person);
    }
    problem_.stations = {{"booth", between(random_, 1, 2), {"spray"}},
                         {"bench", between(random_, 1, 3), {"bench"}}};
    const bool near = window_ == Window::beside_oven;
    problem_.ovens = {{"o0", {{0, 520}}, near, near ? between(random_, 0, 30) : 0, 100 * litre, {}}};
    if (near && between(random_, 0, 1))  // far from the booth, and mostly too small
      problem_.ovens.push_back({"o1", {{0, 520}}, false, 0, 60 * litre, {}});
    if (near) clears_ = between(random_, 0, 60);
  }

  struct Put {
    std::string id, person, station;
    Minute start, end;
    std::int64_t vapour;
  };

  bool free(const std::string& person, Minute from, Minute to) const {
    if (from < 0 || to > shift_end || (from < 260 && to > 240)) return false;
    return std::none_of(put_.begin(), put_.end(),
                        [&](const Put& p) { return p.person == person && p.start < to && from < p.end; });
  }

  bool room(const Station& station, Minute from, Minute to) const {
    // Pessimistic: all that touch the span count at once.
    return std::count_if(put_.begin(), put_.end(), [&](const Put& p) {
             return p.station == station.id && p.start < to && from < p.end;
           }) < station.places;
  }

  // The first minute at or after `from` where somebody and the station are free.
  std::optional<Put> seat(const std::string& id, const std::string& skill, const Station* station,
                          Minute from, Minute length) const {
    for (Minute start = from; start + length <= shift_end; ++start) {
      if (station && !room(*station, start, start + length)) continue;
      for (const Person& person : problem_.people) {
        const bool can = std::find(person.skills.begin(), person.skills.end(), skill) != person.skills.end();
        if (can && free(person.id, start, start + length)) {
          return Put{id, person.id, station ? station->id : "", start, start + length, 0};
        }
      }
    }
    return std::nullopt;
  }

  void gap(const std::string& name, const Put& from, const Put& to, bool bounded) {
    const Minute wait = to.start - from.end;
    Gap gap{name, from.id, to.id, between(random_, 0, static_cast<int>(wait)), std::nullopt};
    if (bounded)
      gap.longest = wait + between(random_, 0,
                                   window_ == Window::tight ? std::max(0, 19 - static_cast<int>(wait)) : 40);
    gaps_.push_back(gap);
  }

  // One load of units that leave one after the other, each to its coats. Units that find no seat that day are left out
  // of the load, and so of the problem's plan; each load begins a day of its own, folded onto the same day.
  void load(int first, int count) {
    put_.clear();
    const std::string id = "load" + std::to_string(first);
    Load made{id, {}, id + ".bake", {}, Temperature::celsius(70)};
    for (const Oven& oven : problem_.ovens) made.ovens.push_back(oven.id);
    std::vector<Put> mine;
    Minute filled = 0;
    std::vector<Put> loadings;
    for (int u = first; u < first + count; ++u) {
      const auto put =
          seat("u" + std::to_string(u) + ".load", "oven", nullptr, filled, between(random_, 2, 8));
      if (!put) return;
      put_.push_back(*put);
      loadings.push_back(*put);
      filled = put->end;
    }
    const Minute hold = between(random_, 30, 120);
    const Put bake{made.bake, "", "", filled, filled + hold, 0};
    std::vector<Operation> operations;
    operations.push_back(operation(bake, "", Attendance::watched, "oven"));
    gaps_.clear();
    std::vector<Put> unloadings;
    Minute last = bake.end, cold = 0;
    const auto unload = [&](const std::string& unit) {
      const auto out = seat(unit + ".unload", "oven", nullptr, last, between(random_, 2, 6));
      if (!out) return false;
      put_.push_back(*out);
      unloadings.push_back(*out);
      last = out->end;
      return true;
    };
    // Beside the oven, nobody coats before the last unit is out and the oven cold.
    if (window_ == Window::beside_oven) {
      for (int u = first; u < first + count; ++u) {
        if (!unload("u" + std::to_string(u))) return;
      }
      cold = last + problem_.ovens.front().cools;
    }
    for (int u = first; u < first + count; ++u) {
      const std::string unit = "u" + std::to_string(u);
      if (window_ != Window::beside_oven && !unload(unit)) return;
      const std::size_t nth = static_cast<std::size_t>(u - first);
      if (!chain(unit, unloadings[nth], cold, operations)) return;
      operations.push_back(operation(loadings[nth], unit, Attendance::attended, "oven"));
      made.members.push_back({unit + ".load",
                              unit + ".unload",
                              hold - between(random_, 0, 20),
                              30 * litre,
                              {},
                              {},
                              Temperature::celsius(70)});
    }
    peak_ = std::max(peak_, peak());
    problem_.loads.push_back(made);
    problem_.operations.insert(problem_.operations.end(), operations.begin(), operations.end());
    problem_.gaps.insert(problem_.gaps.end(), gaps_.begin(), gaps_.end());
  }

  // From the oven through both coats, none before `cold`. False: it finds no seat that day.
  bool chain(const std::string& unit, const Put& unload, Minute cold, std::vector<Operation>& operations) {
    const auto& booth = problem_.stations[0];
    auto coat = seat(unit + ".coat1", "spray", &booth, std::max(cold, unload.end + between(random_, 0, 10)),
                     between(random_, 3, 12));
    if (!coat) return false;
    coat->vapour = 2;
    put_.push_back(*coat);
    const Put flash{unit + ".flash", "", "", coat->end, coat->end + between(random_, 5, 20), 1};
    put_.push_back(flash);
    auto second = seat(unit + ".coat2", "spray", &booth, flash.end, between(random_, 3, 12));
    if (!second) return false;
    second->vapour = 2;
    put_.push_back(*second);
    operations.push_back(operation(unload, unit, Attendance::attended, "oven"));
    operations.push_back(operation(*coat, unit, Attendance::attended, "spray"));
    operations.push_back(operation(flash, unit, Attendance::unattended, ""));
    operations.push_back(operation(*second, unit, Attendance::attended, "spray"));
    gap("window of " + unit, unload, *coat, true);
    gap("flash of " + unit, *coat, flash, true);
    gap("second coat of " + unit, flash, *second, true);
    return true;
  }

  Operation operation(const Put& put, const std::string& unit, Attendance attendance,
                      const std::string& skill) {
    Operation op;
    op.id = put.id;
    op.unit = unit;
    op.length = put.end - put.start;
    op.attendance = attendance;
    op.skill = skill;
    if (!put.station.empty()) op.stations = {put.station};
    if (put.vapour > 0) op.demands = {{"vapour", put.vapour, 0}};
    op.solvent = put.vapour > 0;
    op.clears = op.solvent ? clears_ : 0;
    return op;
  }

  std::int64_t peak() const {
    std::int64_t most = peak_;
    for (const Put& at : put_) {
      std::int64_t sum = 0;
      for (const Put& p : put_) {
        if (p.start <= at.start && at.start < p.end) sum += p.vapour;
      }
      most = std::max(most, sum);
    }
    return most;
  }

  // Units of loads that found no room have no operations and are taken out; the day repeats often enough for all.
  void repeat() {
    std::erase_if(problem_.units, [&](const Unit& unit) {
      return std::none_of(problem_.operations.begin(), problem_.operations.end(),
                          [&](const Operation& op) { return op.unit == unit.id; });
    });
    const int days = 8;
    problem_.horizon = day * days;
    for (Person& person : problem_.people) {
      person.shifts = repeated(person.shifts, day, days);
      person.breaks = repeated(person.breaks, day, days);
    }
    for (Oven& oven : problem_.ovens) oven.powered = repeated(oven.powered, day, days);
  }

  Random random_;
  Window window_;
  Minute clears_ = 0;
  Problem problem_;
  std::vector<Put> put_;
  std::vector<Gap> gaps_;
  std::int64_t peak_ = 0;
};

}  // namespace

Problem small_shop(int days) {
  Problem problem;
  problem.horizon = 600 * days;
  const std::vector<std::string> all{"test", "oven", "spray", "mark"};
  for (const char* id : {"first", "second"}) {
    problem.people.push_back({id, all, repeated({{0, 480}}, 600, days), repeated({{240, 270}}, 600, days)});
  }
  problem.stations = {{"booth", 1, {"spray"}}, {"bench", 2, {"test", "mark"}}};
  problem.ovens = {{"cabinet", {{0, problem.horizon}}, false, 0, {}, {}}};
  problem.capacities = {{"vapour", {{0, 100}}}};
  return problem;
}

void add_unit(Problem& problem, const std::string& id, const std::string& load, Minute bake, Minute window) {
  problem.units.push_back({id, std::nullopt, 0, 1, {}});
  const auto add = [&](const std::string& code, Minute length, Attendance attendance,
                       const std::string& skill, const std::string& station, std::vector<Demand> demands) {
    Operation op;
    op.id = id + "." + code;
    op.unit = id;
    op.length = length;
    op.attendance = attendance;
    op.skill = skill;
    op.station_skill = station;
    op.demands = std::move(demands);
    problem.operations.push_back(op);
  };
  const auto join = [&](const std::string& from, const std::string& to, Minute shortest,
                        std::optional<Minute> longest) {
    problem.gaps.push_back(
        {from + " to " + to + " of " + id, id + "." + from, id + "." + to, shortest, longest});
  };
  add("test", 20, Attendance::attended, "test", "test", {});
  add("load", 5, Attendance::attended, "oven", "", {});
  add("unload", 5, Attendance::attended, "oven", "", {});
  add("coat1", 10, Attendance::attended, "spray", "spray", {{"vapour", 60, 10}});
  add("flash1", 20, Attendance::unattended, "", "", {{"vapour", 10, 0}});
  add("coat2", 10, Attendance::attended, "spray", "spray", {{"vapour", 60, 10}});
  add("flash2", 20, Attendance::unattended, "", "", {{"vapour", 10, 0}});
  add("mark", 5, Attendance::attended, "mark", "mark", {});
  join("test", "load", 0, std::nullopt);
  join("unload", "coat1", 0, window);
  join("coat1", "flash1", 0, 0);
  join("flash1", "coat2", 0, 30);
  join("coat2", "flash2", 0, 0);
  join("flash2", "mark", 0, std::nullopt);
  auto found =
      std::find_if(problem.loads.begin(), problem.loads.end(), [&](const Load& l) { return l.id == load; });
  if (found == problem.loads.end()) {
    Operation op;
    op.id = load + ".bake";
    op.length = bake;
    op.attendance = Attendance::watched;
    op.skill = "oven";
    problem.operations.push_back(op);
    problem.loads.push_back({load, {"cabinet"}, op.id, {}, std::nullopt});
    found = std::prev(problem.loads.end());
  }
  found->members.push_back({id + ".load", id + ".unload", 0, {}, {}, {}, {}});
}

Problem planted(std::uint32_t seed, Window window) {
  return Planter(seed, window).grow();
}

Problem shuffled(Problem problem, std::uint32_t seed) {
  Random random(seed);
  const auto mix = [&](auto& list) {
    for (std::size_t i = list.size(); i > 1; --i) std::swap(list[i - 1], list[random() % i]);
  };
  mix(problem.units);
  mix(problem.operations);
  mix(problem.gaps);
  mix(problem.loads);
  mix(problem.people);
  mix(problem.stations);
  mix(problem.ovens);
  mix(problem.capacities);
  for (Load& load : problem.loads) mix(load.members);
  return problem;
}

}  // namespace dampward::line::test
