#include "core/papers/step_words.h"

#include <cmath>

#include "core/base/format.h"

namespace dampward::papers {

std::string step_name(const Words& words, const StepKey& key) {
  if (key.code == "coat" && key.turns > 1)
    return words("step_coat_of", {std::to_string(key.turn), std::to_string(key.turns)});
  return words("step_" + key.code);
}

std::string step_reason(const Words& words, const StepKey& key) {
  const std::string sentence = "why_" + key.code;
  return words.has(sentence) ? words(sentence) : "";
}

std::string weekday_name(const Words& words, Instant time, const WallClock& clock) {
  const std::chrono::weekday day(std::chrono::floor<std::chrono::days>(clock.local(time)));
  return words("weekday_" + std::to_string(day.iso_encoding()));
}

std::string clock_of(Instant time, const WallClock& clock) {
  return clock_text(clock.local(time));
}

std::string time_taken(Duration time) {
  const int minutes = static_cast<int>(std::ceil(time.in(minute)-1e-6));
  std::string text;
  if (minutes >= 60) text = std::to_string(minutes / 60) + thin_space + "h";
  if (minutes % 60 == 0 && minutes > 0) return text;
  if (!text.empty()) text += thin_space;
  return text + (minutes >= 60 && minutes % 60 < 10 ? "0" : "") + std::to_string(minutes % 60) + thin_space +
         "min";
}

}  // namespace dampward::papers
