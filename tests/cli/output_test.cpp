#include <doctest/doctest.h>
#include <libical/ical.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <map>
#include <memory>
#include <set>

#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

// What plan --out writes, read back by libical (a library of its own for RFC 5545) and by the rules of RFC 4180.

namespace {

namespace fs = std::filesystem;

std::map<std::string, std::string> files_in(const fs::path& folder) {
  std::map<std::string, std::string> files;
  for (const auto& entry : fs::directory_iterator(folder))
    files[entry.path().filename().string()] = whole_text(entry);
  return files;
}

struct Event {
  std::string uid, summary, location;
  time_t starts = 0, ends = 0;
};

std::vector<Event> events_of(const std::string& text) {
  const std::unique_ptr<icalcomponent, void (*)(icalcomponent*)> calendar(
      icalparser_parse_string(text.c_str()), icalcomponent_free);
  REQUIRE(calendar != nullptr);
  CHECK(icalcomponent_isa(calendar.get()) == ICAL_VCALENDAR_COMPONENT);
  CHECK(icalcomponent_count_errors(calendar.get()) == 0);
  CHECK(icalrestriction_check(calendar.get()) == 1);
  const auto said = [](const char* value) { return std::string(value == nullptr ? "" : value); };
  std::vector<Event> events;
  for (icalcomponent* event = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
       event != nullptr; event = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT)) {
    events.push_back({said(icalcomponent_get_uid(event)), said(icalcomponent_get_summary(event)),
                      said(icalcomponent_get_location(event)),
                      icaltime_as_timet(icalcomponent_get_dtstart(event)),
                      icaltime_as_timet(icalcomponent_get_dtend(event))});
  }
  return events;
}

std::string output_of_shell(const std::string& command) {
  std::string text;
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
  REQUIRE(pipe != nullptr);
  for (int c = std::fgetc(pipe.get()); c != EOF; c = std::fgetc(pipe.get())) text += static_cast<char>(c);
  return text;
}

std::vector<std::vector<std::string>> rows_of(const std::string& csv) {
  std::vector<std::vector<std::string>> rows{{""}};
  bool quoted = false;
  for (std::size_t i = 0; i < csv.size(); ++i) {
    const char c = csv[i];
    if (quoted && c == '"' && i + 1 < csv.size() && csv[i + 1] == '"')
      rows.back().back() += csv[++i];
    else if (c == '"')
      quoted = !quoted;
    else if (!quoted && c == ',')
      rows.back().emplace_back();
    else if (!quoted && c == '\r')
      continue;
    else if (!quoted && c == '\n')
      rows.push_back({""});
    else
      rows.back().back() += c;
  }
  rows.pop_back();
  return rows;
}

}  // namespace

TEST_CASE("calendars and CSV hold every step of the plan's JSON, at its times") {
  const DemoShop demo;
  const ScratchFolder scratch;
  const std::string out = (scratch.path() / "sheets").string();
  const Run run = dampward_run({"plan", demo.folder(), "--out", out, "--json"});
  CHECK(run.exit_code == 0);
  const Json plan = only_document(run);
  const auto files = files_in(out);
  const std::vector<Event> events = events_of(files.at("calendar.ics"));
  const auto rows = rows_of(files.at("timetable.csv"));
  std::size_t steps = 0;
  std::map<std::string, Event> by_uid;
  for (const Event& event : events) CHECK(by_uid.emplace(event.uid, event).second);
  std::map<std::string, std::size_t> hands;
  for (const Json& unit : plan["treatments"]) {
    for (const Json& step : unit["steps"]) {
      ++steps;
      const std::string serial = unit["unit"], id = step["id"], title = step["title"];
      const Event& event = by_uid.at(serial + "." + id + "@dampward");
      CHECK(event.summary == serial + ": " + title);
      CHECK(event.ends >= event.starts);
      CHECK(std::any_of(rows.begin(), rows.end(), [&](const std::vector<std::string>& row) {
        return row.size() == 10 && row[0] == step["starts_at"] && row[1] == step["ends_at"] &&
               row[2] == serial && row[4] == id;
      }));
      for (const Json& person : step["people"]) ++hands[person.get<std::string>()];
    }
  }
  CHECK(events.size() == steps);
  CHECK(rows.size() == steps + 1);
  REQUIRE(hands.size() > 1);
  for (const auto& [person, count] : hands)
    CHECK(events_of(files.at("calendar_" + person + ".ics")).size() == count);
  // 2027-02-01 07:00 at four hours behind Greenwich.
  CHECK(files.at("calendar.ics").find("DTSTAMP:20270201T110000Z") != std::string::npos);
}

