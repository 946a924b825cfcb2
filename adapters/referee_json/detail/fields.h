#pragma once

#include <optional>
#include <string>
#include <vector>

#include "adapters/referee_json/detail/tree.h"
#include "core/base/problem.h"
#include "core/referee/problem.h"

namespace dampward::referee_json {

// Where complaints go.
struct Complaints {
  std::string file;
  Problems problems;
  void add(const Value& where, const std::string& path, const std::string& found,
           const std::string& expected);
};

// The smallest and the largest figure allowed.
struct Limits {
  std::int64_t least = 0, most = 0;
};
inline constexpr std::int64_t furthest = 5'256'000;  // minutes, ten years
inline constexpr Limits any_minute{-furthest, furthest};
inline constexpr Limits some_minutes{0, furthest};

struct RealLimits {
  double least = 0, most = 0;
};

// The keys of one JSON object. Each is asked for once; a wrong value is complained of and read as its default. What was never
// asked for is unknown, and `close` says so. "Must" keys have no default.
class Fields {
 public:
  Fields(Complaints& complaints, const Value& value, std::string path);

  std::int64_t whole(const char* key, Limits limits);
  std::int64_t whole(const char* key, Limits limits, std::int64_t otherwise);
  // Null, or not there: none.
  std::optional<std::int64_t> whole_or_none(const char* key, Limits limits);
  double real(const char* key, RealLimits limits, double otherwise);
  std::optional<double> real_or_none(const char* key, RealLimits limits);
  bool truth(const char* key, bool otherwise);
  std::string id(const char* key);    // must; at least one letter
  std::string text(const char* key);  // must
  std::string text(const char* key, const std::string& otherwise);
  std::optional<std::string> id_or_none(const char* key);
  std::optional<std::string> id_or_null(const char* key);  // must; null: none
  // One of the words, or the first of them.
  std::string word(const char* key, const std::vector<std::string>& words, bool must);
  void exactly(const char* key, const std::string& text);
  void exactly(const char* key, std::int64_t number);

  enum class Need { must, may };
  std::vector<std::string> ids(const char* key, Need need);
  // [[from, to], …]; both any minute.
  std::vector<referee::Span> spans(const char* key);
  // [[from, amount], …]
  std::vector<referee::Step> steps(const char* key);
  // Every object of a list.
  template <class Read>
  void each(const char* key, Need need, std::size_t most, Read read) {
    const Value* value = list(key, need, most);
    if (!value) return;
    for (std::size_t i = 0; i < value->items.size(); ++i) {
      Fields item(*complaints_, value->items[i], path_of(key, i));
      if (!item.is_object()) continue;
      read(item);
      item.close();
    }
  }

  bool is_object() const { return value_->is(Value::Kind::object); }
  void close();
  void complain(const char* key, const std::string& found, const std::string& expected);

 private:
  const Value* take(const char* key, Need need);
  const Value* list(const char* key, Need need, std::size_t most);
  std::optional<std::int64_t> number(const Value& value, const std::string& path, Limits limits);
  std::vector<std::pair<std::int64_t, std::int64_t>> pairs(const char* key, Limits second);
  std::string path_of(const std::string& key) const;
  std::string path_of(const std::string& key, std::size_t i) const;

  Complaints* complaints_;
  const Value* value_;
  std::string path_;
  std::vector<std::string> known_;
};

inline constexpr std::size_t longest_list = 100'000;

}  // namespace dampward::referee_json
