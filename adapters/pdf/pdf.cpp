#include "adapters/pdf/pdf.h"

#include <cairo-pdf.h>

#include <cmath>
#include <numbers>
#include <unordered_map>

#include "adapters/pdf/code.h"
#include "adapters/pdf/image.h"
#include "adapters/pdf/type.h"
#include "core/base/promise.h"

namespace dampward::pdf {
namespace {

constexpr double points_a_millimetre = 72 / 25.4;

struct Gone {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* cairo) const { cairo_destroy(cairo); }
};
using Surface = std::unique_ptr<cairo_surface_t, Gone>;
using Cairo = std::unique_ptr<cairo_t, Gone>;

void ink(cairo_t* cairo, papers::Ink ink) {
  switch (ink) {
    case papers::Ink::black:
      return cairo_set_source_rgb(cairo, 18 / 255.0, 18 / 255.0, 18 / 255.0);
    case papers::Ink::petrol:
      return cairo_set_source_rgb(cairo, 0, 88 / 255.0, 105 / 255.0);
    case papers::Ink::plain:
      return cairo_set_source_rgb(cairo, 69 / 255.0, 69 / 255.0, 69 / 255.0);
    case papers::Ink::tint:
      return cairo_set_source_rgb(cairo, 219 / 255.0, 232 / 255.0, 235 / 255.0);
    case papers::Ink::white:
      return cairo_set_source_rgb(cairo, 1, 1, 1);
  }
}

class Brush {
 public:
  explicit Brush(cairo_t* cairo) : cairo_(cairo), context_(context_of(cairo)) {}

  void operator()(const papers::Text& text) const {
    const Layout layout = layout_of(context_.get(), text.runs, text.type, text.width);
    const double share = text.side == papers::Side::left ? 0 : text.side == papers::Side::middle ? 0.5 : 1;
    for (int i = 0; i < pango_layout_get_line_count(layout.get()); ++i) {
      PangoLayoutLine* line = pango_layout_get_line_readonly(layout.get(), i);
      const double width = width_of(line), x = text.x - share * width,
                   y = text.y + i * papers::lead(text.type);
      if (text.halo > 0) {
        ink(cairo_, papers::Ink::white);
        cairo_rectangle(cairo_, x - text.halo, y - 0.27 * text.type.points, width + 2 * text.halo,
                        0.36 * text.type.points);
        cairo_fill(cairo_);
      }
      ink(cairo_, text.type.ink);
      cairo_move_to(cairo_, x, y);
      pango_cairo_show_layout_line(cairo_, line);
    }
  }

  void operator()(const papers::Stroke& stroke) const {
    cairo_new_path(cairo_);
    cairo_set_line_join(cairo_, CAIRO_LINE_JOIN_ROUND);
    for (const auto& [x, y] : stroke.points) cairo_line_to(cairo_, x, y);
    if (stroke.closed) cairo_close_path(cairo_);
    if (stroke.filled) {
      ink(cairo_, papers::Ink::white);
      cairo_fill_preserve(cairo_);
    }
    ink(cairo_, stroke.ink);
    cairo_set_line_width(cairo_, stroke.width);
    const double dash[] = {1.6, 1.0};
    cairo_set_dash(cairo_, dash, stroke.dashed ? 2 : 0, 0);
    cairo_stroke(cairo_);
    cairo_set_dash(cairo_, nullptr, 0, 0);
  }

  void operator()(const papers::Disc& disc) const {
    cairo_new_path(cairo_);
    cairo_arc(cairo_, disc.x, disc.y, disc.radius, 0, 2 * std::numbers::pi);
    ink(cairo_, disc.ink);
    cairo_fill(cairo_);
  }

  void operator()(const papers::Hatch& hatch) const {
    cairo_save(cairo_);
    cairo_rectangle(cairo_, hatch.x, hatch.y, hatch.width, hatch.height);
    cairo_clip(cairo_);
    ink(cairo_, papers::Ink::black);
    cairo_set_line_width(cairo_, 0.22);
    for (double x = hatch.x - hatch.height; x < hatch.x + hatch.width; x += hatch.step) {
      cairo_move_to(cairo_, x, hatch.y + hatch.height);
      cairo_line_to(cairo_, x + hatch.height, hatch.y);
      cairo_stroke(cairo_);
    }
    cairo_restore(cairo_);
  }

  void operator()(const papers::Area& area) const {
    ink(cairo_, area.ink);
    cairo_rectangle(cairo_, area.x, area.y, area.width, area.height);
    cairo_fill(cairo_);
  }

