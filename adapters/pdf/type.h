#pragma once

#include <pango/pangocairo.h>

#include <memory>

#include "core/papers/page.h"

namespace dampward::pdf {

struct LayoutGone {
  void operator()(PangoLayout* layout) const { g_object_unref(layout); }
};
using Layout = std::unique_ptr<PangoLayout, LayoutGone>;

// The runs as Pango sets them, a millimetre a unit; broken at `width` where that is above zero.
Layout layout_of(cairo_t* cairo, const papers::Runs& runs, const papers::Type& type, double width);

// Of one line, in millimetres.
double width_of(PangoLayoutLine* line);

}  // namespace dampward::pdf
