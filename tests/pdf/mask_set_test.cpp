#include "core/papers/mask_set.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "adapters/files/messages.h"
#include "adapters/pdf/pdf.h"
#include "tests/pdf/copies.h"
#include "tests/pdf/page_boxes.h"

using namespace dampward;
using namespace dampward::papers;
using namespace dampward::papers::test;
using equipment::Cut;
using equipment::CutShape;

namespace {

constexpr Length millimetre = 0.001 * metre;

Cut cut_of(CutShape shape, double size, double width, bool measured = true) {
  return {shape, size * millimetre, width * millimetre, 3, "paper tape", measured};
}

MaskSet set_of(std::vector<MaskSet::Piece> pieces) {
  MaskSet set;
  set.id = "river_radio";
  set.kind = "river-launch radio";
  set.shop = "Tamarin Delta river-health service, radio workshop";
  set.units = 3;
  set.pieces = std::move(pieces);
  set.plan = "plan 7C2F   2027-01-25 07:00";
  return set;
}

MaskSet mixed(int times) {
  std::vector<MaskSet::Piece> pieces;
  for (int i = 0; i < times; ++i) {
    pieces.push_back({"valve sockets", "socket clips", 18, cut_of(CutShape::disc, 19, 0, false)});
    pieces.push_back({"wafer switches", "switch contacts and rotors", 3, cut_of(CutShape::ring, 46, 8)});
    pieces.push_back({"ganged air capacitor", "bagged whole", 1, cut_of(CutShape::rectangle, 140, 90)});
    pieces.push_back({"case", "sealing faces", 1, cut_of(CutShape::strip, 170, 8)});
    pieces.push_back({"case gaskets", "whole gasket", 2, std::nullopt});
    pieces.push_back({"lid", "the whole part", 1, cut_of(CutShape::rectangle, 400, 300)});
  }
  return set_of(std::move(pieces));
}

// How wide and high the dark dots stand within a box of the first page, all in millimetres as printed at 300 dots an inch.
std::pair<double, double> printed_in(const Pages& pages, double left, double top, double right,
                                     double bottom) {
  namespace fs = std::filesystem;
  const fs::path folder = fs::temp_directory_path() / ("dampward-masks-" + std::to_string(getpid()));
  fs::create_directories(folder);
  std::ofstream(folder / "page.pdf", std::ios::binary) << pdf::pdf_of(pages, {"masks", Instant{}});
  said_by("pdftoppm -gray -singlefile -r 300 " + (folder / "page.pdf").string() + " " +
          (folder / "page").string() + " 2>&1");
  const Grey page = read_grey(folder / "page.pgm");
  fs::remove_all(folder);
  const auto dot = [](double at) { return static_cast<int>(std::lround(at / 25.4 * 300)); };
  int x1 = page.width, x2 = 0, y1 = page.height, y2 = 0;
  for (int y = dot(top); y < dot(bottom); ++y) {
    for (int x = dot(left); x < dot(right); ++x) {
      if (page.dots[static_cast<std::size_t>(y) * static_cast<std::size_t>(page.width) +
                    static_cast<std::size_t>(x)] > 128)
        continue;
      x1 = std::min(x1, x);
      x2 = std::max(x2, x);
      y1 = std::min(y1, y);
      y2 = std::max(y2, y);
    }
  }
  return {(x2 - x1 + 1) / 300.0 * 25.4, (y2 - y1 + 1) / 300.0 * 25.4};
}

// The strokes of a width that closes: the shapes, in order.
std::vector<Stroke> outlines(const Page& page) {
  std::vector<Stroke> all;
  for (const Mark& mark : page.marks) {
    const auto* stroke = std::get_if<Stroke>(&mark);
    if (stroke != nullptr && stroke->closed && stroke->width == line_width) all.push_back(*stroke);
  }
  return all;
}

}  // namespace

TEST_CASE("nothing on a mask set lies over anything else or off the page, in four languages on both papers") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    for (const Paper& paper : {a4, us_letter}) {
      for (const int times : {1, 4}) {
        INFO(language << " " << paper.width << " " << times);
        check_pages(mask_set(mixed(times), paper, words, *measure), *measure);
      }
    }
  }
}

TEST_CASE("a printed mask is as large as it says, and the line to check it on is 50 mm long") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  for (const auto& [cut, wide, high] : {std::tuple(cut_of(CutShape::disc, 22, 0), 22.0, 22.0),
                                        {cut_of(CutShape::ring, 46.5, 8), 46.5, 46.5},
                                        {cut_of(CutShape::rectangle, 80, 31), 80.0, 31.0},
                                        {cut_of(CutShape::strip, 90, 6), 90.0, 6.0}}) {
    const Pages pages = mask_set(set_of({{"part", "", 1, cut}}), a4, words, *measure);
    const Stroke outline = outlines(pages.front()).front();
    double left = 1000, top = 1000;
    for (const auto& [x, y] : outline.points) {
      left = std::min(left, x);
      top = std::min(top, y);
    }
    const auto [width, height] = printed_in(pages, left - 1, top - 1, left + wide + 1, top + high + 1);
    // The stroke lies half outside; a dot is 0.085 mm.
    CHECK(width == doctest::Approx(wide + line_width).epsilon(0.2 / wide));
    CHECK(height == doctest::Approx(high + line_width).epsilon(0.2 / high));
  }
  for (const Page& page : mask_set(mixed(4), a4, words, *measure)) {
    const bool there = std::any_of(page.marks.begin(), page.marks.end(), [](const Mark& mark) {
      const auto* line = std::get_if<Stroke>(&mark);
      return line != nullptr && line->points.size() == 2 &&
             line->points[0].second == line->points[1].second &&
             std::abs(line->points[1].first - line->points[0].first - 50) < 1e-9;
    });
    CHECK(there);
  }
}

TEST_CASE(
    "a mask set says counts and materials, what is only an estimate, what is too large and what nobody "
    "measured") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  const std::string all = words_of(mask_set(mixed(1), us_letter, words, *measure));
  for (const char* said :
       {"3 ×", "3 sets: 9 pieces", "Disc 19\u202fmm, paper tape", "Ring 46\u202fmm, hole 8\u202fmm",
        "Estimate: measure yours", "Hold the part against", "Larger than this page", "400\u202fmm",
        "no size known", "2 ×", "Measure this line: 50\u202fmm"})
    CHECK_MESSAGE(all.find(said) != std::string::npos, std::string(said));
  const std::string sure =
      words_of(mask_set(set_of({{"case", "", 1, cut_of(CutShape::strip, 90, 6)}}), a4, words, *measure));
  CHECK(sure.find("Estimate") == std::string::npos);
}

TEST_CASE("names of 200 letters stay whole on a mask set") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("fr").value();
  MaskSet set = mixed(1);
  set.kind = std::string(200, 'W');
  set.pieces.front().part = set.pieces.front().covers = set.pieces.front().cut->material =
      std::string(200, 'm');
  check_pages(mask_set(set, us_letter, words, *measure), *measure);
}
