#include "tests/timetable/planted.h"

#include <algorithm>
#include <map>

namespace {

using Json = nlohmann::json;

struct Stretch {
  int from = 0, to = 0;
};
bool meet(Stretch a, Stretch b) {
  return a.from < b.to && b.from < a.to;
}
bool meets_any(const std::vector<Stretch>& list, Stretch one) {
  return std::any_of(list.begin(), list.end(), [&](Stretch each) { return meet(each, one); });
}

struct Hand {
  std::string id;
  std::vector<std::string> skills;
  std::vector<Stretch> shifts, breaks, busy;
};

struct Heater {
  std::string id;
  bool near = false;
  int cools = 0;
  std::vector<Stretch> stays;
};

struct Set {
  std::string id;
  int last_end = 0;
};

constexpr int day = 1440;

class Planter {
 public:
  Planter(unsigned seed, const PlantedKind& kind) : random_(seed), kind_(kind) {}

  // None where the plan would not fit into four days.
  std::optional<Planted> plant() {
    hands();
    places();
    const int units = pick(1, kind_.most_units);
    for (int i = 0; i < units;) {
      const int together = std::min(pick(1, 2), units - i);
      const bool baked = pick(0, 3) > 0;
      std::vector<Set> sets;
      for (int j = 0; j < together; ++j) sets.push_back({"TD-" + std::to_string(++i), 0});
      if (!(baked ? bake(sets) : leave_cold(sets))) return std::nullopt;
    }
    return drawn();
  }

 private:
  int pick(int least, int most) { return least + int(random_() % unsigned(most - least + 1)); }
  bool chance(int per_cent) { return pick(1, 100) <= per_cent; }

  void hands() {
    const std::vector<std::string> all = {"bench", "oven", "paint"};
    const int number = pick(1, 3);
    for (int i = 0; i < number; ++i) {
      Hand hand{"hand-" + std::to_string(i), {}, {}, {}, {}};
      for (const auto& skill : all) {
        if (i == 0 || chance(60)) hand.skills.push_back(skill);
      }
      for (int d = 0; d < 4; ++d) {
        const int from = d * day + pick(0, 2) * 30, to = d * day + 540 + pick(0, 2) * 30;
        hand.shifts.push_back({from, to});
        const int rest = d * day + 240 + pick(0, 3) * 15;
        hand.breaks.push_back({rest, rest + 30});
      }
      hands_.push_back(hand);
    }
  }

  void places() {
    for (int i = 0, number = pick(1, 2); i < number; ++i)
      ovens_.push_back({"oven-" + std::to_string(i), chance(40), pick(0, 3) * 2, {}});
  }

  bool on_shift(const std::string& skill, Stretch when) const {
    return std::any_of(hands_.begin(), hands_.end(), [&](const Hand& hand) {
      return std::count(hand.skills.begin(), hand.skills.end(), skill) > 0 &&
             std::any_of(hand.shifts.begin(), hand.shifts.end(),
                         [&](Stretch shift) { return shift.from <= when.from && when.to <= shift.to; });
    });
  }

  Hand* free_hand(const std::string& skill, Stretch when) {
    for (Hand& hand : hands_) {
      const bool able = std::count(hand.skills.begin(), hand.skills.end(), skill) > 0;
      const bool there = std::any_of(hand.shifts.begin(), hand.shifts.end(), [&](Stretch shift) {
        return shift.from <= when.from && when.to <= shift.to;
      });
      if (able && there && !meets_any(hand.breaks, when) && !meets_any(hand.busy, when)) return &hand;
    }
    return nullptr;
  }

  int at_once(const std::string& station, Stretch when) const {
    int most = 0;
    const auto found = filled_.find(station);
    for (int m = when.from; found != filled_.end() && m < when.to; ++m) {
      most = std::max(most, int(std::count_if(found->second.begin(), found->second.end(),
                                              [&](Stretch each) { return each.from <= m && m < each.to; })));
    }
    return most;
  }

