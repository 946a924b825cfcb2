#include "core/solver/detail/activity.h"

namespace dampward::solver::detail {

void Activity::bump_learned(Literal literal) {
  const Literal atom = positive(literal);
  const auto [place, fresh] = known_.try_emplace(key(atom), static_cast<int>(atoms_.size()));
  if (fresh) {
    atoms_.push_back({atom.view / 2, atom.bound});
    insert(place->second);
  }
  bump(place->second);
}

void Activity::bump_met(Literal literal) {
  const auto place = known_.find(key(positive(literal)));
  if (place != known_.end()) bump(place->second);
}

void Activity::bump(int atom) {
  atoms_[atom].activity += step_;
  if (atoms_[atom].activity > 1e100) {
    for (Atom& one : atoms_) one.activity *= 1e-100;
    step_ *= 1e-100;
  }
  if (atoms_[atom].place >= 0) up(atoms_[atom].place);
}

std::optional<Literal> Activity::pick(const Trail& trail) {
  while (!heap_.empty()) {
    const int atom = heap_.front();
    const Literal literal = at_least(atoms_[atom].variable, atoms_[atom].bound);
    const bool holds = trail.holds(literal);
    if (!holds && !trail.fails(literal)) return literal;
    atoms_[atom].place = -1;
    const int last = heap_.back();
    heap_.pop_back();
    if (last != atom) {
      set(0, last);
      down(0);
    }
    const auto level = static_cast<std::size_t>(trail.level_since(holds ? literal : opposite(literal)));
    if (level == 0) continue;  // settled for good
    if (settled_.size() <= level) settled_.resize(level + 1);
    settled_[level].push_back(atom);
  }
  return std::nullopt;
}

void Activity::back_to(int level) {
  for (std::size_t above = static_cast<std::size_t>(level) + 1; above < settled_.size(); ++above) {
    for (const int atom : settled_[above]) insert(atom);
    settled_[above].clear();
  }
}

void Activity::insert(int atom) {
  heap_.push_back(atom);
  set(static_cast<int>(heap_.size()) - 1, atom);
  up(static_cast<int>(heap_.size()) - 1);
}

void Activity::up(int place) {
  const int atom = heap_[place];
  while (place > 0 && above(atom, heap_[(place - 1) / 2])) {
    set(place, heap_[(place - 1) / 2]);
    place = (place - 1) / 2;
  }
  set(place, atom);
}

void Activity::down(int place) {
  const int atom = heap_[place], size = static_cast<int>(heap_.size());
  while (2 * place + 1 < size) {
    int child = 2 * place + 1;
    if (child + 1 < size && above(heap_[child + 1], heap_[child])) ++child;
    if (!above(heap_[child], atom)) break;
    set(place, heap_[child]);
    place = child;
  }
  set(place, atom);
}

}  // namespace dampward::solver::detail
