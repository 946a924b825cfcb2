// What the self-check does with rows that are wrong, or that it cannot meet.
#include <doctest/doctest.h>

#include <string>

#include "adapters/files/published.h"
#include "workbench/selfcheck.h"

using namespace dampward;
using namespace dampward::workbench;

namespace {

// Boiling water, [ASHRAE Fundamentals 2017 ch. 1 table 3].
PublishedRow boiling() {
  PublishedRow row;
  row.place = {"data/published/moist_air.csv", 2, 0};
  row.id = "boiling";
  row.model = "moist_air";
  row.quantity = "saturation_pressure";
  row.inputs = "t_c=100";
  row.unit = "Pa";
  row.published = 101418;
  row.tolerance = 0.0003;
  row.relative = true;
  row.tolerance_reason = "two formulas";
  row.source = "ASHRAE";
  row.read = true;
  return row;
}

// The one problem of a row, as a person reads it.
std::string trouble(const PublishedRow& row) {
  const auto result = selfcheck({&row, 1});
  REQUIRE_FALSE(result.ok());
  CHECK(result.problems().size() == 1);
  return to_text(result.problems().front());
}

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a met value counts, a missed one is told and counted") {
  PublishedRow rows[] = {boiling(), boiling()};
  rows[1].id = "wrong";
  rows[1].published = 110000;
  const auto check = selfcheck(rows);
  REQUIRE(check.ok());
  CHECK(check->rows == 2);
  CHECK(check->out_of_tolerance == 1);
  CHECK(check->checks[0].within);
  CHECK_FALSE(check->checks[1].within);
  CHECK(check->checks[1].tolerance == doctest::Approx(33));
  CHECK(check->checks[1].difference == doctest::Approx(-8580).epsilon(0.001));
  CHECK(says(validation_page(*check), "**missed**"));
}

TEST_CASE("a value from memory proves nothing and fails nothing") {
  PublishedRow row = boiling();
  row.read = false;
  row.published = 1;
  const auto check = selfcheck({&row, 1});
  REQUIRE(check.ok());
  CHECK(check->rows == 0);
  CHECK(check->from_memory == 1);
  CHECK(check->out_of_tolerance == 0);
}

TEST_CASE("a row that cannot be checked is told with its place") {
  PublishedRow row = boiling();
  row.quantity = "saturation_presure";
  CHECK(says(trouble(row), "data/published/moist_air.csv line 2"));
  CHECK(says(trouble(row), "saturation_presure"));

  row = boiling();
  row.inputs = "temperature=100";
  const auto result = selfcheck({&row, 1});
  REQUIRE_FALSE(result.ok());
  CHECK(result.problems().size() == 2);
  CHECK(says(to_text(result.problems()[0]), "t_c is missing"));
  CHECK(says(to_text(result.problems()[1]), "temperature is not an input"));

  row = boiling();
  row.inputs = "t_c=hot";
  CHECK(says(trouble(row), "\"hot\", which is no number"));
  row = boiling();
  row.tolerance = 0;
  CHECK(says(trouble(row), "tolerance"));
  row = boiling();
  row.source = " ";
  CHECK(says(trouble(row), "no source"));
  row = boiling();
  row.tolerance_reason = "";
  CHECK(says(trouble(row), "no reason"));
}

TEST_CASE("two rows cannot share an id") {
  const PublishedRow rows[] = {boiling(), boiling()};
  const auto result = selfcheck(rows);
  REQUIRE_FALSE(result.ok());
  CHECK(says(to_text(result.problems().front()), "a second time"));
}

TEST_CASE("a table of published values with slips names each of them") {
  const std::string head =
      "id,model,quantity,inputs,unit,published,tolerance,tolerance_kind,tolerance_reason,source,status,"
      "note\n";
  const auto good =
      files::read_published("p.csv", head + "a,m,q,t_c=1,Pa,1.5,0.1,rel,because,somebody,read,\n");
  REQUIRE(good.ok());
  CHECK(good->front().published == 1.5);
  CHECK(good->front().relative);
  CHECK(good->front().read);
  CHECK(good->front().place.line == 2);

  const auto bad =
      files::read_published("p.csv", head + "a,m,q,t_c=1,Pa,much,0.1,about,because,somebody,heard,\n");
  REQUIRE_FALSE(bad.ok());
  CHECK(bad.problems().size() == 3);
  CHECK(says(to_text(bad.problems()[0]), "much"));
  CHECK_FALSE(files::read_published("p.csv", "id,model\na,m\n").ok());
}

TEST_CASE("every shipped row whose inputs are lost is refused, none ends the program") {
  const auto rows = files::shipped_published();
  REQUIRE(rows.ok());
  for (PublishedRow row : *rows) {
    CAPTURE(row.id);
    row.inputs = "nothing=1";
    CHECK_FALSE(selfcheck({&row, 1}).ok());
  }
}
