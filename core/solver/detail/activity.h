#pragma once

#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

#include "core/solver/detail/trail.h"

namespace dampward::solver::detail {

// Which bounds matter: those that took part in conflicts lately (variable state independent decaying sum, Moskewicz et al.
// 2001). A bound is known here from the first learned clause it stands in.
class Activity {
 public:
  // A literal that stands in a learned clause.
  void bump_learned(Literal literal);
  // One that was met on the way; counted only where it is known already.
  void bump_met(Literal literal);
  void decay() { step_ *= 1 / 0.95; }

  // The most active bound that is open, as "x is at least v"; none: all known ones are settled.
  std::optional<Literal> pick(const Trail& trail);
  // To be told before the trail goes back to the level.
  void back_to(int level);

 private:
  struct Atom {
    int variable, bound;  // x >= bound
    double activity = 0;
    int place = -1;  // in the heap
  };
  static Literal positive(Literal literal) { return literal.view % 2 == 0 ? literal : opposite(literal); }
  static std::uint64_t key(Literal literal) {
    return static_cast<std::uint64_t>(static_cast<std::uint32_t>(literal.view)) << 32 |
           static_cast<std::uint32_t>(literal.bound);
  }
  void bump(int atom);
  bool above(int a, int b) const {
    return atoms_[a].activity != atoms_[b].activity ? atoms_[a].activity > atoms_[b].activity : a < b;
  }
  void insert(int atom);
  void up(int place);
  void down(int place);
  void set(int place, int atom) {
    heap_[place] = atom;
    atoms_[atom].place = place;
  }

  std::vector<Atom> atoms_;
  std::unordered_map<std::uint64_t, int> known_;
  std::vector<int> heap_;
  std::vector<std::vector<int>> settled_;  // taken off the heap, by the level since which they are settled
  double step_ = 1;
};

}  // namespace dampward::solver::detail
