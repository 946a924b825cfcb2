#include "core/solver/detail/on_time.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace dampward::solver::detail {
namespace {

constexpr std::int64_t most_rounds = 150, fewest_rounds = 10;
constexpr std::int64_t most_work = 200'000'000;  // looks at a choice, in all rounds

class Machine {
 public:
  Machine(const BatchProblem& problem, const std::vector<int>& jobs, int m)
      : problem_(problem),
        machine_(problem.machines[m]),
        families_(problem.families),
        by_worth_(problem.families),
        lengths_(problem.families) {
    const auto may_hold = [&](const BatchJob& job) {
      return job.size <= machine_.capacity &&
             std::find(job.machines.begin(), job.machines.end(), m) != job.machines.end();
    };
    for (const int j : jobs) {
      const BatchJob& job = problem.jobs[j];
      if (!may_hold(job)) continue;
      by_worth_[job.family].push_back(j);
      lengths_[job.family].push_back(job.min_time);
      end_ = std::max(end_, job.due);
    }
    for (const OpenInterval& it : machine_.open) {
      if (it.from < it.to && it.from < end_) open_.push_back(it);
    }
    // A batch of late jobs may shorten the way between two set-ups.
    std::vector<int> shortest(problem.families, std::numeric_limits<int>::max());
    for (const BatchJob& job : problem.jobs) {
      if (may_hold(job)) shortest[job.family] = std::min(shortest[job.family], job.min_time);
    }
    for (int f = 0; f < families_; ++f) {
      if (shortest[f] < std::numeric_limits<int>::max()) lengths_[f].push_back(shortest[f]);
    }
    for (auto& list : lengths_) {
      std::sort(list.begin(), list.end());
      list.erase(std::unique(list.begin(), list.end()), list.end());
      choices_ += list.size();
    }
  }

  // Looks at a choice in one round, about.
  std::int64_t work() const {
    const auto choices = static_cast<std::int64_t>(choices_);
    const auto openings = static_cast<std::int64_t>(open_.size());
    return (1 + openings / 4) * (choices + 1) * (families_ + 4) * (end_ + 1);
  }

  // The greatest worth on this machine; adds to `taken` how much of each job that takes.
  double best(const std::vector<double>& price, std::vector<double>& taken) {
    for (auto& list : by_worth_) {
      std::sort(list.begin(), list.end(), [&](int a, int b) {
        const double x = (1 - price[a]) * problem_.jobs[b].size, y = (1 - price[b]) * problem_.jobs[a].size;
        return x != y ? x > y : a < b;
      });
    }
    const std::size_t moments = static_cast<std::size_t>(end_) + 1;
    worth_.assign(moments * families_, 0);
    choice_.assign(moments * families_, {});
    weigh_batches(price);
    for (int now = end_; now-- > 0;) {
      for (int f = 0; f < families_; ++f) weigh(now, f);
    }
    collect(price, taken);
    return worth_[at(0, machine_.initial_family)];
  }

 private:
  struct Choice {
    int family = -1, start = 0, length = 0;  // family -1: to wait
  };

  std::size_t at(int time, int family) const { return static_cast<std::size_t>(time) * families_ + family; }
  bool open(int from, int to) const {
    return std::any_of(open_.begin(), open_.end(),
                       [&](const OpenInterval& it) { return it.from <= from && to <= it.to; });
  }

  // What a batch of those jobs is worth, filled with the worthiest for their size.
  template <class Take>
  double fill(const std::vector<int>& jobs, int start, int length, const std::vector<double>& price,
              const Take& take) const {
    double worth = 0, room = machine_.capacity;
    for (const int j : jobs) {
      const BatchJob& job = problem_.jobs[j];
      const double own = 1 - price[j];
      if (own <= 0 || job.release > start || start + length > job.due || job.min_time > length ||
          job.max_time < length)
        continue;
      const double part = job.size <= room ? 1.0 : room / job.size;
      worth += own * part;
      take(j, part);
      room -= job.size * part;
      if (part < 1) break;
    }
    return worth;
  }

