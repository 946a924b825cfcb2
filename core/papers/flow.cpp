#include "core/papers/flow.h"

#include <algorithm>

namespace dampward::papers {
namespace {

constexpr Type running_type{doing, 600, Ink::petrol};

// Where the body of a further page begins.
double further_body(const Flow& flow, const Pen& pen) {
  return top_edge + 8 - lead(running_type.points) +
         pen.height_of(flow.running, running_type, pen.right() - left_edge);
}

// Which rows stand on which page.
class Division {
 public:
  Division(const Flow& flow, const Paper& paper, const Measure& measure)
      : flow_(flow), scratch_{paper, {}}, pen_(scratch_, measure) {
    bottom_ = pen_.bottom();
    further_ = further_body(flow, pen_);
    room_ = bottom_ - (flow.head ? flow.head(pen_) : further_);
    for (const Row& row : flow.rows) heights_.push_back(row.draw(pen_, 0));
  }

  std::vector<std::vector<std::size_t>> pages() {
    for (std::size_t i = 0; i < heights_.size();) {
      const std::size_t end = block_end(i);
      place(i, end);
      i = end;
    }
    no_row_alone();
    return std::move(pages_);
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
  void turn(const Row& row) {
    pages_.emplace_back();
    room_ = bottom_ - (row.head ? row.head(pen_) : further_);
  }
  void place(std::size_t from, std::size_t to) {
    const bool empty = pages_.back().empty();
    if (!empty && (flow_.rows[from].head || height(from, to) > room_)) turn(flow_.rows[from]);
    for (std::size_t i = from; i < to; ++i) {
      if (heights_[i] > room_ && !pages_.back().empty()) turn(flow_.rows[i]);
      pages_.back().push_back(i);
      room_ -= heights_[i];
    }
  }
  // The last row of all takes its neighbour along, where that leaves the page before it enough.
  void no_row_alone() {
    if (pages_.size() < 2 || pages_.back().size() != 1) return;
    std::vector<std::size_t>& before = pages_[pages_.size() - 2];
    const std::size_t alone = pages_.back().front();
    if (flow_.rows[alone].head || before.size() < 3 || flow_.rows[before[before.size() - 2]].with_next)
      return;
    if (heights_[alone] + heights_[before.back()] > bottom_ - further_) return;
    pages_.back().insert(pages_.back().begin(), before.back());
    before.pop_back();
  }

  const Flow& flow_;
  Page scratch_;  // drawn on to learn heights
  Pen pen_;
  std::vector<double> heights_;
  std::vector<std::vector<std::size_t>> pages_{1};
  double bottom_ = 0, room_ = 0, further_ = 0;
};

}  // namespace

Pages pages_of(const Flow& flow, const Paper& paper, const Words& words, const Measure& measure) {
  const auto division = Division(flow, paper, measure).pages();
  Pages pages;
  for (std::size_t i = 0; i < division.size(); ++i) {
    pages.push_back({paper, {}});
    Pen pen(pages.back(), measure);
    double y = further_body(flow, pen);
    if (i == 0 && flow.head)
      y = flow.head(pen);
    else if (!division[i].empty() && flow.rows[division[i].front()].head)
      y = flow.rows[division[i].front()].head(pen);
    else
      pen.text(left_edge, top_edge + 3, flow.running, running_type, Side::left, pen.right() - left_edge);
    for (const std::size_t row : division[i]) y = flow.rows[row].draw(pen, y);
    if (i + 1 == division.size() && !flow.notes.empty()) notes(pen, y + 3, flow.notes);
    foot(pen, words, flow.sheet, flow.plan, static_cast<int>(i) + 1, static_cast<int>(division.size()));
  }
  return pages;
}

}  // namespace dampward::papers
