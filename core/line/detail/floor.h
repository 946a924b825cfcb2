#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/line/answer.h"
#include "core/line/detail/level.h"
#include "core/line/detail/model.h"

namespace dampward::line::detail {

// Where one operation stands.
struct Spot {
  Minute start = 0, end = 0;
  std::vector<int> people;
  int station = -1;
};

// What an oven has against a spot.
struct Against {
  Obstacle obstacle = Obstacle::horizon;
  std::string by;
};

// Who may do an operation and where: all who can, or only some of them.
struct Choice {
  const std::vector<int>& people;
  const std::vector<int>& stations;
};

// What came of looking for a spot: one, or the operation that would have to move (itself: none before the horizon) and the
// earliest minute that would help.
struct Search {
  std::optional<Spot> spot;
  int move = -1;
  Minute to = 0;
  Against against{};
};

// The shop floor over time: who and what is free once everything placed so far is counted. What is fixed stands from the
// beginning and for good.
class Floor {
 public:
  explicit Floor(const Model& model);

  // The earliest spot at or after `from`. Only rules of people, places, capacities, calendars and ovens; gaps are the
  // caller's. A bake or unloading needs its load's loadings placed, an unloading its bake.
  Search find(int op, Minute from);
  // The same with these people and at these stations alone.
  Search find(int op, Minute from, const Choice& choice);
  void place(int op, const Spot& spot);
  void take_out(int op);
  void choose_oven(int load, int oven) { stays_[static_cast<std::size_t>(load)].oven = oven; }
  // What is in the oven and will not be taken out keeps it to the horizon.
  void keep_to_horizon(int load);
  // The oven that, by being hot or cooling, keeps the solvent of this operation from a spot that begins by `latest`; empty:
  // none does, it would not find one in any case.
  std::string hot_oven_against(int op, Minute from, Minute latest);

  bool placed(int op) const { return spots_[static_cast<std::size_t>(op)].has_value(); }
  const Spot& spot(int op) const { return *spots_[static_cast<std::size_t>(op)]; }
  int oven_of(int load) const { return stays_[static_cast<std::size_t>(load)].oven; }
  // First loading to last unloading, as far as they are placed; empty: nothing of it is.
  Span stay_of(int load) const;
  bool stands_near_solvent(int oven) const {
    return model_.ovens[static_cast<std::size_t>(oven)]->near_solvent;
  }
  // Spots looked for so far: a measure of work that is the same on every machine.
  std::int64_t work() const { return work_; }

 private:
  struct Stay {
    int oven = -1;
    Span held{0, 0};  // of the oven
    Span heat{0, 0};  // held by the bake's demands, tails and cooling not counted
    bool kept = false;
  };
  // The oven's heat from the start of the bake to the last unloading; empty without a bake.
  Span heat_of(int load) const;
  void hold(int load, int sign);
  std::optional<Spot> people_at(const Op& op, int number, Minute at, const std::vector<int>& people) const;
  std::optional<Minute> people_from(const Op& op, Minute from, const std::vector<int>& people) const;
  Minute end_with_breaks(const std::vector<int>& people, Minute start, Minute length) const;
  bool person_fits(int person, const Op& op, Minute start, Minute end) const;
  std::optional<Minute> person_from(int person, const Op& op, Minute from) const;
  std::optional<Search> oven_refuses(int op, const Spot& spot);
  std::optional<Search> heat_refuses(int op, const Spot& spot) const;
  void use(const Op& op, const Spot& spot, int sign);
  std::optional<Minute> earliest(int number, Minute from, const Choice& choice, Spot& spot) const;

  const Model& model_;
  std::vector<Level> working_, present_;  // people: between breaks; on shift, breaks or not
  std::vector<Calendar> breaks_;
  std::vector<Level> watch_;                          // by skill: somebody on shift
  std::vector<Level> stations_, ovens_, capacities_;  // places or amounts left
  std::vector<std::vector<Level>> watched_heat_;      // by skill and oven: somebody on shift, and power
  Level open_solvent_{0}, heat_near_{0};              // one less for each that runs, clears or cools
  bool heat_ignored_ = false;                         // only while asking what would be without it
  std::vector<std::optional<Spot>> spots_;
  std::vector<Stay> stays_;
  std::int64_t work_ = 0;
};

}  // namespace dampward::line::detail
