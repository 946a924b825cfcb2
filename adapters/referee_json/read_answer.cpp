#include "adapters/referee_json/detail/fields.h"
#include "adapters/referee_json/read.h"

namespace dampward::referee_json {
namespace {

using Need = Fields::Need;

const std::vector<std::string> obstacles = {"gap",     "cycle",    "skill",   "shift",   "watch",
                                            "station", "capacity", "solvent", "horizon", "stopped"};

}  // namespace

Result<referee::PlanAnswer> read_answer(std::string_view text, const std::string& shown) {
  const auto tree = parse(text, shown);
  if (!tree) return tree.problems();
  Complaints complaints{shown, {}};
  referee::PlanAnswer answer;
  Fields keys(complaints, *tree, "");
  if (!keys.is_object()) return complaints.problems;
  keys.exactly("format", "dampward timetable answer");
  keys.exactly("version", 1);
  keys.each("placements", Need::must, longest_list, [&](Fields& each) {
    answer.placements.push_back({each.id("operation"), each.whole("start_min", any_minute),
                                 each.whole("end_min", any_minute), each.ids("people", Need::must),
                                 each.id_or_null("station")});
  });
  keys.each("oven_stays", Need::must, longest_list, [&](Fields& each) {
    answer.oven_stays.push_back({each.id("load"), each.id("oven"), each.whole("from_min", any_minute),
                                 each.whole("to_min", any_minute)});
  });
  keys.each("late", Need::must, longest_list, [&](Fields& each) {
    answer.late.push_back(
        {each.id("unit"), each.whole("due_min", any_minute), each.whole("finish_min", any_minute)});
  });
  keys.each("unplaced", Need::must, longest_list, [&](Fields& each) {
    answer.unplaced.push_back({each.id_or_null("unit"), each.id("operation"),
                               each.word("obstacle", obstacles, true), each.id_or_null("by"),
                               each.text("reason")});
  });
  answer.finish = keys.whole("finish_min", any_minute);
  keys.close();
  if (!complaints.problems.empty()) return complaints.problems;
  return answer;
}

}  // namespace dampward::referee_json
