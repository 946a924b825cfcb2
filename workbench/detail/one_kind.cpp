#include "workbench/detail/one_kind.h"

#include "core/base/format.h"

namespace dampward::workbench {

OneKind::OneKind(const records::RecordStore& shop, KindId kind, int count)
    : shop_(shop), kind_(std::move(kind)), count_(count) {}

Result<records::Queue> OneKind::queue() const {
  auto queue = shop_.queue();
  if (!queue) return queue.problems();
  records::Queue only;
  only.starts = queue->starts;
  for (int i = 1; i <= count_; ++i)
    only.units.push_back({UnitId(format("{}-{}", kind_.text, i)), kind_, {}, {}, {}, 0, "", {}});
  return only;
}

}  // namespace dampward::workbench
