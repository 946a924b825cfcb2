#include "core/line/detail/impossible.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/line/detail/oven_limits.h"

namespace dampward::line::detail {
namespace {

// Settings that differ by less are written differently, not set differently.
constexpr TemperatureStep setting_slack = 1e-3 * kelvin;

class Finder {
 public:
  explicit Finder(const Problem& problem) : problem_(problem) {
    for (const Operation& op : problem.operations) operations_[op.id] = &op;
    for (const Oven& oven : problem.ovens) ovens_[oven.id] = &oven;
    for (const Fixed& fixed : problem.fixed) fixed_[fixed.operation] = &fixed;
  }

  Problems all() {
    ring();
    for (const Load& load : problem_.loads) {
      size(load);
      bake(load);
      in_one_oven(load);
    }
    return std::move(faults_);
  }

 private:
  void add(std::string found, std::string expected) {
    faults_.push_back({{"timetable problem"}, std::move(found), std::move(expected), ""});
  }

  // Whatever is left when nothing can be taken away that waits for nobody waits in a ring.
  void ring() {
    std::map<std::string, std::set<std::string>> waits_for;
    for (const Gap& gap : problem_.gaps) waits_for[gap.to].insert(gap.from);
    for (const Load& load : problem_.loads) {
      for (const Member& member : load.members) {
        waits_for[load.bake].insert(member.loading);
        waits_for[member.unloading].insert(load.bake);
      }
    }
    std::map<std::string, std::size_t> left;
    std::map<std::string, std::vector<std::string>> before;
    std::vector<std::string> ready;
    for (const auto& [id, op] : operations_) {
      left[id] = waits_for[id].size();
      for (const std::string& other : waits_for[id]) before[other].push_back(id);
      if (left[id] == 0) ready.push_back(id);
    }
    while (!ready.empty()) {
      const std::string id = ready.back();
      ready.pop_back();
      for (const std::string& next : before[id]) {
        if (--left[next] == 0) ready.push_back(next);
      }
      left.erase(id);
    }
    if (left.empty()) return;
    std::vector<std::string> path;
    std::string at = left.begin()->first;
    while (std::find(path.begin(), path.end(), at) == path.end()) {
      path.push_back(at);
      const auto& others = waits_for[at];
      at = *std::find_if(others.begin(), others.end(), [&](const auto& id) { return left.contains(id); });
    }
    path.erase(path.begin(), std::find(path.begin(), path.end(), at));
    add(format("operations that wait for each other in a ring: {}", listed(path)),
        "gaps that let one of them begin");
  }

  void size(const Load& load) {
    const bool fits = std::any_of(load.ovens.begin(), load.ovens.end(),
                                  [&](const std::string& id) { return takes(*ovens_.at(id), load); });
    if (fits) return;
    add(format("load {} of {} L and {} kg", load.id, volume_of(load).in(litre), mass_of(load).in(kilogram)),
        format("a load that one of {} takes", listed(load.ovens)));
  }

  void bake(const Load& load) {
    const Minute length = operations_.at(load.bake)->length;
    for (const Member& member : load.members) {
      if (member.needs > length)
        add(format("load {} bakes {} min and {} needs {}", load.id, length, member.loading, member.needs),
            "a bake as long as its neediest member needs");
      const bool cold = member.coldest && *load.setting < *member.coldest - setting_slack;
      const bool hot = member.hottest && *load.setting > *member.hottest + setting_slack;
      if (cold || hot)
        add(format("load {} set to {} °C, which {} does not stand", load.id, load.setting->celsius(),
                   member.loading),
            "a setting between the coldest and hottest of every member");
    }
  }

  void in_one_oven(const Load& load) {
    std::set<std::string> named;
    bool begun = false;
    const auto look = [&](const std::string& id) {
      const auto fixed = fixed_.find(id);
      if (fixed == fixed_.end()) return;
      begun = true;
      if (ovens_.contains(fixed->second->station)) named.insert(fixed->second->station);
    };
    look(load.bake);
    for (const Member& member : load.members) look(member.loading), look(member.unloading);
    if (!begun) return;
    if (named.empty() && load.ovens.size() == 1) return;
    const bool one = named.size() == 1 &&
                     std::find(load.ovens.begin(), load.ovens.end(), *named.begin()) != load.ovens.end();
    if (!one)
      add(format("load {} is begun, and what is fixed of it names {}", load.id,
                 named.empty() ? "no oven" : listed(std::vector<std::string>(named.begin(), named.end()))),
          format("one of its ovens as the station: {}", listed(load.ovens)));
  }

  const Problem& problem_;
  Problems faults_;
  std::map<std::string, const Operation*> operations_;
  std::map<std::string, const Oven*> ovens_;
  std::map<std::string, const Fixed*> fixed_;
};

}  // namespace

Problems impossible(const Problem& problem) {
  return Finder(problem).all();
}

}  // namespace dampward::line::detail
