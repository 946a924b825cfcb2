#include "core/line/detail/blocks.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <queue>
#include <tuple>

namespace dampward::line::detail {
namespace {

class Unions {
 public:
  explicit Unions(std::size_t size) : parent_(size) { std::iota(parent_.begin(), parent_.end(), 0); }
  int root(int i) {
    while (parent_[static_cast<std::size_t>(i)] != i) {
      auto& up = parent_[static_cast<std::size_t>(i)];
      up = parent_[static_cast<std::size_t>(up)];
      i = up;
    }
    return i;
  }
  void join(int a, int b) {
    a = root(a), b = root(b);
    parent_[static_cast<std::size_t>(std::max(a, b))] = std::min(a, b);
  }

 private:
  std::vector<int> parent_;
};

// Strongly connected components (Tarjan 1972), without recursion because a queue may be long.
class Components {
 public:
  explicit Components(const std::vector<std::vector<int>>& after)
      : after_(after), index_(after.size(), -1), low_(after.size(), 0), part_(after.size(), -1) {
    for (std::size_t node = 0; node < after.size(); ++node) {
      if (index_[node] < 0) visit(static_cast<int>(node));
    }
  }
  const std::vector<int>& part() const { return part_; }

 private:
  void visit(int root) {
    std::vector<std::pair<int, std::size_t>> path{{root, 0}};
    enter(root);
    while (!path.empty()) {
      auto& [node, next] = path.back();
      const std::size_t n = static_cast<std::size_t>(node);
      if (next < after_[n].size()) {
        const int child = after_[n][next++];
        const std::size_t c = static_cast<std::size_t>(child);
        if (index_[c] < 0) {
          enter(child);
          path.emplace_back(child, 0);
        } else if (part_[c] < 0) {
          low_[n] = std::min(low_[n], index_[c]);
        }
        continue;
      }
      if (low_[n] == index_[n]) close(node);
      const int low = low_[n];
      path.pop_back();
      if (!path.empty()) {
        int& above = low_[static_cast<std::size_t>(path.back().first)];
        above = std::min(above, low);
      }
    }
  }
  void enter(int node) {
    index_[static_cast<std::size_t>(node)] = low_[static_cast<std::size_t>(node)] = count_++;
    open_.push_back(node);
  }
  void close(int node) {
    for (int member = -1; member != node;) {
      member = open_.back();
      open_.pop_back();
      part_[static_cast<std::size_t>(member)] = parts_;
    }
    ++parts_;
  }

