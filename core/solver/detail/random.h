#pragma once

#include <cstdint>

namespace dampward::solver::detail {

// SplitMix64 (Steele, Lea and Flood 2014): the same numbers from the same seed on every machine.
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}

  std::uint64_t next() {
    std::uint64_t z = state_ += 0x9e3779b97f4a7c15u;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    return z ^ (z >> 31);
  }
  // From 0 up to, not including, the count, which is above zero.
  int below(int count) { return static_cast<int>((next() >> 32) * static_cast<std::uint64_t>(count) >> 32); }
  // From low to high, both included.
  int between(int low, int high) { return low + below(high - low + 1); }

 private:
  std::uint64_t state_;
};

}  // namespace dampward::solver::detail
