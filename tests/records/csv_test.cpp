// Records as a table and back.
#include <algorithm>
#include <map>

#include <catch2/catch.hpp>

#include "records/csv_rows.h"
#include "records/records_csv.h"
#include "records/sample_record.h"

using namespace laywright;
using namespace laywright::testing;
using Catch::Matchers::Contains;

namespace {

std::map<std::string, std::string> files;

Result<std::string> read_picture(const std::string& name) {
  if (files.count(name) > 0) return files[name];
  Issue issue;
  issue.what = "there is no such file";
  return issue;
}

Result<ReadRecords> read(const std::string& csv) { return read_records_table(csv, "r.csv", read_picture); }

std::vector<SpoolRecord> two_records() {
  SpoolRecord first = sample_record("17"), second = sample_record("=1+1");
  first.identity = std::string(32, 'a');
  second.identity = std::string(32, 'b');
  first.number = 3;
  second.number = 12;
  first.entries[0].readings = {reading_of(1, 102.1, 1.0 / 3.0, 102.2)};
  first.entries[0].fitted = {{"traverse.pitch", 1.02, 1.0 / 3.0, 1e-17, false}};
  first.entries[0].pictures = {picture_of(png_bytes(), "left, \"edge\"", "a.png").value()};
  first.entries.push_back(sample_entry());
  first.entries[1].decision = Decision::rejected;
  first.entries[1].reason = "a\nb";
  return {first, second};
}

std::string with(std::string csv, const std::string& from, const std::string& to) {
  const std::size_t at = csv.find(from);
  REQUIRE(at != std::string::npos);
  return csv.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("a table of records reads back as the same records") {
  const std::vector<SpoolRecord> records = two_records();
  const RecordsTable table = records_table(records, true);
  REQUIRE(table.pictures.size() == 1);
  files = {{table.pictures[0].name, png_bytes()}};
  const Result<ReadRecords> back = read(table.csv);
  REQUIRE(back.ok());
  CHECK(back.value().pictures_left_out == 0);
  CHECK(records_table(back.value().records, true).csv == table.csv);
  CHECK(back.value().records[0].plan_text == records[0].plan_text);
  CHECK(back.value().records[0].entries[0].note == records[0].entries[0].note);
  CHECK(back.value().records[0].entries[0].fitted == records[0].entries[0].fitted);
  CHECK(back.value().records[0].planned == records[0].planned);
  CHECK(back.value().records[0].entries[0].pictures[0].bytes == png_bytes());
  CHECK(back.value().records[1].spool == "=1+1");
  // Alone, it names its pictures.
  const Result<ReadRecords> alone = read(records_table(records, false).csv);
  REQUIRE(alone.ok());
  CHECK(alone.value().pictures_left_out == 1);
}

TEST_CASE("a table that was opened and saved by a spreadsheet reads alike") {
  std::string csv = "\xef\xbb\xbf";
  // Line ends outside of quotes.
  bool quoted = false;
  for (const char c : records_table(two_records(), false).csv) {
    if (c == '"') quoted = !quoted;
    if (c == '\n' && !quoted) csv += '\r';
    csv += c;
  }
  const Result<ReadRecords> back = read(csv);
  REQUIRE(back.ok());
  CHECK(records_table(back.value().records, false).csv == [] {
    std::vector<SpoolRecord> records = two_records();
    records[0].entries[0].pictures.clear();
    return records_table(records, false).csv;
  }());
}

TEST_CASE("a table that is broken is refused with its line") {
  const std::vector<SpoolRecord> records = two_records();
  const RecordsTable table = records_table(records, true);
  files = {{table.pictures[0].name, png_bytes()}};
  const std::string csv = table.csv;
  struct Wrong {
    std::string csv, says;
  };
  // The first record's line begins the second line of the file, and its plan takes 17 of them.
  const std::string second_planned = "planned,3,,2,1,20.5";
  for (const Wrong& wrong : {
           Wrong{"a,b\n1,2\n", "r.csv:1: error: is no table of records"},
           Wrong{"", "is no table of records"},
           Wrong{with(csv, "middle_mm", "midle_mm"), "r.csv:1: error: midle_mm: is no column"},
           Wrong{csv.substr(0, csv.size() - 30), "r.csv:"},
           Wrong{with(csv, second_planned, "planned,3,,2,1,20.5x"), "layer_turns = 20.5x: is no number"},
           Wrong{with(csv, second_planned, "planned,3,,3,1,20.5"), "is not the next layer"},
           Wrong{with(csv, second_planned, "planned,3,,2,,20.5"), "the end of the wind"},
           Wrong{with(csv, second_planned, "planed,3,,2,1,20.5"), "entry: is missing"},
           Wrong{with(csv, second_planned, "planned,4,,2,1,20.5"), "record = 4: is of no record"},
           Wrong{with(csv, "record,12,", "record,3,"), "stands in the table twice"},
           Wrong{with(csv, records[1].identity, records[0].identity), "identity"},
           Wrong{with(csv, "1.02 mm", "1.03 mm"), "revision"},
           Wrong{with(csv, "[fiber]", "[fibre]"), "plan: is not sound"},
           Wrong{with(csv, "2026-11-20", "2026-02-30"), "is no day of the calendar"},
           Wrong{with(csv, "rejected", "refused"), "decision = refused"},
           Wrong{with(csv, table.pictures[0].name, "../../secret.png"), "is not the name of a picture"},
           Wrong{with(csv, table.pictures[0].name, "picture-gone.png"), "there is no such file"},
           Wrong{with(csv, hash_text(png_bytes()), "0000000000000000"), "its bytes differ"},
       }) {
    CAPTURE(wrong.says);
    const Result<ReadRecords> back = read(wrong.csv);
    REQUIRE_FALSE(back.ok());
    std::string all;
    for (const Issue& issue : back.issues()) all += to_text(issue) + "\n";
    CHECK_THAT(all, Contains(wrong.says));
  }
  // Lines within quotes count: the second planned line of the first record stands behind its plan.
  const Result<ReadRecords> wrong = read(with(csv, second_planned, "planned,3,,2,1,x"));
  REQUIRE_FALSE(wrong.ok());
  const auto lines_before =
      std::count(csv.begin(), csv.begin() + static_cast<std::ptrdiff_t>(csv.find(second_planned)), '\n');
  CHECK(wrong.issues().front().line == lines_before + 1);
}

TEST_CASE("rows of comma-separated values, by RFC 4180") {
  const Result<std::vector<CsvRow>> rows = read_csv_rows("a,\"b,\"\"c\"\"\nd\",\r\n\n,x", "f");
  REQUIRE(rows.ok());
  REQUIRE(rows.value().size() == 2);
  CHECK(rows.value()[0].cells == std::vector<std::string>{"a", "b,\"c\"\nd", ""});
  CHECK(rows.value()[1].cells == std::vector<std::string>{"", "x"});
  CHECK(rows.value()[1].line == 4);
  CHECK_THAT(to_text(read_csv_rows("a\nb,\"c\nd", "f").issues().front()),
             Contains("f:2: ") && Contains("never closed"));
  CHECK_THAT(to_text(read_csv_rows("\"a\"b", "f").issues().front()), Contains("goes on behind"));
  CHECK_THAT(to_text(read_csv_rows("a\"b", "f").issues().front()), Contains("within a field"));
}
