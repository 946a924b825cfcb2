#include "core/shop/costs.h"

#include <array>
#include <cstddef>

namespace dampward::shop {
namespace {

// Estimates: what an hour of work buys differs tenfold over the world, and so do prices. They serve to say which change to try
// first, and docs/formats/shop-folder.md says so.
constexpr CostRow rows[] = {
    {Cost::measuring, "measuring", 1, "one part measured on the hot plate"},
    {Cost::thinning, "thinning", 0.2, "the lacquer mixed otherwise"},
    {Cost::moving, "moving", 2, "one hot thing moved elsewhere"},
    {Cost::lamp, "lamp", 2, "one lamp more"},
    {Cost::setting, "setting", 6, "a thermostat that reaches further"},
    {Cost::power_hour, "power_hour", 4, "one oven an hour longer under power each day"},
    {Cost::shift_hour, "shift_hour", 5, "one person an hour longer each working day"},
    {Cost::person, "person", 40, "one more person for a week"},
    {Cost::training, "training", 30, "one person who learns a skill"},
    {Cost::station, "station", 8, "one more place for a kind of work"},
    {Cost::fan, "fan", 1, "1 m³/min of fresh air more"},
    {Cost::lifting, "lifting", 2, "a lifting aid that takes 10 kg more"},
    {Cost::kilowatt, "kilowatt", 10, "a generator that gives 1 kW more"},
    {Cost::dry_air, "dry_air", 60, "dried air for the spray place"},
    {Cost::nozzle, "nozzle", 4, "a smaller nozzle for a gun"},
    {Cost::brush, "brush", 1, "a brush"},
    {Cost::cleaner, "cleaner", 3, "a cleaner"},
    {Cost::lacquer, "lacquer", 20, "another lacquer with its thinner"},
    {Cost::way_out, "way_out", 40, "a door that opens outward"},
};

}  // namespace

std::span<const CostRow> cost_rows() {
  return rows;
}

double Costs::of(Cost cost) const {
  const auto said = own.find(cost);
  return said != own.end() ? said->second : rows[static_cast<std::size_t>(cost)].usual;
}

}  // namespace dampward::shop
