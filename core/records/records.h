#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/id.h"
#include "core/base/problem.h"
#include "core/base/result.h"
#include "core/history/event.h"
#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::records {

// One unit waiting for treatment, as the lead wrote it down.
struct QueuedUnit {
  UnitId serial;
  KindId kind;
  std::vector<std::string> findings;  // mould, damp, low_insulation, corroded_contacts, fault, wax_unknown …
  std::vector<std::string>
      soils;  // dust, oil_grease, fungus, salts, corrosion_products, flux_rosin, old_lacquer
  std::optional<Date> due;
  int priority = 0;  // higher goes first among equal due dates
  std::string note;
  Place place;  // where it stands in the person's file
};

// A lot of something used up: lacquer, thinner, cleaner, tape, desiccant …
struct StockLot {
  LotId lot;
  std::string item;  // id of a lacquer, thinner or cleaner, or a plain word
  Volume amount;
  std::optional<Date> expires;
  std::optional<Date> opened;
  Place place;
};

struct AirReading {
  LocalTime time;
  std::string where;
  Temperature temperature;
  RelativeHumidity humidity;
  Place place;
};

struct Queue {
  std::optional<LocalTime> starts;  // the queue's own start; plan --from overrides it
  std::vector<QueuedUnit> units;
  Problems doubts;  // what looks damaged (a date turned round, zeros lost) though it can be read
};

// Whoever keeps the daily records. Reading only; nothing here is ever rewritten.
class RecordStore {
 public:
  virtual ~RecordStore() = default;
  virtual Result<Queue> queue() const = 0;
  virtual Result<std::vector<StockLot>> stock() const = 0;
  virtual Result<std::vector<AirReading>> air() const = 0;
  // What happened, in the order it was noted; whoever keeps no log has none.
  virtual Result<std::vector<history::Event>> log() const { return std::vector<history::Event>{}; }
};

}  // namespace dampward::records
