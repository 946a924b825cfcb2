#include "core/referee/detail/rules.h"

namespace dampward::referee {
namespace {

// What is fixed of both has happened as it did.
bool both_fixed(const std::optional<Work>& a, const std::optional<Work>& b) {
  return a->fixed && b->fixed;
}

struct LoadJudge {
  const Case& open;
  Violations& found;
  const LoadWork& work;
  const Load& load = *work.load;
  std::optional<Work> bake = open.work(load.bake);

  // A member is in the load when its loading or its unloading is in the answer.
  bool is_in(const Member& member) const {
    return open.placement(member.loading) || open.placement(member.unloading);
  }
  bool is_fixed(const Member& member) const { return open.fixed(member.loading) != nullptr; }

  void order(const Member& member) {
    const auto loading = open.work(member.loading), unloading = open.work(member.unloading);
    if (loading && !both_fixed(loading, bake) && loading->at->end > bake->at->start) {
      found.push_back({"load_order",
                       {load.id, member.loading, load.bake},
                       format("\"{}\" ends in minute {}, after the bake \"{}\" starts in {}.", member.loading,
                              loading->at->end, load.bake, bake->at->start)});
    }
    if (unloading && !both_fixed(unloading, bake) && unloading->at->start < bake->at->end) {
      found.push_back({"load_order",
                       {load.id, member.unloading, load.bake},
                       format("\"{}\" starts in minute {}, before the bake \"{}\" ends in {}.",
                              member.unloading, unloading->at->start, load.bake, bake->at->end)});
    }
  }

  void time(const Member& member) {
    const Minute baked = bake->at->end - bake->at->start;
    if (baked >= member.needs || (bake->fixed && is_fixed(member))) return;
    found.push_back({"load_time",
                     {load.id, load.bake, member.loading},
                     format("The bake \"{}\" lasts {} min, but the member of \"{}\" needs {}.", load.bake,
                            baked, member.loading, member.needs)});
  }

  void setting(const Member& member) {
    if (!load.setting_c || (bake->fixed && is_fixed(member))) return;
    const double setting = *load.setting_c;
    const bool cold = member.coldest_c && setting < *member.coldest_c - rounding;
    const bool hot = member.hottest_c && setting > *member.hottest_c + rounding;
    if (!cold && !hot) return;
    found.push_back({"load_setting",
                     {load.id, member.loading},
                     format("Load \"{}\" is set to {} °C, but the member of \"{}\" asks for at {} {} °C.",
                            load.id, setting, member.loading, hot ? "most" : "least",
                            hot ? *member.hottest_c : *member.coldest_c)});
  }

  // Judged where something not fixed is put in: what is in the oven already went in.
  void size() {
    double volume = 0, mass = 0;
    bool free = false;
    for (const Member& member : load.members) {
      if (!is_in(member)) continue;
      volume += member.volume_l;
      mass += member.mass_kg;
      free = free || !is_fixed(member);
    }
    if (!free || !work.oven) return;
    const auto say = [&](double figure, const std::optional<double>& most, const char* unit) {
      if (!most || figure <= *most + rounding) return;
      found.push_back({"load_size",
                       {load.id, work.oven->id},
                       format("Load \"{}\" comes to {} {}, but oven \"{}\" takes {}.", load.id, figure, unit,
                              work.oven->id, *most)});
    };
    say(volume, work.oven->volume_l, "l");
    say(mass, work.oven->mass_kg, "kg");
  }

  void judge() {
    size();
    if (!bake) return;
    for (const Member& member : load.members) {
      if (!is_in(member)) continue;
      order(member);
      setting(member);
      time(member);
    }
  }
};

}  // namespace

void judge_loads(const Case& open, Violations& found) {
  for (const LoadWork& work : open.loads()) LoadJudge{open, found, work}.judge();
}

}  // namespace dampward::referee