  // Lays attended work into the first minute from `earliest` to `latest` in which everything it needs is free.
  std::optional<Stretch> work(Json operation, const std::string& skill, int earliest, int latest) {
    const int length = operation["length_min"];
    const bool wet = operation.value("solvent", false);
    const std::string station = operation.value("station_skill", "");
    for (int start = earliest; start <= latest; ++start) {
      const Stretch when{start, start + length};
      Hand* hand = free_hand(skill, when);
      if (!hand || (!station.empty() && at_once(station, when) >= 2)) continue;
      const Stretch open{start, start + length + operation.value("clears_min", 0)};
      if (wet && meets_any(hot_near_, open)) continue;
      hand->busy.push_back(when);
      if (!station.empty()) filled_[station].push_back(when);
      if (wet) wet_.push_back(open);
      operation["skill"] = skill;
      lay(operation, when, {hand->id}, station.empty() ? Json(nullptr) : Json(station));
      return when;
    }
    return std::nullopt;
  }

  void lay(const Json& operation, Stretch when, const std::vector<std::string>& people, const Json& station) {
    operations_.push_back(operation);
    placements_.push_back({{"operation", operation["id"]},
                           {"start_min", when.from},
                           {"end_min", when.to},
                           {"people", people},
                           {"station", station}});
    end_ = std::max(end_, when.to);
    for (const Json& demand : operation.value("demands", Json::array()))
      drawn_.push_back({{when.from, when.to + demand.value("tail_min", 0)}, demand["amount"]});
  }

  // Draws a gap around what lies between the two.
  void gap(const std::string& from, const std::string& to, int between, bool closes) {
    Json gap = {{"name", from + " to " + to}, {"from", from}, {"to", to}};
    gap["shortest_min"] = between - pick(0, std::min(between, 15));
    if (closes)
      gap["longest_min"] = kind_.tight ? std::min(19, between + pick(0, 8)) : between + pick(0, 120);
    gaps_.push_back(gap);
  }

  int wait() { return kind_.tight ? 19 : pick(20, 180); }

  // Coats, flashes and the test, from when the surface is ready.
  bool finish(Set& set, int ready, const std::string& after) {
    std::string before = after;
    int end = ready, unit_coats = pick(1, 2);
    for (int coat = 1; coat <= unit_coats; ++coat) {
      const std::string id = set.id + "-coat" + std::to_string(coat),
                        flash = set.id + "-flash" + std::to_string(coat);
      Json operation = {
          {"id", id},
          {"unit", set.id},
          {"length_min", pick(3, 12)},
          {"station_skill", "booth"},
          {"solvent", true},
          {"clears_min", pick(0, 2) * 5},
          {"demands", {{{"capacity", "vapour"}, {"amount", pick(1, 9)}, {"tail_min", pick(0, 10)}}}}};
      const auto when = work(operation, "paint", end + pick(0, 5), end + wait());
      if (!when) return false;
      gap(before, id, when->from - end, true);
      const Stretch drying{when->to, when->to + pick(5, 40)};
      lay({{"id", flash},
           {"unit", set.id},
           {"length_min", drying.to - drying.from},
           {"attendance", "unattended"}},
          drying, {}, nullptr);
      gaps_.push_back({{"name", "flash"}, {"from", id}, {"to", flash}, {"longest_min", 0}});
      before = flash;
      end = drying.to;
    }
    const std::string test = set.id + "-test";
    Json operation = {
        {"id", test}, {"unit", set.id}, {"length_min", pick(5, 20)}, {"station_skill", "bench"}};
    operation["pausable"] = chance(50);
    const bool closes = kind_.tight && chance(50);
    const auto when = work(operation, "bench", end, closes ? end + 19 : end + day);
    if (!when) return false;
    gap(before, test, when->from - end, closes);
    set.last_end = when->to;
    unit(set);
    return true;
  }

  void unit(const Set& set) {
    Json unit = {{"id", set.id}, {"priority", pick(0, 2)}};
    if (chance(60)) unit["due_min"] = set.last_end + pick(-60, 300);
    units_.push_back(unit);
  }