  // Each run of dark squares as one bar: no hairlines between them when a viewer smooths edges.
  void operator()(const papers::Code& code) const {
    const std::vector<std::vector<bool>> rows = code_of(code.text);
    const double square = code.size / static_cast<double>(rows.size() + 2 * quiet_squares);
    ink(cairo_, papers::Ink::black);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const std::vector<bool>& row = rows[i];
      for (std::size_t from = 0; from < row.size(); ++from) {
        if (!row[from]) continue;
        std::size_t to = from;
        while (to < row.size() && row[to]) ++to;
        cairo_rectangle(cairo_, code.x + (static_cast<double>(from) + quiet_squares) * square,
                        code.y + (static_cast<double>(i) + quiet_squares) * square,
                        static_cast<double>(to - from) * square, square * 1.02);
        from = to;
      }
    }
    cairo_fill(cairo_);
  }

  void operator()(const papers::Image& image) const {
    draw_image(cairo_, *image.bytes, image.x, image.y, image.width, image.height);
  }

 private:
  cairo_t* cairo_;
  Context context_;
};

cairo_status_t append(void* text, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

// A page of its own to measure on, drawn to nobody. What was measured once is remembered: a layout asks again and again.
class PangoMeasure final : public papers::Measure {
 public:
  PangoMeasure()
      : surface_(cairo_pdf_surface_create_for_stream(nullptr, nullptr, 100, 100)),
        cairo_(cairo_create(surface_.get())) {
    cairo_scale(cairo_.get(), points_a_millimetre, points_a_millimetre);
    context_ = context_of(cairo_.get());
  }
  double width(const papers::Runs& runs, const papers::Type& type) const override {
    return remembered(widths_, key_of(runs, type, 0), [&] {
      const Layout layout = layout_of(context_.get(), runs, type, 0);
      return pdf::width_of(pango_layout_get_line_readonly(layout.get(), 0));
    });
  }
  int lines(const papers::Runs& runs, const papers::Type& type, double width) const override {
    return remembered(lines_, key_of(runs, type, width), [&] {
      return pango_layout_get_line_count(layout_of(context_.get(), runs, type, width).get());
    });
  }

  double shape(const std::string& image) const override {
    const ImageSize size = size_of(image);
    return size.width > 0 && size.height > 0 ? size.width / size.height : 0;
  }

 private:
  static std::string key_of(const papers::Runs& runs, const papers::Type& type, double width) {
    std::string key = std::to_string(type.points) + " " + std::to_string(type.weight) + " " +
                      std::to_string(width) + (type.columns ? "c" : "");
    for (const papers::Run& run : runs)
      key += '\0' + std::to_string(run.weight) + (run.unit ? "u" : "") + run.text;
    return key;
  }
  template <class Figure, class Reckon>
  static Figure remembered(std::unordered_map<std::string, Figure>& known, const std::string& key,
                           const Reckon& reckon) {
    const auto found = known.find(key);
    return found != known.end() ? found->second : known.emplace(key, reckon()).first->second;
  }

  Surface surface_;
  Cairo cairo_;
  Context context_;
  mutable std::unordered_map<std::string, double> widths_;
  mutable std::unordered_map<std::string, int> lines_;
};

}  // namespace

bool can_draw(const std::string& image) {
  const ImageSize size = size_of(image);
  return size.width > 0 && size.height > 0;
}

std::unique_ptr<papers::Measure> measure() {
  return std::make_unique<PangoMeasure>();
}

std::string pdf_of(const std::vector<papers::Page>& pages, const About& about) {
  DAMPWARD_PROMISE(!pages.empty(), "a document has a page");
  std::string bytes;
  const Surface surface(cairo_pdf_surface_create_for_stream(append, &bytes, 100, 100));
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, about.title.c_str());
  cairo_pdf_surface_set_metadata(
      surface.get(), CAIRO_PDF_METADATA_CREATE_DATE,
      iso_text(about.made, WallClock(std::chrono::seconds(0))).substr(0, 19).append("Z").c_str());
  const Cairo cairo(cairo_create(surface.get()));
  cairo_scale(cairo.get(), points_a_millimetre, points_a_millimetre);
  const Brush brush(cairo.get());
  for (const papers::Page& page : pages) {
    cairo_pdf_surface_set_size(surface.get(), page.paper.width * points_a_millimetre,
                               page.paper.height * points_a_millimetre);
    for (const papers::Mark& mark : page.marks) std::visit(brush, mark);
    cairo_show_page(cairo.get());
  }
  cairo_surface_finish(surface.get());
  return bytes;
}

}  // namespace dampward::pdf
