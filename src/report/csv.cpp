#include "report/csv.h"

#include <cmath>
#include <iterator>
#include <numbers>
#include <numeric>

#include <fmt/format.h>

#include "measure/fiber_line.h"
#include "report/figures.h"

namespace laywright {
namespace {

// Nine digits: a micrometre in a kilometre of fiber.
std::string field(double value) { return std::isfinite(value) ? fmt::format("{:.9g}", value) : ""; }
std::string field(const std::optional<double>& value) { return value ? field(*value) : ""; }

std::string quoted(const std::string& text) {
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + '"';
}

std::size_t step_for(std::size_t nodes, std::size_t most, std::size_t stations) {
  std::size_t step = (nodes + most - 1) / most;
  while (step > 1 && std::gcd(step, stations) != 1) ++step;
  return step == 0 ? 1 : step;
}

}  // namespace

std::string layers_csv(const Measurements& measurements) {
  std::string csv =
      "layer,direction,turns,length_m,mean_diameter_mm,mean_rise_d,gap_length_m,crossings,bridged_share\n";
  for (const LayerRow& row : measurements.layers) {
    csv += fmt::format("{},{},{},{},{},{},{},{},{}\n", row.layer, direction_name(row.direction), field(row.turns),
                       field(row.length_mm / 1e3), field(row.mean_diameter_mm), field(row.mean_rise_d),
                       field(row.gap_length_mm / 1e3), row.crossings, field(row.bridged_share));
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

void write_path_csv(std::ostream& out, const Build& build, Progress& progress, std::size_t most_nodes) {
  const NodeStore& nodes = build.nodes;
  const auto stations = static_cast<std::size_t>(build.stations_per_turn);
  const std::size_t step = step_for(nodes.size(), most_nodes, stations);
  const double angle_step = 2.0 * std::numbers::pi / build.stations_per_turn;
  fmt::memory_buffer lines;
  if (step > 1) fmt::format_to(std::back_inserter(lines), "# one node in {} of {}\n", step, nodes.size());
  fmt::format_to(std::back_inserter(lines), "turn,angle_deg,length_m,layer,x_mm,r_mm,support\n");

  double length_mm = 0.0;
  std::size_t stroke = 0;
  for (std::size_t k = 0; k < nodes.size(); ++k) {
    if (k > 0) {
      length_mm += piece_length(nodes.x(k - 1), nodes.r(k - 1), nodes.x(k), nodes.r(k), angle_step);
    }
    if (k % step != 0) continue;
    while (stroke + 1 < build.strokes.size() && build.strokes[stroke + 1].first_node <= k) ++stroke;
    fmt::format_to(std::back_inserter(lines), "{:.6f},{:.4f},{:.6f},{},{:.5f},{:.5f},{}\n",
                   static_cast<double>(k) / build.stations_per_turn,
                   360.0 * static_cast<double>(k % stations) / build.stations_per_turn, length_mm / 1e3, stroke + 1,
                   nodes.x(k), nodes.r(k), name_of(nodes.support(k)));
    if (lines.size() > 1U << 16U) {
      out.write(lines.data(), static_cast<std::streamsize>(lines.size()));
      lines.clear();
      progress.report(static_cast<double>(k) / static_cast<double>(nodes.size()));
      if (progress.cancelled() || !out) return;
    }
  }
  out.write(lines.data(), static_cast<std::streamsize>(lines.size()));
}

}  // namespace laywright