  std::optional<Stretch> opened(const Set& set, int earliest) {
    return work(
        {{"id", set.id + "-open"}, {"unit", set.id}, {"length_min", pick(5, 30)}, {"station_skill", "bench"}},
        "bench", earliest, earliest + 2 * day);
  }

  // The steps before the coat may come hours earlier, but what follows must fit: a start that does not is given up.
  bool leave_cold(std::vector<Set>& sets) {
    for (Set& set : sets) {
      if (!again([&] {
            const auto open = opened(set, pick(0, 2 * day));
            return open && finish(set, open->to, set.id + "-open");
          }))
        return false;
    }
    return true;
  }

  bool bake(std::vector<Set>& sets) {
    const int load = int(loads_.size());
    return again([&] { return bake_once(sets, "L" + std::to_string(load)); });
  }

  bool bake_once(std::vector<Set>& sets, const std::string& load) {
    Heater& oven = ovens_[std::size_t(pick(0, int(ovens_.size()) - 1))];
    Json members = Json::array();
    int loaded = 0, first_in = 1 << 30;
    const int begin = pick(0, 2 * day);
    for (const Set& set : sets) {
      const auto open = opened(set, begin);
      if (!open) return false;
      const auto in = work({{"id", set.id + "-in"}, {"unit", set.id}, {"length_min", pick(2, 8)}}, "oven",
                           std::max(open->to, loaded), open->to + day);
      if (!in) return false;
      gap(set.id + "-open", set.id + "-in", in->from - open->to, false);
      loaded = in->to;
      first_in = std::min(first_in, in->from);
    }
    const int length = pick(30, 120);
    const Stretch baking{loaded + pick(0, 20), 0};
    const int ends = baking.from + length;
    lay({{"id", load + "-bake"}, {"length_min", length}, {"attendance", "watched"}, {"skill", "oven"}},
        {baking.from, ends}, {}, nullptr);
    int out_end = ends;
    std::vector<int> ready;
    for (const Set& set : sets) {
      const auto out = work({{"id", set.id + "-out"}, {"unit", set.id}, {"length_min", pick(2, 6)}}, "oven",
                            out_end, out_end + (kind_.tight ? 5 : 60));
      if (!out) return false;
      out_end = out->to;
      ready.push_back(out->to);
      members.push_back({{"loading", set.id + "-in"},
                         {"unloading", set.id + "-out"},
                         {"needs_min", length - pick(0, 20)},
                         {"volume_l", pick(5, 20)}});
    }
    const Stretch stay{first_in, out_end}, hot{baking.from, out_end}, warm{baking.from, out_end + oven.cools};
    if (meets_any(oven.stays, stay) || !on_shift("oven", hot) || (oven.near && meets_any(wet_, warm)))
      return false;
    oven.stays.push_back(stay);
    if (oven.near) hot_near_.push_back(warm);
    Json ovens = Json::array({oven.id});
    if (chance(50)) {
      for (const Heater& other : ovens_) {
        if (other.id != oven.id) ovens.push_back(other.id);
      }
    }
    loads_.push_back(
        {{"id", load}, {"ovens", ovens}, {"bake", load + "-bake"}, {"setting_c", 60}, {"members", members}});
    stays_.push_back({{"load", load}, {"oven", oven.id}, {"from_min", stay.from}, {"to_min", stay.to}});
    for (std::size_t i = 0; i < sets.size(); ++i) {
      if (!finish(sets[i], ready[i], sets[i].id + "-out")) return false;
    }
    return true;
  }

  // Tries at other hours until one fits; what a failed try laid down is taken up again.
  template <class Try>
  bool again(Try attempt) {
    const Planter before = *this;
    for (int i = 0; i < 60; ++i) {
      if (attempt()) return true;
      const auto random = random_;
      *this = before;
      random_ = random;
    }
    return false;
  }

