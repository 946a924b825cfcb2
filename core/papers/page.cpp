#include "core/papers/page.h"

namespace dampward::papers {
namespace {

// Writes every member in turn, parted by blanks; texts with their length, so that none runs into the next.
class Writer {
 public:
  void operator()(const Text& text) {
    put('T', text.x, text.y, text.type.points, text.type.weight, text.type.ink, text.type.columns,
        text.type.pitch, text.side, text.width, text.halo);
    for (const Run& run : text.runs) {
      put('r', run.weight, run.unit);
      put(run.text);
    }
  }
  void operator()(const Stroke& stroke) {
    put('S', stroke.width, stroke.ink, stroke.closed, stroke.dashed, stroke.filled);
    for (const auto& [x, y] : stroke.points) put('p', x, y);
  }
  void operator()(const Disc& disc) { put('D', disc.x, disc.y, disc.radius, disc.ink); }
  void operator()(const Hatch& hatch) { put('H', hatch.x, hatch.y, hatch.width, hatch.height, hatch.step); }
  void operator()(const Area& area) { put('A', area.x, area.y, area.width, area.height, area.ink); }
  void operator()(const Code& code) {
    put('C', code.x, code.y, code.size);
    put(code.text);
  }
  void operator()(const Image& image) {
    put('I', image.x, image.y, image.width, image.height);
    put(*image.bytes);
  }
  void page(const Paper& paper) { put('P', paper.width, paper.height); }
  std::string done() && { return std::move(content_); }

 private:
  template <class... Figures>
  void put(char kind, Figures... figures) {
    content_ += kind;
    ((content_ += std::to_string(static_cast<double>(figures)) + " "), ...);
  }
  void put(const std::string& text) { content_ += std::to_string(text.size()) + ":" + text; }

  std::string content_;
};

}  // namespace

std::string content_of(const Pages& pages) {
  Writer writer;
  for (const Page& page : pages) {
    writer.page(page.paper);
    for (const Mark& mark : page.marks) std::visit(writer, mark);
  }
  return std::move(writer).done();
}

}  // namespace dampward::papers
