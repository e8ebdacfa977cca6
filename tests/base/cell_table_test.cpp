#include "base/cell_table.h"

#include <catch2/catch.hpp>

using namespace laywright;

namespace {

std::vector<std::string> row(std::string_view text, std::size_t at = 0) {
  const std::vector<CellRow> rows = read_cells(text);
  REQUIRE(rows.size() > at);
  return rows[at].cells;
}

using Cells = std::vector<std::string>;

}  // namespace

TEST_CASE("cells between commas, semicolons and tabs, by what the first row has") {
  CHECK(row("a,b\n1,2\n", 1) == Cells{"1", "2"});
  CHECK(row("a;b\n1,5;2\n", 1) == Cells{"1,5", "2"});
  CHECK(row("a\tb\r\n1,5\t\r\n", 1) == Cells{"1,5", ""});
  CHECK(row("\"length; km\",b\n1,2\n", 1) == Cells{"1", "2"});  // within quotes it separates nothing
  CHECK(row("sep=;\na\n1,5;2\n", 1) == Cells{"1,5", "2"});
}

TEST_CASE("quotes, a byte order mark, remarks and empty rows of a table, and the lines of its rows") {
  CHECK(row("\xEF\xBB\xBFlayer,\"left, mm\"\n") == Cells{"layer", "left, mm"});
  CHECK(row("a,b\n\" 1 \",\"say \"\"two\"\"\"\n", 1) == Cells{"1", "say \"two\""});
  const std::vector<CellRow> rows = read_cells("# \"open\n\na,b\r\n,\n\"# said, in quotes\"\n\"two\nlines\",2\n3,4");
  REQUIRE(rows.size() == 3);
  CHECK(rows[0].line == 3);
  CHECK(rows[1].cells == Cells{"two\nlines", "2"});
  CHECK(rows[1].line == 6);
  CHECK(rows[2].line == 8);
  CHECK(read_cells("").empty());
}
