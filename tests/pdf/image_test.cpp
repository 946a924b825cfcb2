#include "adapters/pdf/image.h"

#include <cairo.h>
#include <doctest/doctest.h>

#include <array>
#include <string>

#include "adapters/files/messages.h"
#include "adapters/pdf/pdf.h"
#include "core/papers/kind_drawing.h"
#include "tests/pdf/page_boxes.h"

using namespace dampward;
using namespace dampward::papers;
using namespace dampward::papers::test;

namespace {

const std::string drawing =
    "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 40 20'><rect x='0' y='0' width='20' "
    "height='20'/></svg>";

cairo_status_t append(void* text, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

// A photograph, 30 by 10, as cairo writes it.
std::string photograph() {
  cairo_surface_t* surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 30, 10);
  std::string bytes;
  cairo_surface_write_to_png_stream(surface, append, &bytes);
  cairo_surface_destroy(surface);
  return bytes;
}

// Whether the middle of each half of the box is dark.
std::array<bool, 2> dark_halves(const std::string& image) {
  cairo_surface_t* surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 80, 40);
  cairo_t* cairo = cairo_create(surface);
  cairo_set_source_rgb(cairo, 1, 1, 1);
  cairo_paint(cairo);
  pdf::draw_image(cairo, image, 0, 0, 80, 40);
  cairo_surface_flush(surface);
  const unsigned char* row =
      cairo_image_surface_get_data(surface) + 20 * cairo_image_surface_get_stride(surface);
  const std::array<bool, 2> dark = {row[20 * 4] < 128, row[60 * 4] < 128};
  cairo_destroy(cairo);
  cairo_surface_destroy(surface);
  return dark;
}

}  // namespace

TEST_CASE("a drawing and a photograph tell their shape and fill their box") {
  CHECK(pdf::measure()->shape(drawing) == doctest::Approx(2));
  CHECK(pdf::measure()->shape(photograph()) == doctest::Approx(3));
  CHECK(dark_halves(drawing) == std::array{true, false});
  CHECK(dark_halves(photograph()) == std::array{true, true});
}

TEST_CASE("what is no picture, or half of one, has no shape and draws nothing") {
  const std::string half = photograph().substr(0, 40);
  for (const std::string& image : {std::string(), std::string("<svg"), std::string("<svg><rect"), half,
                                   std::string("\xFF\xD8\xFF and no more")}) {
    CHECK(pdf::measure()->shape(image) == 0);
    CHECK(dark_halves(image) == std::array{false, false});
  }
}

TEST_CASE("a drawing fetches no other file") {
  const std::string fetching =
      "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' viewBox='0 0 2 1'>"
      "<image xlink:href='file://" DAMPWARD_SOURCE_DIR
      "/docs/guide/pictures/labels.png' width='2' height='1'/></svg>";
  CHECK(dark_halves(fetching) == std::array{false, false});
  CHECK(pdf::measure()->shape(fetching) == doctest::Approx(2));
}

TEST_CASE(
    "pins stand where they were set, masks by number and care by letter, and the words say which is which") {
  KindDrawing shown;
  shown.image = std::make_shared<const std::string>(drawing);
  shown.pins = {{PinKind::mask, 0.25, 0.5, "3", "sockets"},
                {PinKind::weak, 0.5, 0.5, "a", "wax capacitors"},
                {PinKind::bare, 0.75, 0.25, "b", "heat sink"}};
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    Flow flow;
    kind_drawing_rows(shown, words, flow.rows);
    const Pages pages = pages_of(flow, a4, words, *measure);
    REQUIRE(pages.size() == 1);
    check_pages(pages, *measure);
    const Image* image = nullptr;
    for (const Mark& mark : pages[0].marks) {
      if (std::holds_alternative<Image>(mark)) image = &std::get<Image>(mark);
    }
    REQUIRE(image != nullptr);
    CHECK(image->width / image->height == doctest::Approx(2));
    for (const Mark& mark : pages[0].marks) {
      const auto* text = std::get_if<Text>(&mark);
      if (text == nullptr || joined(text->runs) != "3") continue;
      CHECK(text->x == doctest::Approx(image->x + 0.25 * image->width));
      CHECK(text->y == doctest::Approx(image->y + 0.5 * image->height).epsilon(0.02));
    }
    const std::string all = words_of(pages);
    for (const std::string& said :
         {words("pin_weak", {"wax capacitors"}), words("pin_never_coat", {"heat sink"})})
      CHECK(all.find(said) != std::string::npos);
    CHECK(all.find("sockets") == std::string::npos);
  }
}
