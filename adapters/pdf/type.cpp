#include "adapters/pdf/type.h"

#include <string>

namespace dampward::pdf {
namespace {

constexpr double millimetres_a_point = 25.4 / 72;
constexpr double unit_share = 0.66;  // of the figure's size

std::string escaped(const std::string& text) {
  char* safe = g_markup_escape_text(text.c_str(), static_cast<gssize>(text.size()));
  std::string copy = safe;
  g_free(safe);
  return copy;
}

// Pango's own markup; sizes in 1024ths of a point would meet its resolution, so spans tell them as a share.
std::string markup_of(const papers::Runs& runs, const papers::Type& type) {
  const bool figures = type.columns || type.points >= papers::clock_size;
  std::string markup = std::string("<span font_features=\"tnum=") + (figures ? "1" : "0") +
                       ",cv05=1,cv08=" + (type.points >= papers::name_size ? "0" : "1") + "\">";
  for (const papers::Run& run : runs) {
    std::string attributes;
    if (run.weight > 0) attributes += " weight=\"" + std::to_string(run.weight) + "\"";
    if (run.unit) attributes += " size=\"" + std::to_string(static_cast<int>(100 * unit_share)) + "%\"";
    markup +=
        attributes.empty() ? escaped(run.text) : "<span" + attributes + ">" + escaped(run.text) + "</span>";
  }
  return markup + "</span>";
}

}  // namespace

Context context_of(cairo_t* cairo) {
  Context context(pango_cairo_create_context(cairo));
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context.get(), options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(context.get(), FALSE);
  return context;
}

Layout layout_of(PangoContext* context, const papers::Runs& runs, const papers::Type& type, double width) {
  Layout layout(pango_layout_new(context));
  PangoFontDescription* font = pango_font_description_new();
  pango_font_description_set_family(font, type.points >= papers::clock_size
                                              ? "Inter Display, DejaVu Sans Condensed, sans"
                                              : "Inter, DejaVu Sans Condensed, sans");
  pango_font_description_set_weight(font, static_cast<PangoWeight>(type.weight));
  pango_font_description_set_absolute_size(font, type.points * millimetres_a_point * PANGO_SCALE);
  pango_layout_set_font_description(layout.get(), font);
  pango_font_description_free(font);
  pango_layout_set_markup(layout.get(), markup_of(runs, type).c_str(), -1);
  if (width > 0) {
    pango_layout_set_width(layout.get(), static_cast<int>(width * PANGO_SCALE));
    pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
  }
  return layout;
}

double width_of(PangoLayoutLine* line) {
  PangoRectangle extents;
  pango_layout_line_get_extents(line, nullptr, &extents);
  return static_cast<double>(extents.width) / PANGO_SCALE;
}

}  // namespace dampward::pdf