TEST_CASE(
    "the manifest lists every file with its length and digest, and the same plan gives the same bytes") {
  const DemoShop demo;
  const ScratchFolder scratch;
  const auto written = [&](const char* name) {
    const std::string out = (scratch.path() / name).string();
    CHECK(dampward_run({"plan", demo.folder(), "--out", out}).exit_code == 0);
    return files_in(out);
  };
  const auto first = written("one"), second = written("two");
  CHECK(first == second);
  const Json manifest = Json::parse(first.at("manifest.json"));
  CHECK(manifest["format"] == "dampward output");
  CHECK(manifest["files"].size() + 1 == first.size());
  for (const Json& file : manifest["files"]) CHECK(first.at(file["name"]).size() == file["bytes"]);
}

TEST_CASE(
    "every load has its sheet, in the paper and language asked for, and keeps it while nothing in it "
    "changes") {
  const DemoShop demo;
  const ScratchFolder scratch;
  const auto sheets = [&](const char* name, std::vector<std::string> more) {
    const std::string out = (scratch.path() / name).string();
    std::vector<std::string> asked = {"plan", demo.folder(), "--out", out};
    asked.insert(asked.end(), more.begin(), more.end());
    CHECK(dampward_run(asked).exit_code == 0);
    return files_in(out);
  };
  const auto first = sheets("first", {});
  const Json plan = only_document(dampward_run({"plan", demo.folder(), "--json"}));
  for (const Json& load : plan["loads"]) {
    const std::string id = load["id"], path = (scratch.path() / "first" / ("oven_" + id + ".pdf")).string();
    const std::string text = output_of_shell("pdftotext -layout '" + path + "' -");
    for (const Json& serial : load["units"]) CHECK(text.find(serial.get<std::string>()) != std::string::npos);
    CHECK(text.find("explodes") != std::string::npos);
    CHECK(text.find("limit") != std::string::npos);
    CHECK(text.find(std::to_string(static_cast<int>(load["set_point_c"].get<double>()))) !=
          std::string::npos);
    CHECK(output_of_shell("pdfinfo '" + path + "'").find("Pages:           1") != std::string::npos);
  }
  for (const Json& pot : plan["mixing"]) {
    const std::string path =
        (scratch.path() / "first" / ("mixing_" + pot["pot"].get<std::string>() + ".pdf")).string();
    const std::string text = output_of_shell("pdftotext -layout '" + path + "' -");
    for (const Json& lot : pot["lots"]) CHECK(text.find(lot["lot"].get<std::string>()) != std::string::npos);
    for (const Json& serial : pot["units"]) CHECK(text.find(serial.get<std::string>()) != std::string::npos);
    CHECK(text.find(pot["mix_at"].get<std::string>().substr(11, 5)) != std::string::npos);
  }
  // A unit of another load is put off: the first load's sheet stays as it was, to the byte.
  const std::string late = plan["loads"].back()["units"][0];
  std::vector<std::string> rows = demo.queue_rows();
  std::erase_if(rows, [&](const std::string& row) { return row.starts_with(late); });
  demo.write_queue(rows);
  const auto second = sheets("second", {});
  CHECK(first.at("oven_L1.pdf") == second.at("oven_L1.pdf"));
  CHECK(first.at("calendar.ics") != second.at("calendar.ics"));
  const auto letter = sheets("letter", {"--paper", "letter", "--lang", "es"});
  CHECK(letter.at("oven_L1.pdf") != second.at("oven_L1.pdf"));
  const std::string path = (scratch.path() / "letter/oven_L1.pdf").string();
  CHECK(output_of_shell("pdfinfo '" + path + "'").find("612 x 792 pts") != std::string::npos);
  CHECK(output_of_shell("pdftotext -layout '" + path + "' -").find("Hoja del horno") != std::string::npos);
  CHECK(dampward_run({"plan", demo.folder(), "--out", (scratch.path() / "x").string(), "--lang", "xx"})
            .exit_code == 2);
  CHECK(dampward_run({"plan", demo.folder(), "--out", (scratch.path() / "x").string(), "--paper", "a5"})
            .exit_code == 2);
}

