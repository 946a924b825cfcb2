#include "apps/cli/charts_output.h"

#include <memory>

#include "adapters/files/sha256.h"
#include "adapters/pdf/pdf.h"
#include "core/papers/wall_charts.h"

namespace dampward::cli {
namespace {

// Charts hang on no day; the file must name some hour, always the same.
constexpr Instant no_day{};

class Press {
 public:
  explicit Press(const Printing& printing) : printing_(printing) {}

  // The chart as `drawn` draws it, with the id of its own content in its foot.
  template <class Sheet, class Draw>
  void print(Sheet sheet, const std::string& name, const std::string& title, const Draw& drawn) {
    const auto draw = [&] { return drawn(sheet, printing_.paper, printing_.words, *measure_); };
    const auto bare = draw();
    if (!bare) {
      problems_.insert(problems_.end(), bare.problems().begin(), bare.problems().end());
      return;
    }
    sheet.of.id = sheet_id({*bare});
    files_.push_back({name + ".pdf", title, pdf::pdf_of({draw().value()}, {title, no_day})});
  }

  Result<std::vector<files::OutFile>> done() && {
    if (!problems_.empty()) return problems_;
    return std::move(files_);
  }

 private:
  const Printing& printing_;
  std::unique_ptr<papers::Measure> measure_ = pdf::measure();
  std::vector<files::OutFile> files_;
  Problems problems_;
};

}  // namespace

Result<std::vector<files::OutFile>> charts_output(const workbench::WallCharts& charts,
                                                  const Printing& printing) {
  Press press(printing);
  for (std::size_t i = 0; i < charts.bakes.size(); ++i) {
    const std::string number = charts.bakes.size() > 1 ? "_" + std::to_string(i + 1) : "";
    const std::string& oven = charts.bakes[i].chart.oven;
    press.print(charts.bakes[i], "bake" + number, "oven chart" + (oven.empty() ? "" : " of the " + oven),
                papers::bake_chart);
  }
  press.print(charts.window, "window", "coating chart", papers::window_chart);
  if (charts.litres) press.print(*charts.litres, "litres", "lacquer chart", papers::litres_chart);
  if (charts.fan) press.print(*charts.fan, "fan", "fresh air chart", papers::fan_chart);
  press.print(charts.dew, "dew", "dew point chart", papers::dew_chart);
  return std::move(press).done();
}

files::OutStamp charts_stamp(const workbench::WallCharts& charts, const std::vector<files::OutFile>& files) {
  std::string all;
  for (const files::OutFile& file : files) all += files::sha256_hex(file.bytes);
  return {charts.shop, charts.weather, files::sha256_hex(all).substr(0, 12)};
}

}  // namespace dampward::cli
