#include <algorithm>

#include "core/base/text.h"
#include "core/referee/detail/fault_rules.h"

namespace dampward::referee {
namespace {

// Which operation starts after which has ended, gaps and the order within loads taken together.
class Order {
 public:
  explicit Order(const Index& index) : index_(index), next_(index.problem.operations.size()) {
    for (const Gap& gap : index.problem.gaps) add(gap.from, gap.to);
    for (const Load& load : index.problem.loads) {
      for (const Member& member : load.members) {
        add(member.loading, load.bake);
        add(load.bake, member.unloading);
      }
    }
  }

  // Operations that wait for each other, in order; empty: none do.
  std::vector<std::string> ring() const {
    // Take away what waits for nothing until nothing can be taken: what is left waits for something left.
    std::vector<std::size_t> waits(next_.size(), 0), ready;
    for (const auto& list : next_) {
      for (const std::size_t to : list) ++waits[to];
    }
    for (std::size_t i = 0; i < waits.size(); ++i) {
      if (waits[i] == 0) ready.push_back(i);
    }
    while (!ready.empty()) {
      const std::size_t first = ready.back();
      ready.pop_back();
      for (const std::size_t to : next_[first]) {
        if (--waits[to] == 0) ready.push_back(to);
      }
    }
    return walk_back(waits);
  }

 private:
  void add(const std::string& from, const std::string& to) {
    const auto a = index_.operations.find(from), b = index_.operations.find(to);
    if (a != index_.operations.end() && b != index_.operations.end()) next_[a->second].push_back(b->second);
  }

  // Everything left has something left before it, so a walk backwards meets itself: that part is the ring.
  std::vector<std::string> walk_back(const std::vector<std::size_t>& waits) const {
    std::vector<std::size_t> before(next_.size(), next_.size());
    std::size_t here = next_.size();
    for (std::size_t i = 0; i < next_.size(); ++i) {
      if (waits[i] == 0) continue;
      here = i;
      for (const std::size_t to : next_[i]) before[to] = i;
    }
    if (here == next_.size()) return {};
    std::vector<std::size_t> path;
    std::vector<bool> seen(next_.size(), false);
    while (!seen[here]) {
      seen[here] = true;
      path.push_back(here);
      here = before[here];
    }
    path.erase(path.begin(), std::find(path.begin(), path.end(), here));
    std::reverse(path.begin(), path.end());
    std::vector<std::string> ids;
    for (const std::size_t i : path) ids.push_back("\"" + index_.problem.operations[i].id + "\"");
    return ids;
  }

  const Index& index_;
  std::vector<std::vector<std::size_t>> next_;
};

}  // namespace

void fault_gaps(const Index& index, Faults& found) {
  const auto& gaps = index.problem.gaps;
  for (std::size_t i = 0; i < gaps.size(); ++i) {
    if (gaps[i].longest && *gaps[i].longest < gaps[i].shortest)
      found.push_back({at("gaps", i, "longest_min"), format("{}", *gaps[i].longest),
                       format("no less than the shortest, {}", gaps[i].shortest)});
  }
  const std::vector<std::string> ring = Order(index).ring();
  if (!ring.empty())
    found.push_back({"gaps", format("{} wait for each other in a ring of shortest gaps", listed(ring)),
                     "an order in which each comes after what it waits for (a load's own order counts)"});
}

}  // namespace dampward::referee