  const std::vector<std::vector<int>>& after_;
  std::vector<int> index_, low_, part_, open_;
  int count_ = 0, parts_ = 0;
};

// The most urgent unit an operation serves; a bake serves all units of its load.
int rank_of(const Model& model, int op) {
  const Op& it = model.ops[static_cast<std::size_t>(op)];
  int best = static_cast<int>(model.units.size());
  if (it.unit >= 0) best = model.rank[static_cast<std::size_t>(it.unit)];
  return best;
}

void sort_once(std::vector<int>& list) {
  std::sort(list.begin(), list.end());
  list.erase(std::unique(list.begin(), list.end()), list.end());
}

}  // namespace

std::vector<Block> blocks_of(const Model& model, const std::vector<char>& wanted) {
  const auto want = [&](int op) { return wanted[static_cast<std::size_t>(op)] != 0; };
  // What is fixed is no part of a block, but ties those that hang on it: who is out of the oven, and who still waits inside.
  const auto ties = [&](int op) { return want(op) || model.ops[static_cast<std::size_t>(op)].fixed; };
  Unions tied(model.ops.size());
  for (std::size_t i = 0; i < model.ops.size(); ++i) {
    for (const Arc& arc : model.ops[i].after) {
      if (arc.longest < unbounded && ties(arc.from) && ties(arc.to)) tied.join(arc.from, arc.to);
    }
  }
  for (const LoadOps& load : model.loads) {
    for (const auto* list : {&load.loadings, &load.unloadings}) {
      for (int op : *list) {
        if (ties(op) && ties(load.bake)) tied.join(op, load.bake);
      }
    }
  }

  // Groups that wait for each other in a ring through operations of neither become one.
  std::vector<std::vector<int>> after(model.ops.size());
  for (std::size_t i = 0; i < model.ops.size(); ++i) {
    for (const Arc& arc : model.ops[i].after) {
      if (!want(arc.from) || !want(arc.to)) continue;
      const int a = tied.root(arc.from), b = tied.root(arc.to);
      if (a != b) after[static_cast<std::size_t>(a)].push_back(b);
    }
  }
  const Components components(after);

  std::map<int, int> number;
  std::vector<int> block_of(model.ops.size(), -1);
  std::vector<Block> blocks;
  for (std::size_t i = 0; i < model.ops.size(); ++i) {
    if (!want(static_cast<int>(i))) continue;
    const int part = components.part()[static_cast<std::size_t>(tied.root(static_cast<int>(i)))];
    const auto [it, fresh] = number.emplace(part, static_cast<int>(blocks.size()));
    if (fresh) blocks.push_back({{}, {}, {}, static_cast<int>(model.units.size())});
    Block& block = blocks[static_cast<std::size_t>(it->second)];
    block.ops.push_back(static_cast<int>(i));
    block.rank = std::min(block.rank, rank_of(model, static_cast<int>(i)));
    block_of[i] = it->second;
  }
  for (std::size_t i = 0; i < model.ops.size(); ++i) {
    for (const Arc& arc : model.ops[i].after) {
      const int a = block_of[i], b = block_of[static_cast<std::size_t>(arc.to)];
      if (a < 0 || b < 0 || a == b) continue;
      blocks[static_cast<std::size_t>(a)].after.push_back(b);
      blocks[static_cast<std::size_t>(b)].before.push_back(a);
    }
  }
  for (Block& block : blocks) {
    sort_once(block.after);
    sort_once(block.before);
  }
  return blocks;
}

std::vector<int> order_within(const Model& model, const std::vector<int>& ops, const std::vector<int>& pull,
                              const std::vector<char>& out_first) {
  std::map<int, int> waiting;  // how many of the block each still waits for
  for (int op : ops) waiting[op] = 0;
  for (int op : ops) {
    for (const Arc& arc : model.ops[static_cast<std::size_t>(op)].before)
      waiting[op] += waiting.contains(arc.from);
  }
  // Backwards first, so that a pull reaches all it waits for.
  std::map<int, int> left, pulled;
  for (int op : ops) pulled[op] = pull[static_cast<std::size_t>(op)];
  std::vector<int> ends;
  for (int op : ops) {
    for (const Arc& arc : model.ops[static_cast<std::size_t>(op)].after) left[op] += waiting.contains(arc.to);
    if (left[op] == 0) ends.push_back(op);
  }
  for (std::size_t i = 0; i < ends.size(); ++i) {
    for (const Arc& arc : model.ops[static_cast<std::size_t>(ends[i])].before) {
      if (!waiting.contains(arc.from)) continue;
      pulled[arc.from] = std::max(pulled[arc.from], pulled[ends[i]]);
      if (--left[arc.from] == 0) ends.push_back(arc.from);
    }
  }

  const auto key = [&](int op) {
    const Op& it = model.ops[static_cast<std::size_t>(op)];
    const bool out = it.role != Role::plain && out_first[static_cast<std::size_t>(it.load)];
    const int stage = it.role == Role::loading || it.role == Role::bake ? 0 : 1;
    return std::tuple(!out, -pulled[op], stage, rank_of(model, op), op);
  };
  using Key = decltype(key(0));
  std::priority_queue<Key, std::vector<Key>, std::greater<>> ready;
  for (int op : ops) {
    if (waiting[op] == 0) ready.push(key(op));
  }
  std::vector<int> order;
  while (!ready.empty()) {
    const int op = std::get<4>(ready.top());
    ready.pop();
    order.push_back(op);
    for (const Arc& arc : model.ops[static_cast<std::size_t>(op)].after) {
      const auto it = waiting.find(arc.to);
      if (it != waiting.end() && --it->second == 0) ready.push(key(arc.to));
    }
  }
  return order;
}

}  // namespace dampward::line::detail
