#include "core/line/detail/floor.h"

#include <algorithm>

#include "core/line/calendar.h"

namespace dampward::line::detail {
namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

}  // namespace

Floor::Floor(const Model& model) : model_(model), spots_(model.ops.size()), stays_(model.loads.size()) {
  for (const Person* person : model.people) {
    working_.emplace_back(without(person->shifts, person->breaks));
    present_.emplace_back(person->shifts);
    breaks_.push_back(common(person->shifts, person->breaks));
  }
  for (const std::string& skill : model.skills) {
    Calendar watch;
    for (const Person* person : model.people) {
      if (std::find(person->skills.begin(), person->skills.end(), skill) != person->skills.end()) {
        watch = joined(watch, person->shifts);
      }
    }
    watch_.emplace_back(watch);
    std::vector<Level>& row = watched_heat_.emplace_back();
    for (const Oven* oven : model.ovens) row.emplace_back(common(watch, oven->powered));
  }
  for (const Station* station : model.stations) stations_.emplace_back(station->places);
  for (std::size_t o = 0; o < model.ovens.size(); ++o) ovens_.emplace_back(1);
  for (const Capacity* capacity : model.capacities) capacities_.emplace_back(*capacity);
}

Span Floor::stay_of(int load) const {
  Span stay{unbounded, 0};
  const LoadOps& it = model_.loads[at(load)];
  const auto stretch = [&](int op) {
    if (!placed(op)) return;
    stay.from = std::min(stay.from, spot(op).start);
    stay.to = std::max(stay.to, spot(op).end);
  };
  for (int op : it.loadings) stretch(op);
  stretch(it.bake);
  for (int op : it.unloadings) stretch(op);
  return stay.from == unbounded ? Span{} : stay;
}

Span Floor::heat_of(int load) const {
  const LoadOps& it = model_.loads[at(load)];
  if (!placed(it.bake)) return {};
  return {spot(it.bake).start, stay_of(load).to};
}

// Takes (-1) or gives back (+1) the oven and the bake's demands for the stay as it now is.
void Floor::hold(int load, int sign) {
  Stay& stay = stays_[at(load)];
  if (sign < 0) stay.held = stay_of(load), stay.heat = heat_of(load);
  ovens_[at(stay.oven)].add(stay.held, sign);
  if (stay.heat.length() == 0) return;
  for (const OpDemand& demand : model_.ops[at(model_.loads[at(load)].bake)].demands) {
    capacities_[at(demand.capacity)].add({stay.heat.from, stay.heat.to + demand.tail}, sign * demand.amount);
  }
}

void Floor::place(int number, const Spot& spot) {
  const Op& op = model_.ops[at(number)];
  if (op.load >= 0) hold(op.load, +1);
  spots_[at(number)] = spot;
  for (int p : spot.people) {
    working_[at(p)].add({spot.start, spot.end}, -1);
    present_[at(p)].add({spot.start, spot.end}, -1);
  }
  if (spot.station >= 0) stations_[at(spot.station)].add({spot.start, spot.end}, -1);
  if (op.role != Role::bake) {
    for (const OpDemand& demand : op.demands) {
      capacities_[at(demand.capacity)].add({spot.start, spot.end + demand.tail}, -demand.amount);
    }
  }
  if (op.load >= 0) hold(op.load, -1);
}

void Floor::take_out(int number) {
  const Op& op = model_.ops[at(number)];
  if (op.load >= 0) hold(op.load, +1);
  const Spot spot = *spots_[at(number)];
  spots_[at(number)].reset();
  for (int p : spot.people) {
    working_[at(p)].add({spot.start, spot.end}, +1);
    present_[at(p)].add({spot.start, spot.end}, +1);
  }
  if (spot.station >= 0) stations_[at(spot.station)].add({spot.start, spot.end}, +1);
  if (op.role != Role::bake) {
    for (const OpDemand& demand : op.demands) {
      capacities_[at(demand.capacity)].add({spot.start, spot.end + demand.tail}, +demand.amount);
    }
  }
  if (op.load >= 0) hold(op.load, -1);
}

