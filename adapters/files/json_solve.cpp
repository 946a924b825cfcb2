#include "adapters/files/detail/timetable_words.h"
#include "adapters/files/json_documents.h"
#include "adapters/files/json_values.h"

namespace dampward::files {

std::string solve_json(const line::Problem& problem, const line::Answer& answer) {
  Json late = Json::array(), unplaced = Json::array();
  for (const line::Lateness& it : answer.late) late.push_back(detail::late_json(it));
  for (const line::Unplaced& it : answer.unplaced) unplaced.push_back(detail::unplaced_json(it));
  return document({{"verb", "solve"},
                   {"units", problem.units.size()},
                   {"operations", problem.operations.size()},
                   {"placed", answer.placements.size()},
                   {"late", late},
                   {"unplaced", unplaced},
                   {"finish_min", answer.finish},
                   {"violations", Json::array()},
                   {"faults", Json::array()}});
}

}  // namespace dampward::files
