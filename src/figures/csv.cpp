#include "figures/csv.h"

#include <algorithm>
#include <numbers>
#include <numeric>

#include <fmt/format.h>

#include "figures/csv_field.h"
#include "figures/figures.h"
#include "figures/table_rows.h"
#include "measure/fiber_line.h"

namespace laywright {
namespace {

// Empty of a layer that is not whole.
std::string edge_fields(const std::optional<EdgeShapes>& edges) {
  if (!edges) return ",,,";
  const auto& [left, right] = *edges;
  return fmt::format("{},{},{},{}", field(left.ridge_mm), field(left.valley_mm), field(right.ridge_mm),
                     field(right.valley_mm));
}

// The nodes of the layers that are wanted.
struct NodeRange {
  std::size_t first = 0, end = 0;
};

NodeRange range_of(const Build& build, const PathSettings& settings) {
  if (build.strokes.empty()) return {};
  const std::size_t newest = build.strokes.size();
  const auto last = settings.last_layer ? static_cast<std::size_t>(*settings.last_layer) : newest;
  return {build.strokes[static_cast<std::size_t>(settings.first_layer - 1)].first_node,
          build.end_of(std::min(last, newest) - 1)};
}

}  // namespace

std::string layers_csv(const Measurements& measurements) {
  std::string csv =
      "layer,direction,turns,length_m,mean_diameter_mm,mean_rise_d,gap_length_m,crossings,bridged_share,"
      "left_ridge_mm,left_valley_mm,right_ridge_mm,right_valley_mm\n";
  for (const LayerRow& row : measurements.layers) {
    csv +=
        fmt::format("{},{},{},{},{},{},{},{},{},{}\n", row.layer, direction_name(row.direction), field(row.turns),
                    field(row.length_mm / 1e3), field(row.mean_diameter_mm), field(row.mean_rise_d),
                    field(row.gap_length_mm / 1e3), row.crossings, field(row.bridged_share), edge_fields(row.edges));
  }
  return csv;
}

std::string findings_csv(const Measurements& measurements) {
  std::string csv =
      "kind,layer,last_layer,turn,side,x_from_mm,x_to_mm,angle_from_deg,angle_to_deg,length_from_m,length_to_m,"
      "size_mm,size_d,occurrences,text\n";
  for (const Finding& found : measurements.findings) {
    csv += fmt::format("{},{},{},{},{},{},{},{},{},{},{},{},{},{},{}\n", name_of(found.kind), found.layer,
                       found.last_layer, field(found.turn), found.side ? name_of(*found.side) : "",
                       field(found.x_mm[0]), field(found.x_mm[1]), field(found.angle_deg[0]),
                       field(found.angle_deg[1]), field(found.length_mm[0] / 1e3), field(found.length_mm[1] / 1e3),
                       field(found.size_mm), field(found.size_d), found.occurrences, quoted(found.text));
  }
  return csv;
}

std::size_t path_step(const Build& build, const PathSettings& settings) {
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  const NodeRange range = range_of(build, settings);
  const std::size_t most = std::max<std::size_t>(1, settings.most_rows);
  std::size_t step = std::max<std::size_t>(1, (range.end - range.first + most - 1) / most);
  while (step > 1 && std::gcd(step, stations) != 1) ++step;
  return step;
}

void write_path_csv(std::ostream& out, const Build& build, Progress& progress, const PathSettings& settings) {
  const NodeStore& nodes = build.nodes;
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  const NodeRange range = range_of(build, settings);
  const std::size_t step = path_step(build, settings);
  const double angle_step = 2.0 * std::numbers::pi / build.stations_per_turn;
  TableRows rows;
  if (step > 1) rows.add_text(fmt::format("# one node in {} of {}\n", step, range.end - range.first));
  rows.add_text("turn,angle_deg,length_m,layer,x_mm,r_mm,support\n");

  double length_mm = 0.0;
  std::size_t stroke = 0;
  for (std::size_t k = 0; k < range.end; ++k) {
    if (k > 0) {
      length_mm += piece_length(nodes.x(k - 1), nodes.r(k - 1), nodes.x(k), nodes.r(k), angle_step);
    }
    if (k < range.first || (k - range.first) % step != 0) continue;
    while (stroke + 1 < build.strokes.size() && build.strokes[stroke + 1].first_node <= k) ++stroke;
    rows.add_decimal(static_cast<double>(k) / build.stations_per_turn, 6);
    rows.add_decimal(360.0 * static_cast<double>(k % stations) / build.stations_per_turn, 4);
    rows.add_decimal(length_mm / 1e3, 6);
    rows.add_whole(stroke + 1);
    rows.add_decimal(nodes.x(k), 5);
    rows.add_decimal(nodes.r(k), 5);
    rows.add_last(name_of(nodes.support(k)));
    if (rows.bytes() > 1U << 16U) {
      rows.write(out);
      progress.report(static_cast<double>(k) / static_cast<double>(range.end));
      if (progress.cancelled() || !out) return;
    }
  }
  rows.write(out);
}

}  // namespace laywright