// Minute by which the length is worked, if work stops whenever one of the people has a break.
Minute Floor::end_with_breaks(const std::vector<int>& people, Minute start, Minute length) const {
  Calendar together;
  for (int p : people) {
    if (people.size() > 1) together = joined(together, breaks_[at(p)]);
  }
  const Calendar& pauses = people.size() > 1 ? together : breaks_[at(people.front())];
  const auto next = std::upper_bound(pauses.begin(), pauses.end(), start,
                                     [](Minute minute, const Span& pause) { return minute < pause.to; });
  Minute end = start + length;
  for (auto pause = next; pause != pauses.end() && pause->from < end; ++pause) {
    end += pause->to - std::max(pause->from, start);
  }
  return end;
}

bool Floor::person_fits(int person, const Op& op, Minute start, Minute end) const {
  if (!op.as_given->pausable) return !working_[at(person)].first_below({start, end}, 1);
  return !present_[at(person)].first_below({start, end}, 1) &&
         !working_[at(person)].first_below({start, start + 1}, 1);
}

// The earliest start at or after `from` at which this person alone could do the work.
std::optional<Minute> Floor::person_from(int person, const Op& op, Minute from) const {
  if (!op.as_given->pausable) return working_[at(person)].fit(from, op.length, 1);
  for (Minute start = from;;) {
    const auto begun = working_[at(person)].fit(start, 1, 1);
    if (!begun) return std::nullopt;
    const Minute end = end_with_breaks({person}, *begun, op.length);
    const auto away = present_[at(person)].first_below({*begun, end}, 1);
    if (!away) return begun;
    start = *away + 1;
  }
}

// The earliest minute at or after `from` at which enough people could begin, each by themselves.
std::optional<Minute> Floor::people_from(const Op& op, Minute from) const {
  const std::size_t need = at(op.as_given->people);
  std::vector<Minute> starts;
  for (int p : op.skilled) {
    if (const auto start = person_from(p, op, from)) starts.push_back(*start);
  }
  if (starts.size() < need) return std::nullopt;
  std::nth_element(starts.begin(), starts.begin() + static_cast<std::ptrdiff_t>(need) - 1, starts.end());
  return starts[need - 1];
}

// The people who do it from that minute: those with the fewest other skills, among them first who knows the unit.
std::optional<Spot> Floor::people_at(const Op& op, int number, Minute start) const {
  const std::size_t need = at(op.as_given->people);
  const auto knows_unit = [&](int person) {
    if (op.unit < 0) return false;
    for (int other : model_.unit_ops[at(op.unit)]) {
      if (other == number || !placed(other)) continue;
      const auto& people = spot(other).people;
      if (std::find(people.begin(), people.end(), person) != people.end()) return true;
    }
    return false;
  };
  std::vector<int> free;
  for (int p : op.skilled) {
    if (person_fits(p, op, start,
                    op.as_given->pausable ? end_with_breaks({p}, start, op.length) : start + op.length)) {
      free.push_back(p);
    }
  }
  if (free.size() < need) return std::nullopt;
  std::stable_sort(free.begin(), free.end(), [&](int a, int b) {
    const auto skills_a = model_.people[at(a)]->skills.size(), skills_b = model_.people[at(b)]->skills.size();
    return skills_a != skills_b ? skills_a < skills_b : knows_unit(a) && !knows_unit(b);
  });
  free.resize(need);
  const Minute end = op.as_given->pausable ? end_with_breaks(free, start, op.length) : start + op.length;
  for (int p : free) {
    if (!person_fits(p, op, start, end)) return std::nullopt;
  }
  std::sort(free.begin(), free.end());
  return Spot{start, end, std::move(free), -1};
}

