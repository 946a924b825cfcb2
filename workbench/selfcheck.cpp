#include "workbench/selfcheck.h"

#include <cmath>
#include <set>

#include "core/base/format.h"
#include "core/base/text.h"
#include "workbench/detail/published_quantities.h"

namespace dampward::workbench {
namespace {

Check compared(const PublishedRow& row, double computed) {
  Check check;
  check.id = row.id;
  check.model = row.model;
  check.quantity = row.quantity;
  check.inputs = row.inputs;
  check.unit = row.unit;
  check.published = row.published;
  check.computed = computed;
  check.difference = computed - row.published;
  check.tolerance = row.relative ? row.tolerance * std::abs(row.published) : row.tolerance;
  check.within = std::abs(check.difference) <= check.tolerance;  // false for no number
  check.tolerance_reason = row.tolerance_reason;
  check.source = row.source;
  check.note = row.note;
  check.read = row.read;
  return check;
}

}  // namespace

const PublishedQuantity* find_quantity(std::string_view name) {
  for (const auto quantities : {moist_air_quantities(), material_quantities(), drying_quantities(),
                                coating_quantities(), room_air_quantities(), exposure_quantities()}) {
    for (const PublishedQuantity& quantity : quantities) {
      if (quantity.name == name) return &quantity;
    }
  }
  return nullptr;
}

Result<SelfCheck> selfcheck(std::span<const PublishedRow> rows) {
  SelfCheck result;
  Problems problems;
  std::set<std::string> ids;
  for (const PublishedRow& row : rows) {
    const auto fault = [&](std::string found, std::string expected) {
      problems.push_back({row.place, std::move(found), std::move(expected), ""});
    };
    if (!ids.insert(row.id).second)
      fault(format("the id \"{}\" a second time", row.id), "every row's own id");
    if (!(row.tolerance > 0)) fault("a tolerance that is not above zero", "how far the value may miss");
    if (trimmed(row.source).empty()) fault("no source", "who printed the value, and where it was read");
    if (trimmed(row.tolerance_reason).empty()) fault("no reason for the tolerance", "why it is not tighter");
    const PublishedQuantity* quantity = find_quantity(row.quantity);
    if (quantity == nullptr) {
      fault(format("the quantity \"{}\", which no model computes", row.quantity),
            "one of those listed in docs/validation.md");
      continue;
    }
    PublishedInputs inputs(row.inputs);
    const double computed = quantity->compute(inputs);
    const std::vector<std::string> complaints = inputs.complaints();
    for (const std::string& complaint : complaints) {
      fault(format("inputs of {} that do not fit: {}", row.quantity, complaint),
            "every input once, and no other");
    }
    if (!complaints.empty()) continue;
    result.checks.push_back(compared(row, computed));
    const Check& check = result.checks.back();
    ++(check.read ? result.rows : result.from_memory);
    result.out_of_tolerance += check.read && !check.within;
  }
  if (!problems.empty()) return problems;
  return result;
}

}  // namespace dampward::workbench
