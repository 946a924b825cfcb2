#include "apps/cli/side_by_side.h"

#include <thread>
#include <vector>

namespace dampward::cli {

void side_by_side(std::span<const std::function<void()>> tasks) {
  if (tasks.empty()) return;
  std::vector<std::jthread> threads;
  for (const auto& task : tasks.first(tasks.size() - 1)) threads.emplace_back(task);
  tasks.back()();
}

}  // namespace dampward::cli