  Planted drawn() {
    Json problem = {{"format", "dampward timetable problem"}, {"version", 1}};
    problem["horizon_min"] = end_ + pick(0, 120);
    problem["units"] = units_;
    problem["operations"] = operations_;
    problem["gaps"] = gaps_;
    problem["loads"] = loads_;
    problem["people"] = Json::array();
    const auto spans = [](const std::vector<Stretch>& list) {
      Json out = Json::array();
      for (Stretch each : list) out.push_back({each.from, each.to});
      return out;
    };
    for (const Hand& hand : hands_)
      problem["people"].push_back({{"id", hand.id},
                                   {"skills", hand.skills},
                                   {"shifts", spans(hand.shifts)},
                                   {"breaks", spans(hand.breaks)}});
    for (const char* station : {"bench", "booth"}) {
      const int needed = std::max(1, at_once(station, {0, end_}));
      problem["stations"].push_back(
          {{"id", station}, {"places", pick(needed, 2)}, {"serves", Json::array({station})}});
    }
    for (const Heater& oven : ovens_)
      problem["ovens"].push_back({{"id", oven.id},
                                  {"powered", Json::array({Json::array({0, 4 * day})})},
                                  {"near_solvent", oven.near},
                                  {"cools_min", oven.cools},
                                  {"volume_l", 40}});
    problem["capacities"] = {{{"id", "vapour"}, {"steps", {{0, most_drawn() + pick(0, 3)}}}}};
    if (kind_.under_way) begin(problem);
    Json answer = {{"format", "dampward timetable answer"},
                   {"version", 1},
                   {"placements", placements_},
                   {"oven_stays", stays_},
                   {"late", Json::array()},
                   {"unplaced", Json::array()},
                   {"finish_min", end_}};
    tell_late(answer);
    return {problem, answer};
  }

  void tell_late(Json& answer) const {
    for (const Json& unit : units_) {
      int finish = 0;
      for (std::size_t i = 0; i < operations_.size(); ++i) {
        if (operations_[i].value("unit", "") == unit["id"])
          finish = std::max<int>(finish, placements_[i]["end_min"]);
      }
      if (unit.contains("due_min") && finish > unit["due_min"].get<int>())
        answer["late"].push_back(
            {{"unit", unit["id"]}, {"due_min", unit["due_min"]}, {"finish_min", finish}});
    }
  }

  int most_drawn() const {
    int most = 0;
    for (int m = 0; m < end_ + 20; ++m) {
      int sum = 0;
      for (const auto& [when, amount] : drawn_) sum += when.from <= m && m < when.to ? amount : 0;
      most = std::max(most, sum);
    }
    return most;
  }

  // Somewhere in the middle of the plan: what has started is fixed, its oven named.
  void begin(Json& problem) {
    const int now = pick(1, end_);
    problem["now_min"] = now;
    for (Json& placement : placements_) {
      if (placement["start_min"].get<int>() >= now) continue;
      Json fixed = placement;
      const std::string id = placement["operation"];
      for (std::size_t i = 0; i < loads_.size(); ++i) {
        bool part = loads_[i]["bake"] == id;
        for (const Json& member : loads_[i]["members"])
          part |= member["loading"] == id || member["unloading"] == id;
        if (part) fixed["station"] = stays_[i]["oven"];
      }
      placement["station"] = fixed["station"];
      problem["fixed"].push_back(fixed);
    }
  }

  std::mt19937 random_;
  PlantedKind kind_;
  std::vector<Hand> hands_;
  std::vector<Heater> ovens_;
  std::map<std::string, std::vector<Stretch>> filled_;
  std::vector<Stretch> wet_, hot_near_;
  std::vector<std::pair<Stretch, int>> drawn_;
  std::vector<Json> operations_, placements_;
  Json units_ = Json::array(), gaps_ = Json::array(), loads_ = Json::array(), stays_ = Json::array();
  int end_ = 0;
};

}  // namespace

Planted planted(unsigned seed, const PlantedKind& kind) {
  for (unsigned attempt = 0;; ++attempt) {
    if (auto found = Planter(seed * 1'000 + attempt, kind).plant()) return *found;
  }
}
