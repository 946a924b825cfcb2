#include "apps/cli/exposure_summary.h"

#include "apps/cli/page_text.h"
#include "core/base/format.h"

namespace dampward::cli {
namespace {

constexpr std::size_t page_width = 80;

void append(std::vector<std::string>& lines, const std::string& text, std::size_t indent = 3) {
  const auto more = wrapped(text, page_width, indent);
  lines.insert(lines.end(), more.begin(), more.end());
}

std::string month_names(const std::vector<unsigned>& months) {
  static constexpr const char* names[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                          "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  std::string text;
  for (unsigned month : months) text += (text.empty() ? "" : ", ") + std::string(names[month - 1]);
  return text.empty() ? "none" : text;
}

}  // namespace

std::vector<std::string> exposure_summary(const workbench::ExposureReport& report, const UnitText& units) {
  std::vector<std::string> lines;
  append(lines,
         format("{} ({}): {} hours, {} filled in, {} clamped, {} gaps left out", report.station, report.kind,
                report.hours, report.filled_hours, report.clamped_hours, report.gaps.size()));
  append(lines, format("mean {}, {} %; wet (above 80 %, above freezing) {} h; worst months {}",
                       units.temperature(report.climate.mean_temperature),
                       fixed(report.climate.mean_humidity.percent(), 0), report.wet_hours,
                       month_names(report.climate.worst_months)));
  lines.push_back("");
  lines.push_back("MOULD INDEX REACHED (0 none, 3 first seen by eye, 6 all over) AND CONDENSATION");
  lines.push_back(" storage          raw wood,   cloth wire,  dusty      clean      condensation");
  lines.push_back("                  leather     board edges  paint      lacquer    h");
  for (const auto& storage : report.storage) {
    const auto& index = storage.mould_max;
    lines.push_back(format(" {} {} {} {} {} {}", fitted(exposure::name(storage.storage), 16),
                           fitted(fixed(index[0], 1), 11), fitted(fixed(index[1], 1), 12),
                           fitted(fixed(index[2], 1), 10), fitted(fixed(index[3], 1), 10),
                           fixed(storage.condensation.in(hour), 0)));
  }
  lines.push_back("");
  lines.push_back("CORROSION OUTDOORS (ISO 9223 functions: they rank places, they forecast no set)");
  std::string metals;
  for (const auto& metal : report.corrosion.metals) {
    metals += (metals.empty() ? " " : ", ") +
              format("{} {}", exposure::name(metal.metal), exposure::name(metal.category));
    if (metal.worst != metal.category) metals += format(" to {}", exposure::name(metal.worst));
  }
  append(lines, metals + "; salt " + report.corrosion.salt.source);
  lines.push_back("");
  lines.push_back("TREAT FIRST");
  for (const auto& sentence : report.treat_first) append(lines, " - " + sentence);
  lines.push_back("");
  append(lines, "Months, first sightings and what the models leave out: the same command with --json.");
  return lines;
}

}  // namespace dampward::cli
