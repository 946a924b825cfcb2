#include "core/line/detail/floor.h"

#include <algorithm>

#include "core/line/calendar.h"

namespace dampward::line::detail {
namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

// The first minute of the span, `known` left out, at which the level is below `need`.
std::optional<Minute> first_below_outside(const Level& level, Span span, Span known, std::int64_t need) {
  if (known.length() <= 0) return level.first_below(span, need);
  const auto front = level.first_below({span.from, std::min(span.to, known.from)}, need);
  return front ? front : level.first_below({std::max(span.from, known.to), span.to}, need);
}

Spot fixed_spot(const Model& model, const Op& op) {
  Spot spot{op.fixed->start, op.fixed->end, {}, -1};
  for (std::size_t p = 0; p < model.people.size(); ++p) {
    const auto& people = op.fixed->people;
    if (std::find(people.begin(), people.end(), model.people[p]->id) != people.end())
      spot.people.push_back(static_cast<int>(p));
  }
  for (std::size_t s = 0; s < model.stations.size(); ++s) {
    const bool in_oven = op.load >= 0 && !op.needs_station;  // then it names the oven
    if (!in_oven && model.stations[s]->id == op.fixed->station) spot.station = static_cast<int>(s);
  }
  return spot;
}

bool overlap(Span a, Span b) {
  return a.from < b.to && b.from < a.to;
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
  for (std::size_t load = 0; load < model.loads.size(); ++load) {
    if (!model.loads[load].ovens.empty()) stays_[load].oven = model.loads[load].ovens.front();
  }
  for (std::size_t op = 0; op < model.ops.size(); ++op) {
    if (model.ops[op].fixed) place(static_cast<int>(op), fixed_spot(model, model.ops[op]));
  }
}

Span Floor::stay_of(int load) const {
  Span stay{unbounded, -unbounded};
  const LoadOps& it = model_.loads[at(load)];
  const auto stretch = [&](int op) {
    if (!placed(op)) return;
    stay.from = std::min(stay.from, spot(op).start);
    stay.to = std::max(stay.to, spot(op).end);
  };
  for (int op : it.loadings) stretch(op);
  stretch(it.bake);
  for (int op : it.unloadings) stretch(op);
  if (stay.from == unbounded) return {};
  if (stays_[at(load)].kept) stay.to = std::max(stay.to, model_.problem.horizon);
  return stay;
}

Span Floor::heat_of(int load) const {
  const LoadOps& it = model_.loads[at(load)];
  if (!placed(it.bake)) return {};
  Span heat{spot(it.bake).start, spot(it.bake).end};
  for (int op : it.unloadings) {
    if (placed(op)) heat.to = std::max(heat.to, spot(op).end);
  }
  return heat;
}

void Floor::keep_to_horizon(int load) {
  hold(load, +1);
  stays_[at(load)].kept = true;
  hold(load, -1);
}

// Takes (-1) or gives back (+1) the oven, its heat and the bake's demands for the stay as it now is.
void Floor::hold(int load, int sign) {
  Stay& stay = stays_[at(load)];
  if (sign < 0) stay.held = stay_of(load), stay.heat = heat_of(load);
  ovens_[at(stay.oven)].add(stay.held, sign);
  if (stay.heat.length() == 0) return;
  const Oven& oven = *model_.ovens[at(stay.oven)];
  if (oven.near_solvent) heat_near_.add({stay.heat.from, stay.heat.to + oven.cools}, sign);
  for (const OpDemand& demand : model_.ops[at(model_.loads[at(load)].bake)].demands) {
    capacities_[at(demand.capacity)].add({stay.heat.from, stay.heat.to + demand.tail}, sign * demand.amount);
  }
}

// Takes (-1) or gives back (+1) what the operation itself needs.
void Floor::use(const Op& op, const Spot& spot, int sign) {
  const Span span{spot.start, spot.end};
  for (int p : spot.people) {
    working_[at(p)].add(span, sign);
    present_[at(p)].add(span, sign);
  }
  if (spot.station >= 0) stations_[at(spot.station)].add(span, sign);
  if (op.as_given->solvent) open_solvent_.add({spot.start, spot.end + op.as_given->clears}, sign);
  if (op.role == Role::bake) return;
  for (const OpDemand& demand : op.demands) {
    capacities_[at(demand.capacity)].add({spot.start, spot.end + demand.tail}, sign * demand.amount);
  }
}

void Floor::place(int number, const Spot& spot) {
  const Op& op = model_.ops[at(number)];
  if (op.load >= 0) hold(op.load, +1);
  spots_[at(number)] = spot;
  use(op, spot, -1);
  if (op.load >= 0) hold(op.load, -1);
}

void Floor::take_out(int number) {
  const Op& op = model_.ops[at(number)];
  if (op.load >= 0) hold(op.load, +1);
  use(op, *spots_[at(number)], +1);
  spots_[at(number)].reset();
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
std::optional<Minute> Floor::people_from(const Op& op, Minute from, const std::vector<int>& people) const {
  const std::size_t need = at(op.as_given->people);
  std::vector<Minute> starts;
  for (int p : people) {
    if (const auto start = person_from(p, op, from)) starts.push_back(*start);
  }
  if (starts.size() < need) return std::nullopt;
  std::nth_element(starts.begin(), starts.begin() + static_cast<std::ptrdiff_t>(need) - 1, starts.end());
  return starts[need - 1];
}

// The people who do it from that minute: those with the fewest other skills, among them first who knows the unit.
std::optional<Spot> Floor::people_at(const Op& op, int number, Minute start,
                                     const std::vector<int>& people) const {
  const std::size_t need = at(op.as_given->people);
  const auto knows_unit = [&](int person) {
    if (op.unit < 0) return false;
    for (int other : model_.unit_ops[at(op.unit)]) {
      if (other == number || !placed(other)) continue;
      const auto& crew = spot(other).people;
      if (std::find(crew.begin(), crew.end(), person) != crew.end()) return true;
    }
    return false;
  };
  std::vector<int> free;
  for (int p : people) {
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

// The earliest start that suits people, places, capacities, watch and ovens near its solvent; fills the spot. Nothing before the horizon: none.
std::optional<Minute> Floor::earliest(int number, Minute from, const Choice& choice, Spot& spot) const {
  const Op& op = model_.ops[at(number)];
  const Operation& given = *op.as_given;
  if (op.needs_station && choice.stations.empty()) return std::nullopt;
  for (Minute start = from; start + op.length <= model_.problem.horizon;) {
    spot = {start, start + op.length, {}, -1};
    if (given.attendance == Attendance::attended && op.skill >= 0) {
      const auto begun = people_from(op, start, choice.people);
      if (!begun) return std::nullopt;
      if (*begun > start) {
        start = *begun;
        continue;
      }
      const auto crew = people_at(op, number, start, choice.people);
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
    if (given.solvent && !heat_ignored_) {
      const auto cold = heat_near_.fit(start, length + given.clears, 0);
      if (!cold) return std::nullopt;
      next = std::max(next, *cold);
    }
    for (const OpDemand& demand : op.demands) {
      const auto room =
          capacities_[at(demand.capacity)].fit(start, length + demand.tail, stacked(op.demands, demand));
      if (!room) return std::nullopt;
      next = std::max(next, *room);
    }
    if (op.needs_station) {
      Minute soonest = unbounded;
      for (int s : choice.stations) {
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

// What the load's oven has against a spot: who must move, and how far. The stay's own hold is lifted while asking. What the
// load's fixed operations make by themselves is not judged.
std::optional<Search> Floor::oven_refuses(int number, const Spot& spot) {
  const Op& op = model_.ops[at(number)];
  const LoadOps& load = model_.loads[at(op.load)];
  const int oven = stays_[at(op.load)].oven;
  const Span so_far = stay_of(op.load);
  const bool first = so_far == Span{};
  const Span stay{first ? spot.start : std::min(so_far.from, spot.start),
                  first ? spot.end : std::max(so_far.to, spot.end)};

  if (const auto taken = first_below_outside(ovens_[at(oven)], stay, load.fixed_stay, 1)) {
    const Against against{Obstacle::station, model_.ovens[at(oven)]->id};
    // Wait for the end of the other stay: this loading, if it is the first, else the whole load.
    const auto free = ovens_[at(oven)].fit(*taken, 1, 1);
    if (!free) return Search{std::nullopt, number, unbounded, against};
    int mover = number;
    for (int loading : load.loadings) {
      if (placed(loading) && spot.start >= this->spot(loading).start && this->spot(loading).start < *free)
        mover = loading;
    }
    return Search{std::nullopt, mover, *free, against};
  }
  return heat_refuses(number, spot);
}

// The same for its heat: power and watch, what the bake takes of capacities, and solvent in the open.
std::optional<Search> Floor::heat_refuses(int number, const Spot& spot) const {
  const Op& op = model_.ops[at(number)];
  const LoadOps& load = model_.loads[at(op.load)];
  if (op.role != Role::bake && !placed(load.bake)) return std::nullopt;
  const int oven = stays_[at(op.load)].oven;
  const Oven& given = *model_.ovens[at(oven)];
  const Op& bake = model_.ops[at(load.bake)];
  Span heat = op.role == Role::bake ? Span{spot.start, spot.end} : heat_of(op.load);
  if (op.role != Role::loading) heat.to = std::max(heat.to, spot.end);

  const Span cooled{heat.from, heat.to + given.cools};
  if (given.near_solvent && op.as_given->solvent && !heat_ignored_ &&
      overlap({spot.start, spot.end + op.as_given->clears}, cooled)) {
    return Search{std::nullopt, number, unbounded, {Obstacle::solvent, given.id}};
  }
  if (op.role == Role::loading) return std::nullopt;

  const Level& watch = watched_heat_[at(bake.skill)][at(oven)];
  if (const auto away = first_below_outside(watch, heat, load.fixed_heat, 1)) {
    const auto back = watch.fit(*away, bake.length, 1);
    return Search{std::nullopt, load.bake, back.value_or(unbounded), {Obstacle::watch, given.id}};
  }
  if (given.near_solvent && !heat_ignored_) {
    const Span known{load.fixed_heat.from,
                     load.fixed_heat.to + (load.fixed_heat.length() > 0 ? given.cools : 0)};
    if (const auto vapour = first_below_outside(open_solvent_, cooled, known, 0)) {
      const auto clear = open_solvent_.fit(*vapour + 1, bake.length, 0);
      return Search{std::nullopt, load.bake, clear.value_or(unbounded), {Obstacle::solvent, given.id}};
    }
  }
  for (const OpDemand& demand : bake.demands) {
    const Level& left = capacities_[at(demand.capacity)];
    const Span known{load.fixed_heat.from,
                     load.fixed_heat.to + (load.fixed_heat.length() > 0 ? demand.tail : 0)};
    auto short_at = first_below_outside(left, {heat.from, heat.to + demand.tail}, known, demand.amount);
    for (const OpDemand& own : op.demands) {
      if (short_at || op.role == Role::bake || own.capacity != demand.capacity) continue;
      short_at = left.first_below({spot.start, spot.end + own.tail}, demand.amount + own.amount);
    }
    if (short_at) {
      const auto room = left.fit(*short_at + 1, bake.length, demand.amount);
      return Search{std::nullopt,
                    load.bake,
                    room.value_or(unbounded),
                    {Obstacle::capacity, model_.capacities[at(demand.capacity)]->id}};
    }
  }
  return std::nullopt;
}

Search Floor::find(int number, Minute from) {
  const Op& op = model_.ops[at(number)];
  return find(number, from, {op.skilled, op.stations});
}

Search Floor::find(int number, Minute from, const Choice& choice) {
  ++work_;
  const Op& op = model_.ops[at(number)];
  if (op.load >= 0) hold(op.load, +1);
  Search result{std::nullopt, number, unbounded};
  for (Minute start = std::max(from, model_.problem.now);;) {
    Spot spot;
    if (!earliest(number, start, choice, spot)) break;
    if (op.load >= 0) {
      const auto refused = oven_refuses(number, spot);
      if (refused && refused->move == number && refused->to < unbounded) {
        result.against = refused->against;
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

std::string Floor::hot_oven_against(int number, Minute from, Minute latest) {
  const Op& op = model_.ops[at(number)];
  if (!op.as_given->solvent) return "";
  heat_ignored_ = true;
  const Search without_heat = find(number, from);
  heat_ignored_ = false;
  if (!without_heat.spot || without_heat.spot->start > latest) return "";
  const Span needed{without_heat.spot->start, without_heat.spot->end + op.as_given->clears};
  for (std::size_t load = 0; load < stays_.size(); ++load) {
    const Oven* oven = stays_[load].oven < 0 ? nullptr : model_.ovens[at(stays_[load].oven)];
    const Span heat = heat_of(static_cast<int>(load));
    if (oven && oven->near_solvent && heat.length() > 0 &&
        overlap(needed, {heat.from, heat.to + oven->cools}))
      return oven->id;
  }
  return "";
}

}  // namespace dampward::line::detail
