#include <cmath>
#include <set>
#include <sstream>

#include <catch2/catch.hpp>

#include "figures/csv.h"
#include "figures/hand_wound.h"

using namespace laywright;

namespace {

using Record = std::vector<std::string>;

// A reader by RFC 4180, apart from the writer.
std::vector<Record> read_csv(const std::string& text) {
  std::vector<Record> records(1, Record(1));
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    std::string& field = records.back().back();
    if (quoted && c == '"' && i + 1 < text.size() && text[i + 1] == '"') {
      field += text[++i];
    } else if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      records.back().emplace_back();
    } else if (c == '\n' && !quoted) {
      records.emplace_back(1);
    } else {
      field += c;
    }
  }
  records.pop_back();  // after the last line feed
  return records;
}

std::vector<Record> path_of(const Build& build, std::size_t most = 1'000'000) {
  std::ostringstream out;
  Progress progress;
  write_path_csv(out, build, progress, {most, 1, {}});
  return read_csv(out.str());
}

}  // namespace

TEST_CASE("the layer table is read back as it was measured") {
  const auto records = read_csv(layers_csv(hand_measurements()));
  REQUIRE(records.size() == 3);
  CHECK(records[0] == Record{"layer", "direction", "turns", "length_m", "mean_diameter_mm", "mean_rise_d",
                             "gap_length_m", "crossings", "bridged_share", "left_ridge_mm", "left_valley_mm",
                             "right_ridge_mm", "right_valley_mm"});
  CHECK(records[1] ==
        Record{"1", "right", "9", "0.59383", "21", "", "0.0125", "0", "0", "0.5", "0.125", "0.25", "0.0625"});
  CHECK(records[2] == Record{"2", "left", "9", "0.650375", "23", "1", "0", "17", "0.125", "", "", "", ""});
}

TEST_CASE("findings are read back, commas and quotes of their text included") {
  const auto records = read_csv(findings_csv(hand_measurements()));
  REQUIRE(records.size() == 3);
  for (const Record& record : records) CHECK(record.size() == records[0].size());
  CHECK(records[1][0] == "flange_gap");
  CHECK(records[1][4] == "right");
  CHECK(records[1].back() == hand_measurements().findings[0].text);
  CHECK(records[2][4].empty());
}

TEST_CASE("the path's length is that of a helix") {
  // One turn on D = 20 at a lead of 5: 63.0305 (Ask Dr. Math 55156).
  const auto records = path_of(helical_build(1, 1, 5.0, 10.0, 0.0));
  REQUIRE(records.size() == 1 + 9);
  CHECK(records[0] == Record{"turn", "angle_deg", "length_m", "layer", "x_mm", "r_mm", "support"});
  CHECK(std::stod(records[9][2]) * 1e3 == Approx(63.0305).margin(1e-3));
  CHECK(std::stod(records[9][0]) == 1.0);
  CHECK(std::stod(records[9][1]) == 0.0);
  CHECK(std::stod(records[3][1]) == 90.0);
  CHECK(std::stod(records[9][4]) == Approx(5.5));
  CHECK(std::stod(records[9][5]) == Approx(10.0));
  CHECK(records[9][6] == "barrel");
}

TEST_CASE("each node of the path belongs to the layer that laid it") {
  const Build build = hand_build();
  const auto records = path_of(build);
  REQUIRE(records.size() == 1 + build.nodes.size());
  CHECK(records[build.strokes[1].first_node][3] == "1");
  CHECK(records[build.strokes[1].first_node + 1][3] == "2");
  CHECK(records.back()[3] == "2");
  CHECK(records.back()[6] == "turn");
  CHECK(std::stod(records.back()[2]) == Approx(build.length_mm / 1e3).epsilon(1e-3));
}

TEST_CASE("a long path is thinned evenly, says so, and still sees every angle") {
  const Build build = helical_build(4, 100, 1.0, 10.5, 1.0);
  const auto records = path_of(build, 1000);
  REQUIRE(build.nodes.size() == 3201);
  CHECK(records[0] == Record{"# one node in 5 of 3201"});
  const auto nodes = records.size() - 2;
  CHECK(nodes == 641);
  std::set<std::string> angles;
  for (std::size_t i = 2; i < records.size(); ++i) angles.insert(records[i][1]);
  CHECK(angles.size() == 8);
  // Thinning leaves out nodes, not length.
  CHECK(std::stod(records.back()[2]) == Approx(std::stod(path_of(build).back()[2])).epsilon(1e-12));
}

TEST_CASE("a cancelled path stops early") {
  const Build build = helical_build(10, 500, 1.0, 10.5, 1.0);
  std::ostringstream whole, part;
  Progress going, cancelled;
  cancelled.cancel();
  write_path_csv(whole, build, going);
  write_path_csv(part, build, cancelled);
  CHECK(part.str().size() < whole.str().size() / 2);
}