  void weigh_batches(const std::vector<double>& price) {
    gain_.clear();
    std::vector<int> here;
    for (int start = 0; start < end_; ++start) {
      for (int g = 0; g < families_; ++g) {
        here.clear();
        for (const int j : by_worth_[g]) {
          if (problem_.jobs[j].release <= start && start < problem_.jobs[j].due) here.push_back(j);
        }
        for (const int length : lengths_[g])
          gain_.push_back(here.empty() ? 0 : fill(here, start, length, price, [](int, double) {}));
      }
    }
  }

  // worth_[t][f]: from minute t on, free and set up for f.
  void weigh(int now, int f) {
    double best = worth_[at(now + 1, f)];
    std::size_t first = 0;
    for (int g = 0; g < families_; ++g) {
      const int start = now + problem_.setup_times[f][g];
      for (std::size_t k = 0; k < lengths_[g].size() && start < end_; ++k) {
        const int end = start + lengths_[g][k];
        if (end > end_) break;
        const double gain = gain_[static_cast<std::size_t>(start) * choices_ + first + k];
        if (gain + worth_[at(end, g)] <= best || !open(now, end)) continue;
        best = gain + worth_[at(end, g)];
        choice_[at(now, f)] = {g, start, lengths_[g][k]};
      }
      first += lengths_[g].size();
    }
    worth_[at(now, f)] = best;
  }

  void collect(const std::vector<double>& price, std::vector<double>& taken) const {
    int family = machine_.initial_family;
    for (int now = 0; now < end_;) {
      const Choice& choice = choice_[at(now, family)];
      if (choice.family < 0) {
        ++now;
        continue;
      }
      fill(by_worth_[choice.family], choice.start, choice.length, price,
           [&](int j, double part) { taken[static_cast<std::size_t>(j)] += part; });
      family = choice.family;
      now = choice.start + choice.length;
    }
  }

  const BatchProblem& problem_;
  const BatchMachine& machine_;
  int families_, end_ = 0;
  std::vector<OpenInterval> open_;  // before the last due time
  std::vector<std::vector<int>> by_worth_, lengths_;
  std::size_t choices_ = 0;    // families and lengths
  std::vector<double> gain_;   // of a batch: [start][family and length]
  std::vector<double> worth_;  // [time][family]
  std::vector<Choice> choice_;
};

}  // namespace

std::int64_t most_on_time(const BatchProblem& problem, const std::vector<int>& jobs,
                          const std::function<bool()>& keep_going) {
  const bool no_time = std::any_of(problem.jobs.begin(), problem.jobs.end(),
                                   [](const BatchJob& job) { return job.min_time == 0; });
  if (no_time) return static_cast<std::int64_t>(jobs.size());
  std::vector<Machine> machines;
  std::int64_t work = 1;
  for (int m = 0; m < static_cast<int>(problem.machines.size()); ++m) {
    machines.emplace_back(problem, jobs, m);
    work += machines.back().work();
  }
  auto least = static_cast<double>(jobs.size());
  const std::int64_t rounds = std::min(most_rounds, most_work / work);
  if (rounds < fewest_rounds) return static_cast<std::int64_t>(least);
  std::vector<double> price(problem.jobs.size(), 0), taken(problem.jobs.size());
  double hope = 0.1;  // what the next round is to lower the bound by, as a share
  for (std::int64_t round = 0, idle = 0; round < rounds && (!keep_going || keep_going()); ++round) {
    std::fill(taken.begin(), taken.end(), 0.0);
    double bound = 0;
    for (const int j : jobs) bound += price[j];
    for (Machine& machine : machines) bound += machine.best(price, taken);
    idle = bound < least - 1e-3 ? 0 : idle + 1;
    least = std::min(least, bound);
    if (idle == 6) {
      hope /= 2;
      idle = 0;
    }
    double norm = 0;
    const auto slope = [&](int j) { return price[j] <= 0 && taken[j] < 1 ? 0.0 : taken[j] - 1; };
    for (const int j : jobs) norm += slope(j) * slope(j);
    if (norm <= 0) break;
    const double step = (bound - least * (1 - hope)) / norm;
    for (const int j : jobs) price[j] = std::clamp(price[j] + step * slope(j), 0.0, 1.0);
  }
  // Sums of fractions: only what is clearly below a whole number is rounded down.
  return static_cast<std::int64_t>(std::floor(least + 1e-6));
}

}  // namespace dampward::solver::detail
