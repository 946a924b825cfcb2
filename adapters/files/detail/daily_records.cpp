#include "adapters/files/detail/daily_records.h"

#include <algorithm>
#include <charconv>
#include <map>

#include "adapters/files/csv_rows.h"
#include "adapters/files/detail/spreadsheet_damage.h"
#include "adapters/files/words.h"
#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files::detail {
namespace {

using records::AirReading;
using records::Queue;
using records::QueuedUnit;
using records::StockLot;

constexpr std::string_view date_like = "a date written year-month-day, such as 2026-12-04";
const std::vector<std::string> finding_words = {"mould", "damp",      "low_insulation", "corroded_contacts",
                                                "fault", "corrosion", "wax_unknown"};

// Reads the sheet and hands each row to `read`; rows that begin with # are named, since a serial may begin so by mistake.
template <class Read>
void each_row(const std::string& file, std::string_view text, const std::vector<std::string>& required,
              const std::vector<std::string>& optional, Proof& proof, Read&& read) {
  const auto sheet = read_csv(file, text);
  if (!sheet) {
    proof.faults.insert(proof.faults.end(), sheet.problems().begin(), sheet.problems().end());
    return;
  }
  const CsvColumns columns(*sheet, required, optional, proof);
  check_row_lengths(*sheet, proof);
  for (const std::string& name : required) {
    if (!columns.has(name)) return;
  }
  for (const CsvCell& comment : sheet->comments) {
    if (comment.line > sheet->header.front().line &&
        comment.text.find(sheet->separator) != std::string::npos) {
      proof.warnings.push_back({{file, comment.line},
                                format("a row that begins with #: \"{}\"", comment.text),
                                "a row without it, if it is meant to count",
                                "It is left unread."});
    }
  }
  for (const CsvRow& row : sheet->rows) {
    RowReader reader(*sheet, columns, row, proof);
    read(reader);
  }
}

std::optional<Date> date_of(RowReader& row, std::string_view column) {
  const std::string text = row.text(column);
  if (text.empty()) return std::nullopt;
  if (const auto date = parse_date(text)) return date;
  if (const auto midnight = parse_local_time(text); midnight && text.find("00:00") != std::string::npos) {
    return Date{std::chrono::floor<std::chrono::days>(*midnight)};
  }
  row.fault(column, "which is no date in the form read here", date_like, how_to_write(text));
  return std::nullopt;
}

void read_start(const std::string& file, std::string_view text, Queue& queue, Proof& proof) {
  const auto sheet = read_csv(file, text);
  if (!sheet) return;  // told already
  for (const CsvCell& comment : sheet->comments) {
    const std::string small = lower_case(comment.text);
    if (!small.starts_with("start")) continue;
    const std::size_t colon = comment.text.find(':');
    const std::string_view written =
        trimmed(std::string_view(comment.text).substr(std::min(colon, comment.text.size() - 1) + 1));
    queue.starts = parse_local_time(written);
    if (!queue.starts) {
      proof.faults.push_back({{file, comment.line},
                              format("start \"{}\"", written),
                              "a date and time such as # start: 2026-11-30 07:00",
                              how_to_write(written.substr(0, written.find(' ')))});
    }
  }
}

std::vector<std::string> soils_of(RowReader& row) {
  std::vector<std::string> soils = row.list("soil", "/+,;|");
  for (std::string& soil : soils) {
    soil = lower_case(soil);
    if (std::find(soil_words.begin(), soil_words.end(), soil) == soil_words.end()) {
      row.fault("soil", format("with the unknown soil \"{}\"", soil), "one or more of " + listed(soil_words),
                did_you_mean(soil, soil_words));
    }
  }
  return soils;
}

std::vector<std::string> findings_of(RowReader& row) {
  std::vector<std::string> findings = row.list("findings", "/+,;|");
  for (std::string& finding : findings) {
    finding = lower_case(finding);
    const bool known = std::find(finding_words.begin(), finding_words.end(), finding) != finding_words.end();
    if (!known) {
      row.warn("findings", format("with the finding \"{}\", which changes nothing in the route", finding),
               "one or more of " + listed(finding_words), did_you_mean(finding, finding_words));
    }
  }
  return findings;
}

int priority_of(RowReader& row) {
  const auto number = row.number("priority");
  if (!number) return 0;
  if (*number != static_cast<int>(*number) || *number < -100 || *number > 100) {
    row.fault("priority", "which is no whole number from -100 to 100",
              "0, or a higher number for what goes first");
    return 0;
  }
  return static_cast<int>(*number);
}

QueuedUnit unit_of(RowReader& row, const KnownIds& known) {
  QueuedUnit unit;
  unit.place = row.place("serial");
  unit.serial = UnitId(row.text("serial"));
  if (row.needed("serial", "the unit's serial") && shortened_serial(unit.serial.text)) {
    row.fault("serial", "which a spreadsheet has shortened like a number",
              "the serial as it stands on the unit", "Set the column to text, then write the serial again.");
  }
  unit.kind = KindId(row.text("kind"));
  if (row.needed("kind", "the name of a kind") && known.complete &&
      std::find(known.kinds.begin(), known.kinds.end(), unit.kind.text) == known.kinds.end()) {
    row.fault("kind", "a kind nobody knows",
              "a kind of kinds.toml or a shipped archetype: " + listed(known.kinds),
              did_you_mean(unit.kind.text, known.kinds));
  }
  unit.findings = findings_of(row);
  unit.soils = soils_of(row);
  unit.due = date_of(row, "due");
  unit.priority = priority_of(row);
  unit.note = row.text("note");
  return unit;
}

void check_serials(const Queue& queue, Proof& proof) {
  std::map<std::string, Place> first;
  std::vector<std::string> all;
  for (const QueuedUnit& unit : queue.units) {
    if (unit.serial.empty()) continue;
    all.push_back(unit.serial.text);
    const auto [same, added] = first.emplace(lower_case(unit.serial.text), unit.place);
    if (!added) {
      proof.faults.push_back({unit.place, format("serial \"{}\" a second time", unit.serial.text),
                              format("each serial once; the first stands in line {}", same->second.line),
                              "Remove one of the rows, or correct its serial."});
    }
  }
  for (const QueuedUnit& unit : queue.units) {
    if (const auto likely = with_lost_zeros(unit.serial.text, all)) {
      proof.warnings.push_back({unit.place,
                                format("serial \"{}\" among serials with leading zeros", unit.serial.text),
                                format("\"{}\", if a spreadsheet has taken its zeros", *likely),
                                "Set the column to text, then write the serial again."});
    }
  }
}

// A due date before the start, which with day and month exchanged would lie after it.
void check_due_dates(const Queue& queue, Proof& proof) {
  if (!queue.starts) return;
  const auto start_day = Date{std::chrono::floor<std::chrono::days>(*queue.starts)};
  for (const QueuedUnit& unit : queue.units) {
    if (!unit.due || *unit.due >= start_day) continue;
    const auto turned = turned_round(*unit.due);
    if (turned && *turned >= start_day) {
      proof.warnings.push_back(
          {unit.place,
           format("due {} of \"{}\", before the start of the queue", iso_text(*unit.due), unit.serial.text),
           format("{}, if day and month are turned round", iso_text(*turned)), ""});
    }
  }
}

}  // namespace