// The earliest start that suits people, places, capacities and watch; fills the spot. Nothing before the horizon: none.
std::optional<Minute> Floor::earliest(const Op& op, int number, Minute from, Spot& spot) const {
  const Operation& given = *op.as_given;
  if (op.needs_station && op.stations.empty()) return std::nullopt;
  for (Minute start = from; start + op.length <= model_.problem.horizon;) {
    spot = {start, start + op.length, {}, -1};
    if (given.attendance == Attendance::attended && op.skill >= 0) {
      const auto begun = people_from(op, start);
      if (!begun) return std::nullopt;
      if (*begun > start) {
        start = *begun;
        continue;
      }
      const auto crew = people_at(op, number, start);
      if (!crew) {  // together they pause more than each alone
        ++start;
        continue;
      }
      spot = *crew;
      if (spot.end > model_.problem.horizon) return std::nullopt;
    }
    const Minute length = spot.end - spot.start;
    Minute next = start;
    if (given.attendance == Attendance::watched && op.role == Role::plain) {
      const auto watched = watch_[at(op.skill)].fit(start, length, 1);
      if (!watched) return std::nullopt;
      next = std::max(next, *watched);
    }
    for (const OpDemand& demand : op.demands) {
      const auto room = capacities_[at(demand.capacity)].fit(start, length + demand.tail, demand.amount);
      if (!room) return std::nullopt;
      next = std::max(next, *room);
    }
    if (op.needs_station) {
      Minute soonest = unbounded;
      for (int s : op.stations) {
        const auto free = stations_[at(s)].fit(start, length, 1);
        if (free && *free < soonest) soonest = *free, spot.station = s;
      }
      next = std::max(next, soonest);
    }
    if (next == start) return start;
    start = next;
  }
  return std::nullopt;
}

// What the load's oven has against a spot: who must move, and how far. The stay's own hold is lifted while asking.
std::optional<Search> Floor::oven_refuses(int number, const Spot& spot) {
  const Op& op = model_.ops[at(number)];
  const LoadOps& load = model_.loads[at(op.load)];
  const int oven = stays_[at(op.load)].oven;
  const Span so_far = stay_of(op.load);
  const bool first = so_far.length() == 0;
  const Span stay{first ? spot.start : std::min(so_far.from, spot.start), std::max(so_far.to, spot.end)};

  if (const auto taken = ovens_[at(oven)].first_below(stay, 1)) {
    // Wait for the end of the other stay: this loading, if it is the first, else the whole load.
    const auto free = ovens_[at(oven)].fit(*taken, 1, 1);
    if (!free) return Search{std::nullopt, number, unbounded};
    int mover = number;
    for (int loading : load.loadings) {
      if (placed(loading) && spot.start >= this->spot(loading).start && this->spot(loading).start < *free)
        mover = loading;
    }
    return Search{std::nullopt, mover, *free};
  }
  if (op.role == Role::loading) return std::nullopt;

  const Minute heat_from = op.role == Role::bake ? spot.start : this->spot(load.bake).start;
  const Span heat{heat_from, std::max(stay.to, spot.end)};
  const Op& bake = model_.ops[at(load.bake)];
  const Level& watch = watched_heat_[at(bake.skill)][at(oven)];
  if (const auto away = watch.first_below(heat, 1)) {
    const auto back = watch.fit(*away, bake.length, 1);
    return Search{std::nullopt, load.bake, back.value_or(unbounded)};
  }
  for (const OpDemand& demand : bake.demands) {
    const Level& left = capacities_[at(demand.capacity)];
    auto short_at = left.first_below({heat.from, heat.to + demand.tail}, demand.amount);
    for (const OpDemand& own : op.demands) {
      if (short_at || op.role == Role::bake || own.capacity != demand.capacity) continue;
      short_at = left.first_below({spot.start, spot.end + own.tail}, demand.amount + own.amount);
    }
    if (short_at) {
      const auto room = left.fit(*short_at + 1, bake.length, demand.amount);
      return Search{std::nullopt, load.bake, room.value_or(unbounded)};
    }
  }
  return std::nullopt;
}

Search Floor::find(int number, Minute from) {
  ++work_;
  const Op& op = model_.ops[at(number)];
  if (op.load >= 0) hold(op.load, +1);
  Search result{std::nullopt, number, unbounded};
  for (Minute start = std::max<Minute>(from, 0);;) {
    Spot spot;
    if (!earliest(op, number, start, spot)) break;
    if (op.load >= 0) {
      const auto refused = oven_refuses(number, spot);
      if (refused && refused->move == number && refused->to < unbounded) {
        start = refused->to;
        continue;
      }
      if (refused) {
        result = *refused;
        break;
      }
    }
    result = {std::move(spot), -1, 0};
    break;
  }
  if (op.load >= 0) hold(op.load, -1);
  return result;
}

}  // namespace dampward::line::detail
