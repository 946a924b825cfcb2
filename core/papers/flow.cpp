#include "core/papers/flow.h"

#include <algorithm>

namespace dampward::papers {
namespace {

constexpr Type running_type{doing, 600, Ink::petrol};

// Opens a further page; gives where its body begins.
double open_further(const Flow& flow, Pen& pen) {
  if (flow.further) return flow.further(pen);
  return top_edge + 8 - lead(running_type.points) +
         pen.text(left_edge, top_edge + 3, flow.running, running_type, Side::left, pen.right() - left_edge);
}

struct Sheet {
  const std::function<double(Pen&)>* head = nullptr;  // none: the running heading
  std::vector<std::size_t> rows;
};

// Which rows stand on which page.
class Division {
 public:
  Division(const Flow& flow, const Paper& paper, const Measure& measure)
      : flow_(flow), scratch_{paper, {}}, pen_(scratch_, measure) {
    further_ = pen_.bottom() - open_further(flow, pen_);
    for (const Row& row : flow.rows) heights_.push_back(row.draw(pen_, 0));
    open(flow.head ? &flow.head : nullptr);
  }

  std::vector<Sheet> sheets() {
    for (std::size_t i = 0; i < heights_.size();) {
      const std::size_t end = block_end(i);
      place(i, end);
      i = end;
    }
    no_row_alone();
    return std::move(sheets_);
  }

 private:
  std::size_t block_end(std::size_t i) const {
    while (i + 1 < heights_.size() && flow_.rows[i].with_next && !flow_.rows[i + 1].head) ++i;
    return i + 1;
  }
  double height(std::size_t from, std::size_t to) const {
    double sum = 0;
    for (std::size_t i = from; i < to; ++i) sum += heights_[i];
    return sum;
  }
  void open(const std::function<double(Pen&)>* head) {
    sheets_.push_back({head, {}});
    room_ = head != nullptr ? pen_.bottom() - (*head)(pen_) : further_;
  }
  void place(std::size_t from, std::size_t to) {
    if (flow_.rows[from].head && !(sheets_.size() == 1 && sheets_.back().rows.empty())) {
      no_row_alone();
      open(&flow_.rows[from].head);
    }
    // What does not fit below a head that long goes on a page of its own.
    const bool empty = sheets_.back().rows.empty() && sheets_.back().head == nullptr;
    if (!empty && height(from, to) > room_) open(nullptr);
    for (std::size_t i = from; i < to; ++i) {
      if (heights_[i] > room_ && !sheets_.back().rows.empty()) open(nullptr);
      sheets_.back().rows.push_back(i);
      room_ -= heights_[i];
    }
  }
  // The last row of a stretch of pages takes its neighbour along, where that leaves the page before it enough.
  void no_row_alone() {
    if (sheets_.size() < 2 || sheets_.back().rows.size() != 1 || sheets_.back().head != nullptr) return;
    std::vector<std::size_t>& before = sheets_[sheets_.size() - 2].rows;
    const std::size_t alone = sheets_.back().rows.front();
    if (before.size() < 3 || flow_.rows[before[before.size() - 2]].with_next) return;
    if (heights_[alone] + heights_[before.back()] > further_) return;
    sheets_.back().rows.insert(sheets_.back().rows.begin(), before.back());
    before.pop_back();
  }

  const Flow& flow_;
  Page scratch_;  // drawn on to learn heights
  Pen pen_;
  std::vector<double> heights_;
  std::vector<Sheet> sheets_;
  double room_ = 0, further_ = 0;
};

}  // namespace

Pages pages_of(const Flow& flow, const Paper& paper, const Words& words, const Measure& measure) {
  const std::vector<Sheet> sheets = Division(flow, paper, measure).sheets();
  Pages pages;
  for (const Sheet& sheet : sheets) {
    pages.push_back({paper, {}});
    Pen pen(pages.back(), measure);
    double y = sheet.head != nullptr ? (*sheet.head)(pen) : open_further(flow, pen);
    for (const std::size_t row : sheet.rows) y = flow.rows[row].draw(pen, y);
    const bool last = pages.size() == sheets.size();
    if (last && !flow.notes.empty()) notes(pen, y + 3, flow.notes);
    foot(pen, words, flow.sheet, flow.plan, static_cast<int>(pages.size()), static_cast<int>(sheets.size()));
  }
  return pages;
}

}  // namespace dampward::papers
