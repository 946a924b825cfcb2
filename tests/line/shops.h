#pragma once

#include <cstdint>
#include <random>
#include <string>

#include "core/line/problem.h"

namespace dampward::line::test {

// A small workshop whose day lasts 600 min: on shift from 0 to 480 with a break from 240 to 270. Two people who can do all,
// one booth, one oven powered all the while, vapour for one coat at a time.
Problem small_shop(int days);

// Adds one unit with the chain test - load - bake - unload - coat 1 - flash - coat 2 - flash - mark to a load of its own
// or to one that is there; the first coat within `window` minutes of the unloading, the second at most 30 after its flash.
void add_unit(Problem& problem, const std::string& id, const std::string& load, Minute bake, Minute window);

enum class Window {
  wide,         // longest gaps up to 40 minutes longer than the plan needs
  tight,        // longest gaps under 20 minutes where the plan allows it
  beside_oven,  // wide, and the oven may not be hot while anybody coats
};

// A random shop with at most six units around a plan that keeps every rule; the plan is lost, the shop repeats for many
// days.
Problem planted(std::uint32_t seed, Window window);

// The same problem written down in another order.
Problem shuffled(Problem problem, std::uint32_t seed);

}  // namespace dampward::line::test
