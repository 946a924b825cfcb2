// How the time of a plan grows with the queue: the demo's kinds, 14 to 500 units, in one run. Ratios are against 14 units.

#include <chrono>
#include <cmath>
#include <cstdio>
#include <filesystem>

#include "adapters/files/shop_folder.h"
#include "benchmarks/repeated_queue.h"
#include "workbench/plan.h"

namespace {

using namespace dampward;

double seconds_of(const workbench::Workshop& workshop, const Repeated& store) {
  const auto start = std::chrono::steady_clock::now();
  const auto plan = workbench::make_plan(workshop, store, {});
  if (!plan) std::puts("no plan");
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

}  // namespace

int main() {
  const std::filesystem::path demo = std::filesystem::path(DAMPWARD_SOURCE_DIR) / "data/demo";
  const auto workshop = files::read_workshop(demo);
  if (!workshop) return 1;
  const auto queue = files::FolderRecords(demo, *workshop).queue();
  if (!queue) return 1;
  std::puts("Plan of so many units (baseline: the 14 of the demo, same run)");
  double base = 0, last = 0;
  std::size_t last_count = 0;
  for (const std::size_t count : {std::size_t{14}, std::size_t{56}, std::size_t{224}, std::size_t{500}}) {
    const double seconds = seconds_of(*workshop, repeated(*queue, count));
    if (base == 0) base = seconds;
    std::printf("  %4zu units  %7.3f s  ratio %7.1f", count, seconds, seconds / base);
    if (last > 0) {
      std::printf(
          "  growth exponent %.2f",
          std::log(seconds / last) / std::log(static_cast<double>(count) / static_cast<double>(last_count)));
    }
    std::puts("");
    last = seconds;
    last_count = count;
  }
}
