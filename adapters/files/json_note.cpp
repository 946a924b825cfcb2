#include "adapters/files/event_log.h"
#include "adapters/files/json_documents.h"
#include "adapters/files/json_values.h"

namespace dampward::files {

std::string note_json(const history::Event& event, const std::string& hash) {
  return document(
      {{"verb", "note"}, {"file", log_name}, {"event", event.id}, {"hash", hash}, {"faults", Json::array()}});
}

}  // namespace dampward::files
