#include "adapters/pdf/image.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <librsvg/rsvg.h>

#include <cstring>
#include <memory>
#include <vector>

namespace dampward::pdf {
namespace {

struct Gone {
  void operator()(RsvgHandle* handle) const { g_object_unref(handle); }
  void operator()(GdkPixbuf* pixels) const { g_object_unref(pixels); }
  void operator()(GdkPixbufLoader* loader) const { g_object_unref(loader); }
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
template <class T>
using Held = std::unique_ptr<T, Gone>;

const unsigned char* bytes_of(const std::string& image) {
  return reinterpret_cast<const unsigned char*>(image.data());
}

bool is_drawing(const std::string& image) {
  return image.substr(0, 4096).find("<svg") != std::string::npos;
}

// Without a place of its own a drawing can fetch nothing.
Held<RsvgHandle> drawing_of(const std::string& image) {
  GError* error = nullptr;
  Held<RsvgHandle> drawing(rsvg_handle_new_from_data(bytes_of(image), image.size(), &error));
  g_clear_error(&error);
  return drawing;
}

Held<GdkPixbuf> photograph_of(const std::string& image) {
  const Held<GdkPixbufLoader> loader(gdk_pixbuf_loader_new());
  GError* error = nullptr;
  const bool written = gdk_pixbuf_loader_write(loader.get(), bytes_of(image), image.size(), &error) != 0;
  g_clear_error(&error);
  const bool closed = gdk_pixbuf_loader_close(loader.get(), &error) != 0;
  g_clear_error(&error);
  GdkPixbuf* pixels = written && closed ? gdk_pixbuf_loader_get_pixbuf(loader.get()) : nullptr;
  return Held<GdkPixbuf>(pixels == nullptr ? nullptr : gdk_pixbuf_apply_embedded_orientation(pixels));
}

ImageSize size_of(RsvgHandle& drawing) {
  gboolean has_width = 0, has_height = 0, has_box = 0;
  RsvgLength width, height;
  RsvgRectangle box;
  rsvg_handle_get_intrinsic_dimensions(&drawing, &has_width, &width, &has_height, &height, &has_box, &box);
  if (has_box != 0) return {box.width, box.height};
  ImageSize size;
  if (rsvg_handle_get_intrinsic_size_in_pixels(&drawing, &size.width, &size.height) == 0) return {};
  return size;
}

// Cairo's own order of colours; a photograph that lets light through stands on white.
Held<cairo_surface_t> surface_of(GdkPixbuf& pixels) {
  const int width = gdk_pixbuf_get_width(&pixels), height = gdk_pixbuf_get_height(&pixels),
            channels = gdk_pixbuf_get_n_channels(&pixels), pitch = gdk_pixbuf_get_rowstride(&pixels);
  const unsigned char* from = gdk_pixbuf_read_pixels(&pixels);
  Held<cairo_surface_t> surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height));
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return nullptr;
  cairo_surface_flush(surface.get());
  unsigned char* to = cairo_image_surface_get_data(surface.get());
  const int row = cairo_image_surface_get_stride(surface.get());
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const unsigned char* pixel = from + y * pitch + x * channels;
      const unsigned opaque = channels == 4 ? pixel[3] : 255;
      const auto seen = [&](int i) { return (pixel[i] * opaque + 255 * (255 - opaque)) / 255; };
      const unsigned colour = seen(0) << 16 | seen(1) << 8 | seen(2);
      std::memcpy(to + y * row + x * 4, &colour, 4);
    }
  }
  cairo_surface_mark_dirty(surface.get());
  return surface;
}

}  // namespace

ImageSize size_of(const std::string& image) {
  if (is_drawing(image)) {
    const auto drawing = drawing_of(image);
    return drawing ? size_of(*drawing) : ImageSize{};
  }
  const auto pixels = photograph_of(image);
  if (!pixels) return {};
  return {static_cast<double>(gdk_pixbuf_get_width(pixels.get())),
          static_cast<double>(gdk_pixbuf_get_height(pixels.get()))};
}

void draw_image(cairo_t* cairo, const std::string& image, double x, double y, double width, double height) {
  cairo_save(cairo);
  if (is_drawing(image)) {
    if (const auto drawing = drawing_of(image)) {
      const RsvgRectangle box{x, y, width, height};
      rsvg_handle_render_document(drawing.get(), cairo, &box, nullptr);
    }
  } else if (const auto pixels = photograph_of(image)) {
    if (const auto surface = surface_of(*pixels)) {
      cairo_translate(cairo, x, y);
      cairo_scale(cairo, width / gdk_pixbuf_get_width(pixels.get()),
                  height / gdk_pixbuf_get_height(pixels.get()));
      cairo_set_source_surface(cairo, surface.get(), 0, 0);
      cairo_paint(cairo);
    }
  }
  cairo_restore(cairo);
}

}  // namespace dampward::pdf
