#pragma once

#include "core/materials/liquid.h"
#include "core/route/detail/step_list.h"
#include "core/route/route.h"

namespace dampward::route::detail {

// Writes the steps of a route whose way, lists, cleaning and masking are settled.
class Writer {
 public:
  Writer(const Subject& subject, const Means& means, const RouteFacts& facts, const materials::CoatRule& rule,
         Route& route)
      : subject_(subject), means_(means), facts_(facts), rule_(rule), route_(route), list_(facts.version) {}

  void write();

 private:
  void open();
  void clean();
  void cover();
  void dry();
  void coat();
  void finish();

  bool found(std::string_view finding) const;
  Duration touch_dry() const;

  const Subject& subject_;
  const Means& means_;
  const RouteFacts& facts_;
  const materials::CoatRule& rule_;
  Route& route_;
  StepList list_;
  std::string out_of_heat_;  // the step that takes the unit out of oven or cabinet
  std::string last_coat_, last_flash_, film_dry_;
};

}  // namespace dampward::route::detail
