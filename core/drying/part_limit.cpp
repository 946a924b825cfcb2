#include "core/drying/part_limit.h"

#include <algorithm>
#include <vector>

#include "core/base/format.h"

namespace dampward::drying {
namespace {

// A low figure this far under the typical one says more about what is unknown than about the part.
constexpr TemperatureStep wide_spread = 5 * kelvin;

constexpr const char* warm_a_scraping =
    "melt or soften a scraping on a hot plate with a thermometer beside it, and write down at what "
    "temperature";
constexpr const char* read_or_measure =
    "name its material, read a rating printed on it, or warm a scrapped one on a hot plate with a "
    "thermometer beside it";

PartLimit given_limit(const equipment::Part& part) {
  const equipment::GivenLimit& given = *part.limit;
  PartLimit limit;
  limit.part = part.id;
  limit.limit = given.limit;
  limit.margin = given.margin.value_or(default_margin(given.mark));
  limit.mark = given.mark;
  limit.source = given.source;
  limit.settle = warm_a_scraping;
  return limit;
}

PartLimit limit_of(const equipment::Part& part, const materials::Material& material) {
  const materials::HeatLimit& heat = *material.heat_limit;
  PartLimit limit;
  limit.part = part.id;
  limit.limit = heat.limit.value.low;
  limit.margin = heat.margin;
  limit.mark = heat.limit.mark;
  limit.source = heat.limit.source;
  limit.material = material.id;
  limit.why = heat.why;
  limit.settle = heat.limit.settle.empty() ? warm_a_scraping : heat.limit.settle;
  return limit;
}

// What measuring would show, once the deciding material is only one of several or its figure spreads widely.
void weigh_ignorance(PartLimit& lowest, const std::vector<const materials::Material*>& plausible) {
  std::vector<Temperature> typical;
  for (const materials::Material* material : plausible) {
    const Range<Temperature>& range = material->heat_limit->limit.value;
    typical.push_back(range.typical);
    lowest.best_if_measured = std::max(lowest.best_if_measured.value_or(range.high), range.high);
  }
  std::sort(typical.begin(), typical.end());
  const Temperature likely = typical[typical.size() / 2];
  if (likely - lowest.limit < wide_spread) {
    lowest.best_if_measured.reset();
    return;
  }
  lowest.from_ignorance = true;
  lowest.likely_if_measured = likely;
}

}  // namespace

TemperatureStep default_margin(Mark mark) {
  switch (mark) {
    case Mark::read:
      return 5 * kelvin;
    case Mark::measured:
    case Mark::computed:
      return 10 * kelvin;
    case Mark::memory:
    case Mark::estimate:
    case Mark::doubtful:
      break;
  }
  return 15 * kelvin;
}

std::variant<PartLimit, Refusal> resolve_limit(const equipment::Part& part, const MaterialTable& materials) {
  if (part.limit && part.limit->mark == Mark::measured) return given_limit(part);
  if (part.materials.empty()) {
    return Refusal{
        part.id,
        format("nobody knows what \"{}\" is made of, so nobody knows how hot it may become", part.name),
        read_or_measure};
  }
  std::vector<const materials::Material*> plausible;
  for (const MaterialId& id : part.materials) {
    const materials::Material* row = materials.find(id);
    if (!row) {
      return Refusal{
          part.id, format("\"{}\" is made of {}, which is not in the table of materials", part.name, id.text),
          read_or_measure};
    }
    if (!row->heat_limit) {
      return Refusal{part.id, format("no heat limit is known for {} ({})", part.name, row->name),
                     read_or_measure};
    }
    plausible.push_back(row);
  }
  PartLimit lowest = limit_of(part, *plausible.front());
  for (const materials::Material* row : plausible) {
    const PartLimit other = limit_of(part, *row);
    if (other.allowed() < lowest.allowed()) lowest = other;
  }
  if (part.limit) {
    const PartLimit own = given_limit(part);
    if (own.allowed() < lowest.allowed()) lowest = own;
  }
  weigh_ignorance(lowest, plausible);
  return lowest;
}

PartLimit as_if_measured(const PartLimit& limit, Temperature shown) {
  PartLimit measured = limit;
  measured.limit = shown;
  measured.margin = default_margin(Mark::measured);
  measured.mark = Mark::measured;
  measured.from_ignorance = false;
  measured.likely_if_measured.reset();
  measured.best_if_measured.reset();
  return measured;
}

}  // namespace dampward::drying
