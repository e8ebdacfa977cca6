// The figures of a wind in rows, in both systems of units. An inch is 25.4 mm, a foot 304.8 mm.
#include "figures/wind_rows.h"

#include <algorithm>

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "figures/hand_wound.h"
#include "figures/summary.h"

using namespace laywright;
using Catch::Matchers::Contains;

namespace {

FigureRow row_named(const std::vector<FigureRow>& rows, const std::string& name) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const FigureRow& row) { return row.name == name; });
  REQUIRE(found != rows.end());
  return *found;
}

}  // namespace

TEST_CASE("the figures of a wind are those of its measurements, in either system") {
  const Build build = hand_build();
  const Measurements measured = hand_measurements();
  const std::vector<FigureRow> metric = wind_figures(build, measured, false),
                               inch = wind_figures(build, measured, true);
  REQUIRE(metric.size() == inch.size());
  for (std::size_t i = 0; i < metric.size(); ++i) CHECK(metric[i].name == inch[i].name);
  // 24.12, 24.25, 24.38 and 24.50 mm, as the build by hand has them.
  CHECK(row_named(metric, "Outer diameter").value == "24.50 mm");
  CHECK(row_named(metric, "Outer diameter").more == "left 24.12 mm, middle 24.25 mm, right 24.38 mm");
  CHECK(row_named(inch, "Outer diameter").value ==
        fmt::format("{:.4f} in", measured.outer_diameter.greatest_mm / 25.4));
  CHECK(row_named(metric, "Rim clearance").value == "7.75 mm");
  CHECK(row_named(inch, "Rim clearance").value == fmt::format("{:.4f} in", measured.rim_clearance_mm / 25.4));
}

TEST_CASE("a layer's cells are in the units of their heads, and stand so in the summary, too") {
  const Measurements measured = hand_measurements();
  REQUIRE_FALSE(measured.layers.empty());
  const LayerRow& layer = measured.layers.front();
  const LayerCells metric = layer_cells(layer, false), inch = layer_cells(layer, true);
  CHECK(layer_heads(false)[3] == "Length, m");
  CHECK(layer_heads(true)[3] == "Length, ft");
  CHECK(metric[3] == fmt::format("{:.2f}", layer.length_mm / 1000.0));
  CHECK(inch[3] == fmt::format("{:.2f}", layer.length_mm / 304.8));
  CHECK(inch[4] == fmt::format("{:.5f}", layer.mean_diameter_mm / 25.4));
  const std::string text = summary_text(hand_plan(), hand_build(), measured, TakeupRun());
  for (const std::string& cell : {metric[2], metric[3], metric[4]}) CHECK_THAT(text, Contains(' ' + cell + ' '));
}
