// What all sheets of a plan cost: the demo's 13 treated units and a queue of 60. Baseline: planning the demo alone, same run.
// Budget: the demo with all its sheets in 5 s on the machine at hand.

#include <sys/resource.h>

#include <chrono>
#include <cstdio>
#include <filesystem>

#include "adapters/files/messages.h"
#include "adapters/files/shop_folder.h"
#include "apps/cli/plan_output.h"
#include "benchmarks/repeated_queue.h"
#include "workbench/plan.h"

namespace {

using namespace dampward;

double since(std::chrono::steady_clock::time_point start) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

}  // namespace

int main() {
  const std::filesystem::path demo = std::filesystem::path(DAMPWARD_SOURCE_DIR) / "data/demo";
  const auto workshop = files::read_workshop(demo);
  if (!workshop) return 1;
  const auto queue = files::FolderRecords(demo, *workshop).queue();
  const auto words = files::sheet_words("en");
  if (!queue || !words) return 1;
  std::puts("Plan and print all sheets (baseline: planning the 14 units of the demo, same run)");
  double base = 0;
  for (const std::size_t count : {std::size_t{14}, std::size_t{60}}) {
    auto start = std::chrono::steady_clock::now();
    const auto plan = workbench::make_plan(*workshop, repeated(*queue, count), {});
    if (!plan) return 1;
    const double planning = since(start);
    if (base == 0) base = planning;
    start = std::chrono::steady_clock::now();
    const auto files = cli::output_of(*plan, {papers::a4, *words});
    const double printing = since(start);
    std::size_t bytes = 0;
    for (const auto& file : files) bytes += file.bytes.size();
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    std::printf(
        "  %3zu units  plan %6.3f s (ratio %5.1f)  %3zu files %6.2f s (ratio %5.1f)  %5.1f MB  peak memory "
        "%ld MiB\n",
        count, planning, planning / base, files.size(), printing, printing / base,
        static_cast<double>(bytes) / 1e6, used.ru_maxrss / 1024);
  }
}