Queue read_queue(const std::string& file, std::string_view text, const KnownIds& known, Proof& proof) {
  Queue queue;
  const std::size_t warnings_before = proof.warnings.size();
  read_start(file, text, queue, proof);
  each_row(file, text, {"serial", "kind"}, {"findings", "soil", "due", "priority", "note"}, proof,
           [&](RowReader& row) { queue.units.push_back(unit_of(row, known)); });
  check_serials(queue, proof);
  check_due_dates(queue, proof);
  queue.doubts.assign(proof.warnings.begin() + static_cast<std::ptrdiff_t>(warnings_before),
                      proof.warnings.end());
  return queue;
}

std::vector<StockLot> read_stock(const std::string& file, std::string_view text, const KnownIds& known,
                                 Proof& proof) {
  std::vector<StockLot> lots;
  std::map<std::string, int> first_line;
  each_row(file, text, {"lot", "item", "amount"}, {"expires", "opened"}, proof, [&](RowReader& row) {
    StockLot lot;
    lot.place = row.place("lot");
    lot.lot = LotId(row.text("lot"));
    lot.item = row.text("item");
    if (row.needed("lot", "the number of the lot")) {
      const auto [same, added] = first_line.emplace(lot.lot.text, lot.place.line);
      if (!added)
        row.fault("lot", "a second time", format("each lot once; the first stands in line {}", same->second));
    }
    const bool liquid =
        std::find(known.liquids.begin(), known.liquids.end(), lot.item) != known.liquids.end();
    if (row.needed("item", "the id of a lacquer, thinner or cleaner, or a plain word") && !liquid) {
      const std::string guess = did_you_mean(lot.item, known.liquids);
      if (!guess.empty() && known.complete)
        row.fault("item", "which is near a known liquid but is none", "the id of a liquid", guess);
    }
    lot.expires = date_of(row, "expires");
    lot.opened = date_of(row, "opened");
    if (!row.needed("amount", looks_like<Volume>())) return;
    if (!liquid && !quantity_from_text<Volume>(row.text("amount"), Decimal::either)) {
      row.warn("amount", "of something that is no known liquid", "a volume",
               "The row is left out of the plan.");
      return;
    }
    const auto amount = row.quantity<Volume>("amount");
    if (!amount) return;
    lot.amount = *amount;
    lots.push_back(std::move(lot));
  });
  return lots;
}

std::vector<AirReading> read_air(const std::string& file, std::string_view text, Proof& proof) {
  std::vector<AirReading> readings;
  each_row(file, text, {"time", "temperature", "humidity"}, {"place"}, proof, [&](RowReader& row) {
    AirReading reading;
    reading.place = row.place("time");
    reading.where = row.text("place");
    const auto time = parse_local_time(row.text("time"));
    if (row.needed("time", "a date and time such as 2026-11-30 06:40") && !time) {
      const std::string date = row.text("time").substr(0, row.text("time").find(' '));
      row.fault("time", "which is no date and time in the form read here",
                "a date and time such as 2026-11-30 06:40", how_to_write(date));
    }
    row.needed("temperature", looks_like<Temperature>());
    row.needed("humidity", looks_like<RelativeHumidity>());
    const auto temperature = row.quantity<Temperature>("temperature");
    const auto humidity = row.quantity<RelativeHumidity>("humidity");
    if (!time || !temperature || !humidity) return;
    reading.time = *time;
    reading.temperature = *temperature;
    reading.humidity = *humidity;
    readings.push_back(std::move(reading));
  });
  return readings;
}

}  // namespace dampward::files::detail
