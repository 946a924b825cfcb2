#include "core/exposure/mould.h"
#include "workbench/detail/published_quantities.h"

#include <limits>

namespace dampward::workbench {
namespace {

using namespace exposure;

double mould_ceiling(PublishedInputs& in) {
  const std::string word = in.word("class");
  const Temperature surface = Temperature::celsius(in.number("t_c"));
  const RelativeHumidity humidity = RelativeHumidity::percent(in.number("rh_pct"));
  for (MouldClass mould_class : mould_classes) {
    if (name(mould_class) == word) return highest_index(mould_class, surface, humidity);
  }
  return std::numeric_limits<double>::quiet_NaN();
}

constexpr PublishedQuantity quantities[] = {
    {"mould_ceiling", "mould index at which growth stops", mould_ceiling},
};

}  // namespace

std::span<const PublishedQuantity> exposure_quantities() {
  return quantities;
}

}  // namespace dampward::workbench
