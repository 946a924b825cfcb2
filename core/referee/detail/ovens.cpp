#include <algorithm>
#include <map>

#include "core/referee/detail/rules.h"
#include "core/referee/detail/shares.h"

namespace dampward::referee {
namespace {

void say(const std::string& load, const std::string& oven, const std::string& sentence, Violations& found) {
  found.push_back({"oven",
                   oven.empty() ? std::vector<std::string>{load} : std::vector<std::string>{load, oven},
                   sentence});
}

void judge_stay(const Case& open, const LoadWork& work, Violations& found) {
  const Load& load = *work.load;
  const OvenStay* told = open.stay(load.id);
  if (!told) {
    say(load.id, "", format("Load \"{}\" is in the answer, but no oven stay is told for it.", load.id),
        found);
    return;
  }
  if (told->from != work.stay.from || told->to != work.stay.to) {
    say(load.id, told->oven,
        format("Load \"{}\" is said to keep its oven from minute {} to {}, but it does from {} to {}.",
               load.id, told->from, told->to, work.stay.from, work.stay.to),
        found);
  }
  if (!work.oven) return;
  if (const std::string* fixed = open.fixed_oven(load).id) {
    if (told->oven != *fixed)
      say(load.id, told->oven,
          format("Load \"{}\" is told in oven \"{}\", but what is fixed of it is in \"{}\".", load.id,
                 told->oven, *fixed),
          found);
  } else if (std::count(load.ovens.begin(), load.ovens.end(), told->oven) == 0) {
    say(load.id, told->oven,
        format("Load \"{}\" is in oven \"{}\", which it may not use.", load.id, told->oven), found);
  }
}

void judge_clashes(const Case& open, Violations& found) {
  std::map<std::string_view, std::vector<Share>> stays;
  for (const LoadWork& work : open.loads()) {
    if (!work.oven) continue;
    std::vector<Share>& shares = stays[work.oven->id];
    if (work.fixed_stay) shares.push_back({*work.fixed_stay, 1, true, work.load->id});
    for (const Span& rest : without(work.stay, work.fixed_stay))
      shares.push_back({rest, 1, false, work.load->id});
  }
  for (const auto& [oven, shares] : stays) {
    for (const Clash& clash : clashes(shares)) {
      found.push_back({"oven",
                       {std::string(oven), std::string(clash.first), std::string(clash.second)},
                       format("Loads \"{}\" and \"{}\" are both in oven \"{}\" from minute {} to {}.",
                              clash.first, clash.second, oven, clash.when.from, clash.when.to)});
    }
  }
}

}  // namespace

void judge_ovens(const Case& open, Violations& found) {
  for (const LoadWork& work : open.loads()) judge_stay(open, work, found);
  for (const OvenStay& told : open.answer.oven_stays) {
    const Load* load = open.load(told.load);
    const auto there = [&](const LoadWork& work) { return work.load == load; };
    if (load && std::none_of(open.loads().begin(), open.loads().end(), there))
      say(told.load, told.oven,
          format("An oven stay is told for load \"{}\", of which nothing is in the answer.", told.load),
          found);
  }
  judge_clashes(open, found);
}

}  // namespace dampward::referee