TEST_CASE(
    "the wall board holds every unit, window and refusal, and everybody's day sheet speaks the language they "
    "asked for") {
  const DemoShop demo;
  const ScratchFolder scratch;
  const std::string out = (scratch.path() / "out").string();
  CHECK(dampward_run({"plan", demo.folder(), "--out", out}).exit_code == 0);
  const auto text_of = [&](const std::string& name) {
    std::string text = output_of_shell("pdftotext '" + out + "/" + name + "' -");
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text;
  };
  const auto holds = [](const std::string& text, const std::string& said) {
    CHECK_MESSAGE(text.find(said) != std::string::npos, said);
  };
  const Json plan = only_document(dampward_run({"plan", demo.folder(), "--json"}));
  const std::string board = text_of("wall_board.pdf");
  for (const Json& unit : plan["treatments"]) holds(board, unit["unit"]);
  for (const Json& refusal : plan["refused"]) {
    holds(board, refusal["unit"]);
    holds(board, refusal["reason"].get<std::string>());
  }
  const std::string painter = text_of("day_painter.pdf"), technician = text_of("day_technician.pdf");
  std::string days = painter + technician + text_of("day_assistant.pdf") + text_of("day_lead.pdf");
  REQUIRE_FALSE(plan["windows"].empty());
  for (const Json& window : plan["windows"]) {
    const std::string shuts = window["closes_at"].get<std::string>().substr(11, 5);
    holds(board, shuts);
    holds(days, shuts);
  }
  holds(painter, "Day sheet");
  holds(technician, "Hoja del día");
  holds(text_of("day_assistant.pdf"), "Lembar harian");
}

TEST_CASE("an earlier output is replaced whole, and a folder with anything else in it is never touched") {
  const DemoShop demo;
  const ScratchFolder scratch;
  const fs::path out = scratch.path() / "sheets";
  const auto write = [&] { return dampward_run({"plan", demo.folder(), "--out", out.string() + "/"}); };
  CHECK(write().exit_code == 0);
  demo.write_queue({"TD-0311,river_phone,damp,dust,,0,"});
  CHECK(write().exit_code == 0);
  CHECK(files_in(out).at("timetable.csv").find("TD-0312") == std::string::npos);
  scratch.write("sheets/my notes.txt", "mine");
  const auto before = files_in(out);
  const Run refused = write();
  CHECK(refused.exit_code == 2);
  CHECK(refused.err.find("my notes.txt") != std::string::npos);
  CHECK(files_in(out) == before);
  CHECK_FALSE(fs::exists(scratch.path() / "sheets.part"));
}

TEST_CASE("a place that cannot be written leaves nothing behind and says so") {
  const DemoShop demo;
  const ScratchFolder scratch;
  scratch.write("file", "text");
  const Run into_a_file = dampward_run({"plan", demo.folder(), "--out", (scratch.path() / "file").string()});
  CHECK(into_a_file.exit_code == 2);
  CHECK(whole_text(scratch.path() / "file") == "text");
  const Run nowhere =
      dampward_run({"plan", demo.folder(), "--out", (scratch.path() / "no/such/place").string()});
  CHECK(nowhere.exit_code == 2);
  CHECK(nowhere.out.empty());
}

TEST_CASE("serials and names that a spreadsheet or a calendar would trip over come through as text") {
  const DemoShop demo;
  demo.replace("kinds.toml", "name = \"river-launch radio\"",
               "name = \"radio, \\\"blue; red\\\" \\u0645\\u0630\\u064a\\u0627\\u0639 \\U0001F4FB with a "
               "name that is long enough to be "
               "folded more than once by whoever writes a calendar\"");
  demo.write_queue({"=1+1,river_radio,damp,dust,,0,", "@cmd,river_radio,damp,dust,,0,"});
  const ScratchFolder scratch;
  const std::string out = (scratch.path() / "sheets").string();
  REQUIRE(dampward_run({"plan", demo.folder(), "--out", out}).exit_code == 0);
  const auto files = files_in(out);
  for (const auto& row : rows_of(files.at("timetable.csv"))) {
    REQUIRE(row.size() == 10);
    for (const std::string& field : row)
      CHECK((field.empty() || std::string("=+-@").find(field[0]) == std::string::npos));
  }
  const std::string& calendar = files.at("calendar.ics");
  const auto events = events_of(calendar);
  CHECK(events.front().summary.starts_with("=1+1: "));
  std::size_t line = 0;
  for (const char c : calendar) {
    line = c == '\n' ? 0 : line + 1;
    CHECK(line <= 76);  // 75 octets and the carriage return
  }
  CHECK(calendar.find("\\;") != std::string::npos);
}
