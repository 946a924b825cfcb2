#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/papers/pen.h"

// Rows that flow over pages and are never split.
namespace dampward::papers {

struct Row {
  std::function<double(Pen&, double)> draw;  // from y on; gives where it ends
  bool with_next = false;                    // never the last row of a page that goes on
  std::function<double(Pen&)> head =
      nullptr;  // opens a page with this head, which gives where its body begins
};

struct Flow {
  std::function<double(Pen&)> head;  // of the first page; gives where its body begins
  std::string running;               // stands at the top of every further page without a head of its own
  std::vector<Row> rows;
  std::string sheet, plan;  // for the foot
  // Opens every further page without a head of its own, instead of `running`; gives where its body begins.
  std::function<double(Pen&)> further = nullptr;
  std::string notes = {};  // word over the ruled rest of the last page; empty: left blank
};

// A row that is higher than a page gets one of its own and runs off it: callers split what may grow.
Pages pages_of(const Flow& flow, const Paper& paper, const Words& words, const Measure& measure);

}  // namespace dampward::papers
