#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/base/format.h"

namespace dampward::files {

// What one row of a made file holds, as text, so that a test can put anything there.
struct MadeRow {
  int year = 1987, month = 1, day = 1, hour = 1;  // hour 1 to 24
  std::string temperature = "25.0", dew_point = "20.0", humidity = "74", pressure = "101300";
};

// A year of steady air from 1 January, `year` deciding on 29 February.
inline std::vector<MadeRow> made_year(int year = 1987) {
  const bool leap = year % 4 == 0;
  const int days[] = {31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  std::vector<MadeRow> rows;
  for (int month = 1; month <= 12; ++month) {
    for (int day = 1; day <= days[month - 1]; ++day) {
      for (int hour = 1; hour <= 24; ++hour) {
        MadeRow row;
        row.year = year, row.month = month, row.day = day, row.hour = hour;
        rows.push_back(row);
      }
    }
  }
  return rows;
}

inline constexpr const char* epw_head =
    "LOCATION,Tamarin Delta,-,-,made,000000,-18.50,36.20,2.0,12.0\n"
    "DESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\nHOLIDAYS/DAYLIGHT "
    "SAVINGS,No,0,0,0\n"
    "COMMENTS 1,\nCOMMENTS 2,\nDATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n";  // rows begin on line 9

inline std::string epw(const std::vector<MadeRow>& rows, const std::string& head = epw_head) {
  std::string text = head;
  for (const MadeRow& row : rows) {
    text += format(
        "{},{},{},{},0,?9?9?9?9E0,{},{},{},{},0,0,357,0,0,0,0,0,0,0,0,0.0,0,0,19.3,77777,9,999999999,359,0."
        "11,0,88,"
        "999.0,999.0,99.0\n",
        row.year, row.month, row.day, row.hour, row.temperature, row.dew_point, row.humidity, row.pressure);
  }
  return text;
}

inline std::string tmy3(const std::vector<MadeRow>& rows) {
  std::string text =
      "000000,\"TAMARIN DELTA, WEST\",TD,2.0,-18.500,36.200,12\n"
      "Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),Dry-bulb (C),Dry-bulb source,Dew-point (C),RHum "
      "(%),Pressure (mbar)\n";
  for (const MadeRow& row : rows) {
    text += format("{:02}/{:02}/{:04},{:02}:00,0,{},A,{},{},{}\n", row.month, row.day, row.year, row.hour,
                   row.temperature, row.dew_point, row.humidity,
                   row.pressure == "101300" ? "1013" : row.pressure);
  }
  return text;
}

inline std::string nsrdb(const std::vector<MadeRow>& rows, const std::string& unit = "c") {
  std::string text =
      "Source,Location ID,City,State,Country,Latitude,Longitude,Time Zone,Elevation,Local Time Zone,Dew "
      "Point Units,Temperature "
      "Units,Pressure Units\nNSRDB,000000,-,-,-,-18.5,36.2,2,12,2," +
      unit + "," + unit + ",mbar\nYear,Month,Day,Hour,Minute,GHI,Dew Point,Temperature,Pressure,,,,\n";
  for (const MadeRow& row : rows) {
    text += format("{},{},{},{},30,0,{},{},1013,,,,\n", row.year, row.month, row.day, row.hour - 1,
                   row.dew_point, row.temperature);
  }
  return text;
}

}  // namespace dampward::files
