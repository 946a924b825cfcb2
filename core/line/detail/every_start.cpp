#include "core/line/detail/every_start.h"

#include <algorithm>

#include "core/line/detail/blocks.h"

namespace dampward::line::detail {
namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

// Estimate: some 20 ms. Of the tiny problems in tests/timetable that have a plan, none needs a tenth of it.
constexpr std::int64_t most_looks = 20'000;

// Every choice of `size` of them, in their order.
std::vector<std::vector<int>> choices(const std::vector<int>& all, std::size_t size) {
  std::vector<std::vector<int>> found{{}};
  for (std::size_t i = 0; i < size; ++i) {
    std::vector<std::vector<int>> longer;
    for (const std::vector<int>& begun : found) {
      auto next = begun.empty() ? all.begin() : std::find(all.begin(), all.end(), begun.back()) + 1;
      for (; next != all.end(); ++next) {
        longer.push_back(begun);
        longer.back().push_back(*next);
      }
    }
    found = std::move(longer);
  }
  return found;
}

}  // namespace

bool EveryStart::place(const std::vector<int>& ops) {
  const std::vector<int> no_pull(model_.ops.size(), 0);
  const std::vector<char> any_order(model_.loads.size(), 0);
  order_ = order_within(model_, ops, no_pull, any_order);
  last_look_ = floor_.work() + most_looks;
  return extend(0);
}

bool EveryStart::given_up() const {
  return floor_.work() >= last_look_ || (keep_going_ && floor_.work() % 64 == 0 && !keep_going_());
}

bool EveryStart::extend(std::size_t next) {
  if (next == order_.size()) return true;
  const int load = model_.ops[at(order_[next])].load;
  if (load < 0 || floor_.stay_of(load) != Span{}) return start_somewhere(next);
  const std::vector<int>& ovens = model_.loads[at(load)].ovens;
  return std::any_of(ovens.begin(), ovens.end(), [&](int oven) {
    floor_.choose_oven(load, oven);
    return start_somewhere(next);
  });
}

bool EveryStart::start_somewhere(std::size_t next) {
  const int op = order_[next];
  const Window window = this->window(op);
  for (Minute from = window.from; from <= window.to && !given_up();) {
    const std::vector<Spot> spots = soonest(op, from);
    if (spots.empty() || spots.front().start > window.to) return false;
    for (const Spot& spot : spots) {
      floor_.place(op, spot);
      if (!someone_is_too_late(next + 1) && extend(next + 1)) return true;
      floor_.take_out(op);
    }
    from = spots.front().start + 1;
  }
  return false;
}

std::vector<Spot> EveryStart::soonest(int number, Minute from) {
  const Op& op = model_.ops[at(number)];
  const bool hands = op.as_given->attendance == Attendance::attended && op.skill >= 0;
  std::vector<std::vector<int>> places;
  for (int station : op.stations) places.push_back({station});
  if (places.empty()) places.emplace_back();
  std::vector<Spot> found;
  for (const std::vector<int>& crew :
       hands ? choices(op.skilled, at(op.as_given->people)) : std::vector<std::vector<int>>{{}}) {
    for (const std::vector<int>& place : places) {
      const Search search = floor_.find(number, from, {crew, place});
      if (!search.spot || (!found.empty() && search.spot->start > found.front().start)) continue;
      if (!found.empty() && search.spot->start < found.front().start) found.clear();
      found.push_back(*search.spot);
    }
  }
  return found;
}

// Between what is placed before it and after it; what its own pauses add is seen once it is placed.
EveryStart::Window EveryStart::window(int number) const {
  const Op& op = model_.ops[at(number)];
  Window window{model_.problem.now, model_.problem.horizon - op.length};
  for (const Arc& arc : op.before) {
    if (!floor_.placed(arc.from)) continue;
    const Minute end = floor_.spot(arc.from).end;
    window.from = std::max(window.from, end + arc.shortest);
    if (arc.longest < unbounded) window.to = std::min(window.to, end + arc.longest);
  }
  for (const Arc& arc : op.after) {
    if (!floor_.placed(arc.to)) continue;
    const Minute start = floor_.spot(arc.to).start;
    window.to = std::min(window.to, start - arc.shortest - op.length);
    if (arc.longest < unbounded && !op.as_given->pausable)
      window.from = std::max(window.from, start - arc.longest - op.length);
  }
  return window;
}

// Whether one that is not placed yet has no start left, by the gaps to those that are.
bool EveryStart::someone_is_too_late(std::size_t next) const {
  return std::any_of(order_.begin() + static_cast<std::ptrdiff_t>(next), order_.end(), [&](int op) {
    const Window left = window(op);
    return left.from > left.to;
  });
}

}  // namespace dampward::line::detail
