#include "core/drying/heat_up.h"

#include <algorithm>

namespace dampward::drying {
namespace {

constexpr double step = 20;                // s
constexpr double longest = 2 * 24 * 3600;  // s
constexpr std::size_t curve_pieces = 24;

// One lump's half-step weight and its temperature so far, in kelvins.
struct Node {
  double weight;       // dt/(2τ)
  double conductance;  // n g, W/K; zero for a heavy lump whose heat is counted with its unit
  double now;
  std::vector<double> history;

  // T(next) = base + share · Ta(next)
  double share() const { return weight / (1 + weight); }
  double base(double air) const { return (now * (1 - weight) + weight * air) / (1 + weight); }
};

TemperatureCurve thinned(const std::vector<double>& history) {
  std::vector<TemperatureCurve::Point> points;
  const std::size_t last = history.size() - 1;
  const std::size_t stride = std::max<std::size_t>(1, (last + curve_pieces - 1) / curve_pieces);
  for (std::size_t i = 0; i < last; i += stride) {
    points.push_back({step * static_cast<double>(i) * second, Temperature::kelvins(history[i])});
  }
  points.push_back({step * static_cast<double>(last) * second, Temperature::kelvins(history[last])});
  return TemperatureCurve(std::move(points));
}

}  // namespace

std::optional<HeatUp> heat_up(const OvenHeat& oven, Temperature room, Temperature set,
                              std::span<const OvenLump> load) {
  const double start = room.kelvins(), target = set.kelvins(), there = (set - reached_within).kelvins();
  std::vector<Node> nodes;  // whole units first, then heavy lumps in the same order
  for (const OvenLump& lump : load) {
    nodes.push_back({step / 2 * lump.exchange.si() / lump.capacity.si(),
                     lump.count * lump.exchange.si(),
                     start,
                     {start}});
  }
  for (const OvenLump& lump : load) {
    const double weight =
        lump.slow ? step / 2 / lump.slow->si() : step / 2 * lump.exchange.si() / lump.capacity.si();
    nodes.push_back({weight, 0, start, {start}});
  }
  const double stored = oven.own.si() / step, half_loss = oven.loss.si() / 2;
  double air = start, joules = 0, time = 0;
  while (std::any_of(nodes.begin(), nodes.end(), [&](const Node& node) { return node.now < there; })) {
    if (time > longest) return std::nullopt;
    double factor = stored + half_loss;
    double sum = stored * air + half_loss * (2 * start - air);  // without the heater
    for (const Node& node : nodes) {
      factor += node.conductance / 2 * (1 - node.share());
      sum -= node.conductance / 2 * (air - node.now - node.base(air));
    }
    const double free_running = (sum + oven.available.si()) / factor;
    const double next = std::min(free_running, target);
    joules += step * (next * factor - sum);
    for (Node& node : nodes) {
      node.now = node.base(air) + node.share() * next;
      node.history.push_back(node.now);
    }
    air = next;
    time += step;
  }
  HeatUp answer{.warm_up = time * second, .whole = {}, .slow = {}, .energy = joules * joule};
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    (i < load.size() ? answer.whole : answer.slow).push_back(thinned(nodes[i].history));
  }
  return answer;
}

}  // namespace dampward::drying
