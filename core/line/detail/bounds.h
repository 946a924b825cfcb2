#pragma once

#include <cstddef>
#include <cstdint>

#include "core/line/problem.h"

namespace dampward::line::detail {

// What docs/formats/timetable.md allows a problem to hold. No shop plans ten years ahead, and so sums stay far below
// where minutes and amounts could overflow.
inline constexpr Minute longest_time = 3650 * 24 * 60;
inline constexpr std::size_t most_things = 100'000;
inline constexpr std::size_t most_resources = 1'000;
inline constexpr std::int64_t most_amount = 1'000'000'000'000;
inline constexpr std::int64_t most_weight = 1'000'000;
inline constexpr double most_size = 1e6;  // litres or kilograms
inline constexpr Temperature coldest_setting = Temperature::celsius(-50);
inline constexpr Temperature hottest_setting = Temperature::celsius(400);

}  // namespace dampward::line::detail
