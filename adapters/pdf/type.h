#pragma once

#include <pango/pangocairo.h>

#include <memory>

#include "core/papers/page.h"

namespace dampward::pdf {

struct LayoutGone {
  void operator()(PangoLayout* layout) const { g_object_unref(layout); }
};
using Layout = std::unique_ptr<PangoLayout, LayoutGone>;

struct ContextGone {
  void operator()(PangoContext* context) const { g_object_unref(context); }
};
// How text is set on one surface; made once for it, because a context looks its fonts up anew.
using Context = std::unique_ptr<PangoContext, ContextGone>;
Context context_of(cairo_t* cairo);

// The runs as Pango sets them, a millimetre a unit; broken at `width` where that is above zero.
Layout layout_of(PangoContext* context, const papers::Runs& runs, const papers::Type& type, double width);

// Of one line, in millimetres.
double width_of(PangoLayoutLine* line);

}  // namespace dampward::pdf
