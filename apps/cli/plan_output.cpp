#include "apps/cli/plan_output.h"

#include <cctype>
#include <memory>
#include <set>

#include "adapters/files/messages.h"
#include "adapters/files/sha256.h"
#include "adapters/files/timetable_sheets.h"
#include "adapters/pdf/pdf.h"
#include "workbench/day_sheets.h"
#include "workbench/label_sets.h"
#include "workbench/mask_sets.h"
#include "workbench/safety_sheets.h"
#include "workbench/sheets.h"
#include "workbench/stock_sheets.h"
#include "workbench/wall_board.h"
#include "workbench/work_cards.h"

namespace dampward::cli {
namespace {

// A person's id as part of a file's name, on any disk.
std::string file_name(const std::string& id, std::set<std::string>& taken) {
  std::string name;
  for (const char c : id) {
    const bool plain = std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '-' || c == '_';
    name += plain ? static_cast<char>(std::tolower(static_cast<unsigned char>(c))) : '_';
  }
  while (!taken.insert(name).second) name += "_";
  return name;
}

// A sheet carries the id of its own content and the start of the plan: what has not changed keeps both, and need not be printed anew.
class Press {
 public:
  Press(const workbench::Plan& plan, const Printing& printing) : plan_(plan), printing_(printing) {}

  // The sheet as `drawn` draws it, its foot filled in.
  template <class Sheet, class Draw>
  files::OutFile print(Sheet sheet, const std::string& name, const std::string& title,
                       const Draw& drawn) const {
    const auto draw = [&] { return pages(drawn(sheet, printing_.paper, printing_.words, *measure_)); };
    const std::string id = sheet_id(draw());
    const std::string start = iso_text(plan_.from, plan_.clock);
    sheet.plan = printing_.words("plan", {id, start.substr(0, 10) + " " + start.substr(11, 5)});
    return {name, title, pdf::pdf_of(draw(), {title, plan_.from})};
  }

 private:
  static papers::Pages pages(papers::Page page) { return {std::move(page)}; }
  static papers::Pages pages(papers::Pages many) { return many; }

  const workbench::Plan& plan_;
  const Printing& printing_;
  std::unique_ptr<papers::Measure> measure_ = pdf::measure();
};

// In the language the person asked for, else that of all sheets.
Printing printing_for(const std::string& person, const workbench::Plan& plan, const Printing& printing) {
  const auto asked = plan.languages.find(person);
  if (asked == plan.languages.end()) return printing;
  const auto words = files::sheet_words(asked->second);
  return words ? Printing{printing.paper, *words} : printing;
}

std::vector<files::OutFile> sheets_of(const workbench::Plan& plan, const Printing& printing) {
  std::vector<files::OutFile> all;
  const Press press(plan, printing);
  std::set<std::string> cards;
  for (const papers::WorkCard& card : workbench::work_cards(plan))
    all.push_back(press.print(card, "card_" + file_name(card.unit, cards) + ".pdf",
                              "work card of " + card.unit, papers::work_card));
  for (const papers::OvenSheet& sheet : workbench::oven_sheets(plan))
    all.push_back(press.print(sheet, "oven_" + sheet.load + ".pdf", "oven sheet of load " + sheet.load,
                              papers::oven_sheet));
  for (const papers::MixingSheet& sheet : workbench::mixing_sheets(plan))
    all.push_back(press.print(sheet, "mixing_" + sheet.pot + ".pdf", "mixing sheet of pot " + sheet.pot,
                              papers::mixing_sheet));
  if (!plan.units.empty())
    all.push_back(
        press.print(workbench::label_set(plan), "labels.pdf", "labels and bag tags", papers::labels));
  std::set<std::string> kinds;
  for (const papers::MaskSet& set : workbench::mask_sets(plan))
    all.push_back(press.print(set, "masks_" + file_name(set.id, kinds) + ".pdf",
                              "cutting patterns of the masks of " + set.id, papers::mask_set));
  if (const auto board = workbench::wall_board(plan))
    all.push_back(press.print(*board, "wall_board.pdf", "wall board of the line", papers::wall_board));
  std::set<std::string> days;
  for (const papers::DaySheet& sheet : workbench::day_sheets(plan)) {
    const Printing own = printing_for(sheet.person, plan, printing);
    all.push_back(Press(plan, own).print(sheet, "day_" + file_name(sheet.person, days) + ".pdf",
                                         "day sheet of " + sheet.person, papers::day_sheet));
  }
  for (const papers::SafetySheet& sheet : workbench::safety_sheets(plan))
    all.push_back(press.print(sheet, "safety.pdf", "safety sheet of the spray place", papers::safety_sheet));
  for (const papers::StockSheet& sheet : workbench::stock_sheets(plan))
    all.push_back(press.print(sheet, "stock.pdf", "stock sheet", papers::stock_sheet));
  return all;
}

}  // namespace

std::vector<files::OutFile> output_of(const workbench::Plan& plan, const Printing& printing) {
  std::set<std::string> people;
  for (const auto& unit : plan.units) {
    for (const auto& step : unit.steps) {
      for (const PersonId& person : step.people) people.insert(person.text);
    }
  }
  std::vector<files::OutFile> all = {
      {"timetable.csv", "every step, in order of time", files::timetable_csv(plan)},
      {"calendar.ics", "every step, as a calendar", files::calendar_text(plan, std::nullopt)}};
  for (files::OutFile& sheet : sheets_of(plan, printing)) all.push_back(std::move(sheet));
  std::set<std::string> taken;
  for (const std::string& person : people) {
    all.push_back({"calendar_" + file_name(person, taken) + ".ics", "the day of " + person,
                   files::calendar_text(plan, PersonId(person))});
  }
  return all;
}

files::OutStamp stamp_of(const workbench::Plan& plan, const std::string& timetable) {
  return {plan.shop, iso_text(plan.from, plan.clock), files::sha256_hex(timetable).substr(0, 12)};
}

}  // namespace dampward::cli
