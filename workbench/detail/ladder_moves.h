#pragma once

#include <string>

#include "workbench/detail/ladder_candidates.h"

// What one could change about a shop, each as candidates for a rung: put at the end of `all`, the smaller change first.
namespace dampward::workbench::moves {

using Candidates = std::vector<Candidate>;

// Values as a shop folder writes them.
std::string quoted(const std::string& text);
std::string list_of(const std::vector<std::string>& texts);

// Somebody finds out how hot the part in the way may become.
void measure_part(const Refusal& refusal, const Workshop& workshop, Candidates& all);
void more_air(const shop::SprayPlace& place, Candidates& all);
void drier_air(const shop::SprayPlace& place, Candidates& all);
void smaller_nozzles(const shop::Shop& shop, Candidates& all);
void thin_less(const Workshop& workshop, Candidates& all);
// Of known solvents, without isocyanate.
void other_lacquers(const Workshop& workshop, Candidates& all);
void add_cleaners(const Workshop& workshop, const std::string& soil, Candidates& all);
// Everything hot that counts as near goes elsewhere at once.
void move_heat(const shop::SprayPlace& place, Candidates& all);

// Everybody with the skill (anybody, where none is named) stays longer, each working day.
void longer_shifts(const shop::Shop& shop, const std::string& skill, Candidates& all);
// Somebody learns it, or one more person comes with it.
void more_hands(const shop::Shop& shop, const std::string& skill, Candidates& all);
// One more of each person there is.
void second_of_each(const shop::Shop& shop, Candidates& all);
void more_stations(const shop::Shop& shop, const std::string& skill, Candidates& all);
// A lifting aid, for what is too heavy for the hands there are.
void lifting_aid(const shop::Shop& shop, Candidates& all);
void stronger_supply(const shop::Shop& shop, Candidates& all);
void longer_power(const shop::Shop& shop, Candidates& all);
void more_lamps(const shop::Shop& shop, Candidates& all);
void hotter_settings(const shop::Shop& shop, Candidates& all);

}  // namespace dampward::workbench::moves
