#include "core/coating/flow_cup.h"

#include <array>
#include <cmath>
#include <string>

#include "core/base/format.h"

namespace dampward::coating {
namespace {

constexpr std::string_view table = "a cup maker's table after ASTM D4212 and D1200 (read)";
constexpr std::string_view iso = "ISO 2431 (from memory)";

// The table prints drain ranges beside Zahn 1 and 5 and the Ford cups; 20 to 80 s is taken for the other Zahn and the Shell cups.
constexpr std::array cups{
    FlowCup{"zahn_1", "Zahn 1", 1.1, 29, 0, 35 * second, 80 * second, Mark::read, table},
    FlowCup{"zahn_2", "Zahn 2", 3.5, 14, 0, 20 * second, 80 * second, Mark::read, table},
    FlowCup{"zahn_3", "Zahn 3", 11.7, 7.5, 0, 20 * second, 80 * second, Mark::read, table},
    FlowCup{"zahn_4", "Zahn 4", 14.8, 5, 0, 20 * second, 80 * second, Mark::read, table},
    FlowCup{"zahn_5", "Zahn 5", 23, 0, 0, 20 * second, 80 * second, Mark::read, table},
    FlowCup{"shell_1", "Shell 1", 0.226, 13, 0, 20 * second, 80 * second, Mark::read, table},
    FlowCup{"shell_2", "Shell 2", 0.576, 5, 0, 20 * second, 80 * second, Mark::read, table},
    FlowCup{"shell_2_5", "Shell 2.5", 0.925, 3, 0, 20 * second, 80 * second, Mark::read, table},
    FlowCup{"shell_3", "Shell 3", 1.51, 2, 0, 20 * second, 80 * second, Mark::read, table},
    FlowCup{"shell_3_5", "Shell 3.5", 2.17, 1.5, 0, 20 * second, 80 * second, Mark::read, table},
    FlowCup{"shell_4", "Shell 4", 3.45, 1, 0, 20 * second, 80 * second, Mark::read, table},
    FlowCup{"shell_5", "Shell 5", 6.5, 1, 0, 20 * second, 80 * second, Mark::read, table},
    FlowCup{"shell_6", "Shell 6", 16.2, 0.5, 0, 20 * second, 80 * second, Mark::read, table},
    FlowCup{"ford_1", "Ford 1", 0.49, 35, 0, 55 * second, 100 * second, Mark::read, table},
    FlowCup{"ford_2", "Ford 2", 1.44, 18, 0, 40 * second, 100 * second, Mark::read, table},
    FlowCup{"ford_3", "Ford 3", 2.31, 6.58, 0, 20 * second, 100 * second, Mark::memory,
            "ASTM D1200 (formula from memory)"},
    FlowCup{"ford_4", "Ford 4", 3.85, 4.49, 0, 20 * second, 100 * second, Mark::memory,
            "ASTM D1200 (formula from memory)"},
    FlowCup{"din_4", "DIN 4 mm", 4.57, 0, 452, 25 * second, 150 * second, Mark::memory,
            "DIN 53211 (from memory)"},
    FlowCup{"iso_3", "ISO 3 mm", 0.443, 0, 200, 30 * second, 100 * second, Mark::memory, iso},
    FlowCup{"iso_4", "ISO 4 mm", 1.37, 0, 200, 30 * second, 100 * second, Mark::memory, iso},
    FlowCup{"iso_5", "ISO 5 mm", 3.28, 0, 220, 30 * second, 100 * second, Mark::memory, iso},
    FlowCup{"iso_6", "ISO 6 mm", 6.90, 0, 570, 30 * second, 100 * second, Mark::memory, iso},
};

double formula(const FlowCup& cup, double t) {
  return cup.per_second * (t - cup.dead_time) - cup.inertia / t;
}

Problem out_of_range(const FlowCup& cup, const std::string& found, bool too_thin) {
  return {{},
          found,
          format("{} tells viscosity between {} and {} s.", cup.name, fixed(cup.shortest.in(second), 0),
                 fixed(cup.longest.in(second), 0)),
          too_thin ? "Take a cup with a smaller hole." : "Take a cup with a larger hole."};
}

}  // namespace

std::span<const FlowCup> flow_cups() {
  return cups;
}

const FlowCup* find_cup(std::string_view id) {
  for (const FlowCup& cup : cups) {
    if (cup.id == id) return &cup;
  }
  return nullptr;
}

Result<KinematicViscosity> viscosity(const FlowCup& cup, Duration drain) {
  if (!(drain >= cup.shortest && drain <= cup.longest)) {
    return out_of_range(cup, format("{} drained in {} s.", cup.name, fixed(drain.in(second), 1)),
                        drain < cup.shortest);
  }
  return formula(cup, drain.in(second)) * centistokes;
}

Result<Duration> drain_time(const FlowCup& cup, KinematicViscosity viscosity) {
  const double nu = viscosity.in(centistokes);
  // ν = a t − a b − c / t, solved for t.
  const double p = (nu + cup.per_second * cup.dead_time) / cup.per_second, q = cup.inertia / cup.per_second;
  const Duration drain = 0.5 * (p + std::sqrt(p * p + 4 * q)) * second;
  if (!(drain >= cup.shortest && drain <= cup.longest)) {
    return out_of_range(cup,
                        format("A liquid of {} mm²/s would drain from {} in {} s.", fixed(nu, 1), cup.name,
                               fixed(drain.in(second), 1)),
                        drain < cup.shortest);
  }
  return drain;
}

}  // namespace dampward::coating
