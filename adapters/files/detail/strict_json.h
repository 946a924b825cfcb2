#pragma once

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/files/json_values.h"
#include "core/base/result.h"
#include "core/line/calendar.h"

namespace dampward::files::detail {

// A whole JSON document. Faults: no JSON (line and column told), or an object that holds a key twice.
Result<Json> parse_json(std::string_view text, const std::string& file);

struct WholeRange {
  std::int64_t least, most;
};

// One object of a document, read key by key. What is wrong goes to the problems, named by its path ("loads[2].bake"), and
// something harmless is returned, so that one reading names every fault. A key nobody asks for is a fault.
class StrictObject {
 public:
  StrictObject(const Json& value, std::string path, std::string file, Problems& problems);

  // The key must be there.
  std::int64_t whole(const char* key, WholeRange range);
  std::string text(const char* key);
  std::vector<StrictObject> objects(const char* key);
  // The key may be missing.
  std::int64_t whole_or(const char* key, std::int64_t otherwise, WholeRange range);
  std::optional<std::int64_t> whole_or_null(const char* key, WholeRange range);
  std::optional<double> number_or_null(const char* key);
  double number_or(const char* key, double otherwise);
  std::string text_or(const char* key,
                      const char* otherwise);  // null counts as missing where `otherwise` is ""
  bool flag_or(const char* key, bool otherwise);
  std::vector<std::string> texts(const char* key);
  std::vector<StrictObject> objects_or_none(const char* key);
  line::Calendar spans(const char* key);
  std::vector<std::vector<std::int64_t>> pairs(const char* key, WholeRange range);
  // Reads nothing but says that the key is known.
  void known(const char* key) { asked_.insert(key); }
  void fault(const char* key, std::string found, std::string expected);
  // To be called when all is read: names the keys that nobody asked for.
  void done();

 private:
  const Json* find(const char* key);
  const Json* must(const char* key, const char* expected);
  std::int64_t whole_of(const Json& value, const char* key, WholeRange range);
  std::vector<StrictObject> items(const Json& value, const char* key);

  const Json* value_;
  std::string path_, file_;
  Problems* problems_;
  std::set<std::string> asked_;
};

}  // namespace dampward::files::detail
