#pragma once

namespace dampward {

// What one figure may be: its lowest and highest believable values around the typical one. low ≤ typical ≤ high.
template <class T>
struct Range {
  T low{};
  T typical{};
  T high{};

  constexpr Range() = default;
  constexpr Range(T exact) : low(exact), typical(exact), high(exact) {}
  constexpr Range(T lowest, T usual, T highest) : low(lowest), typical(usual), high(highest) {}

  constexpr bool ordered() const { return low <= typical && typical <= high; }
  constexpr bool exact() const { return low == high; }
  friend constexpr bool operator==(const Range&, const Range&) = default;
};

}  // namespace dampward
